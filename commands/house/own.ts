/** The asker's own cars, by the words of a line. */
import { answer } from '../answer.js';
import type { Outcome } from '../command.js';
import type { CarView, Context, Setup } from '../context.js';
import { sameName } from '../names.js';
import type { Reading } from '../reading.js';
import { cars } from '../records/kinds/car.js';

export const refused = (sentence: string, line?: string): Outcome => ({
  answer: answer('refused', sentence, line === undefined ? {} : { next: [{ label: line, line }] }),
});
export const told = (headline: string, parts: Parameters<typeof answer>[2] = {}): Outcome => ({ answer: answer('told', headline, parts) });
export const isOutcome = (v: object): v is Outcome => 'answer' in v;

/** Shown to whoever has no car: a line that makes one. */
export const firstCarLine = 'save my car turnip 2640 lb 52.5% front';
export const noCar = (): Outcome => refused('You have no saved car yet.', firstCarLine);

/** The car in use, or the sentence that says there is none. */
export const carInUse = (context: Context): CarView | Outcome => context.garage.chosen ?? context.garage.mine[0] ?? noCar();

export const carNamed = (context: Context, name: string): CarView | undefined =>
  context.garage.mine.find((car) => sameName(car.name, name));

/** The own car that the line names, or the car in use when it names none. `which` picks among several names (0: the first). */
export function ownCar(reading: Reading, context: Context, which = 0): CarView | Outcome {
  const name = reading.names[which];
  if (name !== undefined) {
    const found = carNamed(context, name);
    if (found) return found;
    const lines = context.garage.mine.map((car) => car.name);
    return lines.length === 0 ? noCar() : refused(`You have no car called ${name}; yours: ${lines.join(', ')}.`, `car ${lines[0]}`);
  }
  for (const side of reading.sides)
    for (const subject of side.subjects) {
      if (subject.is !== 'car') continue;
      const found = context.garage.mine.find((car) => car.id === subject.id);
      return found ?? refused('Only its owner can change a car.', 'car');
    }
  return carInUse(context);
}
export const setupNamed = (context: Context, car: CarView, name: string): Setup | undefined =>
  context.garage.setups(car.id).find((setup) => sameName(setup.name, name));

/** An id for a car made in this message: below 0 and not in use. */
export const newCarId = (context: Context): number => context.garage.records.next(cars);
