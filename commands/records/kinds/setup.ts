/** A setup: a name on a revision of a car. */
import { z } from 'zod';
import { nameKey } from '../../names.js';
import type { Keep } from '../change.js';
import type { Kind } from '../kind.js';
import type { Work } from '../work.js';
import { cars, ownCar } from './car.js';
import { noMoment, revisions } from './revision.js';

const data = z.strictObject({ name: z.string(), revision: z.int() });
export type SetupData = z.infer<typeof data>;
/** A name is kept once a car, in any writing. */
export const setupId = (car: number, name: string): string => `${car} ${nameKey(name)}`;

export const setups: Kind<SetupData, string> = {
  name: 'setup',
  owner: 'car',
  schema: data,
  rule({ of, data: { revision } }, reads) {
    if (of.car !== undefined && reads.find(revisions, revision)?.of.car === of.car) return undefined;
    return noMoment(of.car === undefined ? undefined : reads.find(cars, of.car)?.data.name);
  },
  rows: (was, is) => [
    {
      label: `setup ${(is ?? was)?.data.name}`,
      cells: was && is ? ['a later state', 'an earlier state'] : [was ? 'kept' : 'not kept', is ? 'kept' : 'not kept'],
    },
  ],
  exported: {
    as: 'setups',
    schema: z.object({ name: z.string(), revision: z.int() }),
    write: ({ data: { name, revision } }) => ({ name, revision }),
  },
  gone: 'That setup is not kept any more.',
};
export function keep(work: Work, { car, name, revision }: Keep): void {
  const {
    id,
    data: { head },
  } = ownCar(work, car);
  const kept = revision === 'now' ? head : work.kept(revisions, revision);
  work.put(setups, { id: setupId(id, name), of: { car: id }, data: { name, revision: kept }, told: undefined, text: '' });
}
