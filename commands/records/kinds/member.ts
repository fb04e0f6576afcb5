/** A member: how they want numbers, and which of their cars is in use. */
import { z } from 'zod';
import type { Change } from '../change.js';
import type { Held } from '../held.js';
import { fieldByField, type Kind } from '../kind.js';
import type { Work } from '../work.js';
import { cars, ownCar } from './car.js';

const preferred = { units: z.enum(['us', 'metric']), decimalMark: z.enum(['.', ',']) };
const data = z.strictObject({ name: z.string(), ...preferred, chosen: z.int().optional() });
export type MemberData = z.infer<typeof data>;

export const members: Kind<MemberData, string> = {
  name: 'member',
  owner: 'member',
  schema: data,
  rule({ id, data: { chosen } }, reads) {
    if (chosen === undefined || reads.find(cars, chosen)?.of.member === id) return undefined;
    return 'The car that was in use is not one of yours any more.';
  },
  pieces: fieldByField('units', 'decimalMark', 'chosen'),
  rows(was, is, telling) {
    const row = (label: string, a: string | undefined, b: string | undefined) => (a === b ? [] : [{ label, cells: [a ?? '', b ?? ''] }]);
    const mark = (it: typeof was): string | undefined => it && (it.data.decimalMark === ',' ? 'comma' : 'point');
    const chosen = (it: typeof was, reads: typeof telling.was): string =>
      (it?.data.chosen === undefined ? undefined : reads.find(cars, it.data.chosen)?.data.name) ?? 'none';
    return [
      ...row('units', was?.data.units, is?.data.units),
      ...row('decimal mark', mark(was), mark(is)),
      ...(was?.data.chosen === is?.data.chosen ? [] : row('car in use', chosen(was, telling.was), chosen(is, telling.is))),
    ];
  },
  exported: {
    as: 'member',
    schema: z.object({ id: z.string(), name: z.string(), ...preferred }),
    write: ({ id, data: { name, units, decimalMark } }) => ({ id, name, units, decimalMark }),
  },
  gone: 'You are not known here any more.',
};
/** Somebody who was just forgotten, in the same message, is met again. */
export function met({ tables, asking }: Work): Held<MemberData, string> {
  const { id, name, preferences } = asking.asker;
  const known = tables.find(members, id);
  if (known !== undefined) return known;
  const held = { id, of: { member: id }, data: { name, ...preferences }, told: undefined, text: '' };
  tables.add(members, held);
  return held;
}
export function prefer(work: Work, { preferences }: Extract<Change, { change: 'prefer' }>): void {
  const { units, decimalMark } = preferences;
  const member = met(work);
  const wanted = { ...(units === undefined ? {} : { units }), ...(decimalMark === undefined ? {} : { decimalMark }) };
  work.put(members, { ...member, data: { ...member.data, ...wanted } });
}
export function chooseCar(work: Work, { car }: Extract<Change, { change: 'choose car' }>): void {
  const { id } = ownCar(work, car);
  const member = met(work);
  work.put(members, { ...member, data: { ...member.data, chosen: id } });
}
/** The chosen car gone, the first of those left is the one in use. */
export function forgetCar(work: Work, { car }: Extract<Change, { change: 'forget car' }>): void {
  const { tables, asking } = work;
  const { id } = ownCar(work, car);
  const member = met(work);
  tables.remove(cars, id);
  if (member.data.chosen === id) {
    const { chosen: _, ...rest } = member.data;
    const [first] = tables.list(cars, { member: asking.asker.id });
    tables.replace(members, { ...member, data: first === undefined ? rest : { ...rest, chosen: first.id } });
  }
  // What was of the car is gone from the journal as well: only that it was forgotten stays.
  work.noteOrder('forget car');
}
