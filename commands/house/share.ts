/** Let the members of this room see a car, or no longer. */
import { answer } from '../answer.js';
import type { Command } from '../command.js';
import { isOutcome, ownCar, refused } from './own.js';

export const share: Command = {
  word: 'share',
  also: ['share car', 'show everyone'],
  group: 'house',
  summary: 'Members of this room may see and compare your car; nobody else.',
  examples: [{ line: 'share', does: 'shares the car in use, here' }],
  takes: 'names',
  changes: true,
  run(reading, context) {
    if (context.room.direct) return refused('There is nobody else here; share it in the room that shall see it.', 'car');
    const car = ownCar(reading, context);
    if (isOutcome(car)) return car;
    if (car.shared)
      return { answer: answer('told', `${car.name} is already shared here.`, { next: [{ label: 'unshare', line: 'unshare' }] }) };
    return {
      answer: answer('changed', `${car.name} can be seen here, by members of this room while you are one.`, {
        notes: ['They see its facts and figures as they stand; not its history, nor your setups.'],
        next: [{ label: 'unshare', line: 'unshare' }],
      }),
      changes: [{ change: 'share', car: car.id, room: context.room.id }],
    };
  },
};

export const unshare: Command = {
  word: 'unshare',
  also: ['stop sharing', 'hide'],
  group: 'house',
  summary: 'Nobody in this room sees your car any more.',
  examples: [{ line: 'share\nunshare', does: 'shown here, then private again' }],
  takes: 'names',
  changes: true,
  run(reading, context) {
    const car = ownCar(reading, context);
    if (isOutcome(car)) return car;
    if (!car.shared) return { answer: answer('told', `${car.name} is not shared here.`) };
    return {
      answer: answer('changed', `${car.name} is private again here.`, { next: [{ label: 'share', line: 'share' }] }),
      changes: [{ change: 'unshare', car: car.id, room: context.room.id }],
    };
  },
};
