/** What must still be so when a message is sent: between working it out and sending it, a room may have changed, or a sharing ended. */
import { z } from 'zod';
import type { Sight } from '../../commands/context.js';

export interface Rights {
  /** Whom it is for. */
  readonly member: string;
  /** It goes only where nobody else can read it. */
  readonly alone: boolean;
  /** Clubmates' cars that it was worked out from. */
  readonly seen: readonly Sight[];
}
export const sights = z.array(z.strictObject({ car: z.number(), sharing: z.number() })) satisfies z.ZodType<readonly Sight[]>;
const schema = z.strictObject({ member: z.string(), alone: z.boolean(), seen: sights }) satisfies z.ZodType<Rights>;

export const writeRights = ({ member, alone, seen }: Rights): string =>
  JSON.stringify({ member, alone, seen: seen.map(({ car, sharing }) => ({ car, sharing })) });
/** Undefined: nothing need be so. */
export const readRights = (stored: string | null): Rights | undefined => (stored === null ? undefined : schema.parse(JSON.parse(stored)));
