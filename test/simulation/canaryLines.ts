/** Lines that members of the canaries' club say: whatever the registry knows, about each other's cars, and what goes on from an answer. */
import { commands } from '../../commands/registry.js';
import type { Owner } from './canary.js';

export interface Line {
  readonly text: string;
  /** The command's word, or what sort of line it is. */
  readonly sort: string;
}
/** Names in the examples of the registry, which are those of another club's cars. */
const exampleNames = /\b(?:turnip|moth|pickle|parsnip)\b/g;

export interface Talk {
  readonly pick: <T>(from: readonly T[]) => T;
  readonly chance: (of: number) => boolean;
  /** What cars are called now. */
  readonly nameOf: (owner: Owner) => string;
  readonly all: readonly Owner[];
}
/** A line of the registry: an example, or one of the command's own words, alone or with a car. */
export function registryLine({ pick, chance, nameOf, all }: Talk): Line {
  const command = pick(commands);
  const name = (): string => nameOf(pick(all));
  const word = pick([command.word, ...command.also]);
  const example = pick(command.examples).line.replaceAll(exampleNames, name);
  const text = chance(0.5) ? example : chance(0.3) ? word : chance(0.5) ? `${word} ${name()}` : `${word} ${pick(all).name}'s car`;
  return { text, sort: command.word };
}
/** After a clubmate's car. */
export function pointedLine({ pick, nameOf, all }: Talk, asker: Owner, whom = pick(all.filter((one) => one !== asker))): Line {
  const name = pick([nameOf(whom), `@${whom.name}`, `${whom.name}'s car`, nameOf(whom)]);
  const text = pick([
    ...[`show everything ${name}`, `show ${name}`, `compare me with ${name}`, `compare ${nameOf(asker)} with ${name}`, `doubt ${name}`],
    ...[`split me against ${name}`, `try front spring 300 on ${name}`, `why front wheel rate ${name}`, `show front spring ${name} in N/mm`],
    ...[`draw front ride frequency of ${name} against front spring 250 to 600`, `set front spring like ${name}`, `${name} front spring?`],
    ...[`what front spring for 2 hz on ${name}`, `${name}`, `car ${name}`, `more rotation on ${name}`, `copy ${name} to fig`],
  ]);
  return { text, sort: 'pointed' };
}
const going = [
  'more',
  'more',
  'more',
  '1',
  '2',
  '3',
  'why',
  'draw',
  'save that',
  'ok keep it',
  'yes',
  'the rest',
  'pairs',
  'compare',
] as const;
export const goingOn = ({ pick }: Talk): Line => ({ text: pick(going), sort: 'going on' });
/** Whether a line may share a car, or share it again: who says it may have shared it from then on. */
export const mayShare = ({ text, sort }: Line): boolean =>
  ['share', 'undo', 'yes', 'going on', 'edit'].includes(sort) || /share|everyone|undo|take (?:it|that) back/.test(text);
