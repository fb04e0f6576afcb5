/** A car: whose, called what, and at which revision it stands. */
import { z } from 'zod';
import { sameName } from '../../names.js';
import type { Change } from '../change.js';
import type { Held } from '../held.js';
import { fieldByField, type Kind } from '../kind.js';
import { ChangeRefused } from '../refused.js';
import type { Work } from '../work.js';

const data = z.strictObject({ name: z.string(), head: z.int() });
export type CarData = z.infer<typeof data>;
export type HeldCar = Held<CarData, number>;

export const cars: Kind<CarData, number> = {
  name: 'car',
  owner: 'member',
  schema: data,
  rule({ id, of, data: { name } }, reads) {
    const other = reads.list(cars, of.member === undefined ? {} : { member: of.member }).find((one) => sameName(one.data.name, name));
    return other === undefined || other.id === id
      ? undefined
      : `You have a car called ${other.data.name} already; give this one another name.`;
  },
  // Where it stands follows its revisions.
  pieces: fieldByField('name'),
  rows: (was, is) =>
    was && is
      ? [{ label: 'name', cells: [was.data.name, is.data.name] }]
      : [{ label: `car ${(was ?? is)?.data.name}`, cells: [was ? 'there' : 'not there', is ? 'there' : 'not there'] }],
  gone: 'That car is not one of yours any more.',
};
/** Another member's car is answered like none: nobody learns that it is there. @throws ChangeRefused */
export function ownCar(work: Work, car: number): HeldCar {
  const held = work.tables.find(cars, work.kept(cars, car));
  if (held === undefined || held.of.member !== work.asking.asker.id) throw new ChangeRefused(cars.gone);
  return held;
}
export function renameCar(work: Work, { car, name }: Extract<Change, { change: 'rename car' }>): void {
  const held = ownCar(work, car);
  work.put(cars, { ...held, data: { ...held.data, name } });
}
