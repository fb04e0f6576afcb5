/** A share: a car that the members of a room may see, while they and its owner are in it. */
import { z } from 'zod';
import type { Change } from '../change.js';
import type { Kind } from '../kind.js';
import type { Work } from '../work.js';
import { cars, ownCar } from './car.js';

const data = z.strictObject({});
export const shareId = (car: number, room: string): string => `${car} ${room}`;

export const shares: Kind<z.infer<typeof data>, string> = {
  name: 'share',
  owner: 'car',
  schema: data,
  rule: ({ of: { room } }, _, world) =>
    room !== undefined && world.isIn(room) ? undefined : 'A car can be shared only in a room that you are in.',
  rows(was, is, { is: reads, was: before, room }) {
    const one = is ?? was;
    const car = one?.of.car === undefined ? undefined : (reads.find(cars, one.of.car) ?? before.find(cars, one.of.car));
    const where = one?.of.room === room ? 'here' : 'in another room';
    return [{ label: `${car?.data.name ?? 'car'} ${where}`, cells: [was ? 'shared' : 'private', is ? 'shared' : 'private'] }];
  },
  gone: 'That car is not shared there any more.',
};
export function share(work: Work, { car, room }: Extract<Change, { change: 'share' | 'unshare' }>): void {
  const { id } = ownCar(work, car);
  const held = { id: shareId(id, room), of: { member: work.asking.asker.id, car: id, room }, data: {}, told: undefined, text: '' };
  if (work.tables.find(shares, held.id) === undefined) work.put(shares, held);
}
export function unshare(work: Work, { car, room }: Extract<Change, { change: 'share' | 'unshare' }>): void {
  const held = work.tables.find(shares, shareId(ownCar(work, car).id, room));
  if (held !== undefined) work.remove(shares, held);
}
