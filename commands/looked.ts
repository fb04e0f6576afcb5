/** The car that a line speaks of: its facts, those of the moment it was measured in, and what they make. */

import type { Facts } from '../core/car.js';
import type { Entry } from '../core/catalog.js';
import { type Evaluation, evaluate, pathAt, type Situation } from '../core/engine.js';
import { catalog } from '../core/stubaxle.js';
import type { Outcome } from './command.js';
import type { CarView, Context, Revision } from './context.js';
import { carInUse, refused } from './house/own.js';
import type { Subject } from './reading.js';

export interface Looked {
  /** What to call it in an answer: `turnip`, `dry`, `moth (robin)`. */
  readonly label: string;
  readonly situation: Situation;
  readonly car?: CarView;
  /** Whether it is the asker's own car as it stands now. */
  readonly current: boolean;
}

/** No car at all: what is told in the line is all that is known. */
export const nothing: Looked = { label: '', situation: { facts: new Map() }, current: false };

const isState = (path: string): boolean => catalog.byPath.get(path)?.entry.state === true;
export const hasState = (facts: Facts): boolean => [...facts.keys()].some(isState);

/** The facts of a revision, and those of the moment its state facts were taken in. */
export function situationOf(revision: Revision, context: Context): Situation {
  const { facts, measuredIn } = revision;
  if (measuredIn === undefined || measuredIn === revision.id) return { facts };
  const then = context.garage.revision(measuredIn);
  return then ? { facts, then: asOfThen(then.facts, facts) } : { facts };
}
/**
 * The facts of the moment of measuring, with what has only become known since: a fact that was never told before was true then as well,
 * unless untold it counted as none (a spacer) or was told in other words.
 */
export function asOfThen(then: Facts, now: Facts): Facts {
  const facts = new Map(then);
  const numbers = numbersOf({ facts: then });
  for (const [path, fact] of now) {
    if (then.has(path)) continue;
    const { entry, place } = catalog.node(path);
    const inOtherWords =
      entry.instead !== undefined && catalog.entries.some((twin) => twin.instead === entry.instead && then.has(pathAt(place, twin)));
    const wasNone = numbers.status(path) === 'estimated' && numbers.get(path) === 0;
    if (!inOtherWords && !wasNone) facts.set(path, fact);
  }
  return facts;
}
export function lookAtCar(car: CarView, context: Context): Looked {
  const mine = context.garage.mine.some((one) => one.id === car.id);
  return {
    label: mine ? car.name : `${car.name} (${car.ownerName})`,
    situation: situationOf(car.head, context),
    car,
    current: mine,
  };
}

/** What a subject of a line stands for, or the sentence that says why it can't be looked at. */
export function lookAt(subject: Subject, context: Context): Looked | Outcome {
  const { garage } = context;
  switch (subject.is) {
    case 'now': {
      const car = carInUse(context);
      return 'answer' in car ? car : { ...lookAtCar(car, context), label: 'now' };
    }
    case 'car': {
      const car = [...garage.mine, ...garage.others].find((one) => one.id === subject.id);
      return car ? lookAtCar(car, context) : refused('That car is not shared here.', 'car');
    }
    case 'setup':
      return lookAtSetup(subject.name, context);
    case 'member': {
      if (subject.id === context.asker.id) {
        const car = carInUse(context);
        return 'answer' in car ? car : lookAtCar(car, context);
      }
      const theirs = garage.others.filter((one) => one.owner === subject.id);
      const [car, another] = theirs;
      const name = garage.members.find((one) => one.id === subject.id)?.name ?? 'That member';
      if (!car) return refused(`${name} has shared no car here; a member shares a car by typing share.`, 'share');
      if (another) {
        const names = theirs.map((one) => one.name).join(', ');
        return refused(`${name} shares several cars here: ${names}; name one.`, `show ${car.name}`);
      }
      return lookAtCar(car, context);
    }
  }
}
function lookAtSetup(name: string, context: Context): Looked | Outcome {
  const car = carInUse(context);
  if ('answer' in car) return car;
  const setup = context.garage.setups(car.id).find((one) => one.name.toLowerCase() === name.toLowerCase());
  const revision = setup && context.garage.revision(setup.revision);
  if (!setup || !revision) return refused(`${car.name} has no setup called ${name}.`, `keep as ${name}`);
  return { label: setup.name, situation: situationOf(revision, context), car, current: false };
}
/** The first subject, else the car in use, else nothing. */
export function lookAtFirst(subjects: readonly Subject[], context: Context): Looked | Outcome {
  const [first] = subjects;
  if (first) return lookAt(first, context);
  const car = context.garage.chosen;
  return car ? lookAtCar(car, context) : nothing;
}
const evaluations = new WeakMap<Facts, { readonly situation: Situation; readonly evaluation: Evaluation }>();
/** Every number of a situation; the last evaluation of the same facts is kept with them. */
export function numbersOf(situation: Situation): Evaluation {
  const known = evaluations.get(situation.facts);
  if (known && known.situation.then === situation.then && known.situation.assume === situation.assume) return known.evaluation;
  const evaluation = evaluate(catalog, situation);
  evaluations.set(situation.facts, { situation, evaluation });
  return evaluation;
}
export const entryAt = (path: string): Entry => catalog.node(path).entry;
export { catalog };
