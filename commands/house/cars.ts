/** Cars of the asker: list, choose, make, copy, rename, forget. */
import { answer } from '../answer.js';
import type { Command, Outcome } from '../command.js';
import type { CarView, Context } from '../context.js';
import { settled } from '../facts.js';
import { hasState, situationOf } from '../looked.js';
import { nameOf } from '../names.js';
import type { Reading } from '../reading.js';
import { sideEffects } from '../show/altered.js';
import { carNamed, firstCarLine, isOutcome, newCarId, noCar, ownCar, refused } from './own.js';

const about = (car: CarView, context: Context): string => {
  const parts = [`${car.head.facts.size} facts`];
  if (context.garage.chosen?.id === car.id) parts.push('in use');
  if (car.shared) parts.push('shared here');
  return parts.join(', ');
};

/** The name for a new car, or the refusal. */
export function newName(text: string, context: Context): string | Outcome {
  const checked = nameOf(text, 'car');
  if ('refused' in checked) return refused(checked.refused, firstCarLine);
  const other = carNamed(context, checked.name);
  return other ? refused(`You already have a car called ${other.name}.`, `car ${other.name}`) : checked.name;
}

function list(context: Context): Outcome {
  const { mine, others } = context.garage;
  if (mine.length === 0 && others.length === 0) return noCar();
  const rows = [
    ...mine.map((car) => ({ label: car.name, cells: [about(car, context)] })),
    ...others.map((car) => ({ label: car.name, cells: [`${car.ownerName}'s, shared here`] })),
  ];
  const other = mine.find((car) => car.id !== context.garage.chosen?.id);
  const headline =
    mine.length === 0 ? 'You have no saved car; shared here:' : mine.length === 1 ? 'Your car:' : `Your ${mine.length} cars:`;
  const line = mine.length === 0 ? firstCarLine : other ? `car ${other.name}` : 'show everything';
  return { answer: answer('told', headline, { rows, next: [{ label: line, line }] }) };
}

export const car: Command = {
  word: 'car',
  also: [
    'cars',
    'my cars',
    'use',
    'list cars',
    'list my cars',
    'show cars',
    'show my cars',
    'what cars',
    'what cars do i have',
    'which cars',
    'who shared what',
  ],
  group: 'house',
  summary: 'Your cars; with a name, the one to use from now on.',
  examples: [
    { line: 'car', does: 'lists your cars and those shared here' },
    { line: 'car turnip', does: 'uses turnip from now on' },
  ],
  takes: 'names',
  changes: true,
  run(reading, context) {
    if (reading.names.length === 0 && reading.sides.every((side) => side.subjects.length === 0)) return list(context);
    const found = ownCar(reading, context);
    if (isOutcome(found)) return found;
    const parts = {
      next: [{ label: 'show everything', line: 'show everything' }],
    };
    return { answer: answer('changed', `We talk about ${found.name} now.`, parts), changes: [{ change: 'choose car', car: found.id }] };
  },
};

export const newCar: Command = {
  word: 'new car',
  also: ['make car', 'add car'],
  group: 'house',
  summary: 'A new, empty car of yours, and the one in use.',
  examples: [{ line: 'new car parsnip', does: 'makes a car called parsnip' }],
  takes: 'names',
  changes: true,
  run(reading, context) {
    const name = newName(reading.names.join(' '), context);
    if (typeof name !== 'string') return name;
    const id = newCarId(context);
    return {
      answer: answer('changed', `${name} is here, and yours to tell me about.`, {
        notes: ['Tell me its weight, front share, wheelbase, springs: several in a line if you like.'],
        next: [{ label: 'how to tell me', line: 'help set' }],
      }),
      changes: [
        { change: 'make car', car: id, name, facts: new Map(), measured: false, why: `new car ${name}` },
        { change: 'choose car', car: id },
      ],
    };
  },
};

/** Two names, or one and the car in use: which car, and what it shall be called. */
function carAndName(reading: Reading, context: Context): { readonly car: CarView; readonly name: string } | Outcome {
  const last = reading.names.at(-1);
  if (last === undefined) return refused('What shall it be called?', 'rename turnip to parsnip');
  const found = reading.names.length > 1 ? ownCar(reading, context, 0) : ownCar({ ...reading, names: [] }, context);
  if (isOutcome(found)) return found;
  const name = newName(last, context);
  return typeof name === 'string' ? { car: found, name } : name;
}

export const copyCar: Command = {
  word: 'copy',
  also: ['copy car'],
  group: 'house',
  summary: 'A second car with the same facts, to work on apart; it is then in use.',
  examples: [{ line: 'copy turnip to parsnip', does: 'parsnip starts as turnip stands' }],
  takes: 'names',
  changes: true,
  run(reading, context) {
    const both = carAndName(reading, context);
    if (isOutcome(both)) return both;
    const id = newCarId(context);
    const { facts, carried } = settled(situationOf(both.car.head, context));
    const line = `compare ${both.name} with ${both.car.name}`;
    return {
      answer: answer('changed', `${both.name} is a copy of ${both.car.name}, and the one we talk about now.`, {
        notes: sideEffects({ forgot: [], carried }, context.asker.preferences),
        next: [{ label: line, line }],
      }),
      changes: [
        { change: 'make car', car: id, name: both.name, facts, measured: hasState(facts), why: `copy of ${both.car.name}` },
        { change: 'choose car', car: id },
      ],
    };
  },
};

export const renameCar: Command = {
  word: 'rename',
  also: ['rename car', 'call my car'],
  group: 'house',
  summary: 'Another name for a car.',
  examples: [{ line: 'rename turnip to parsnip', does: 'turnip is called parsnip from now on' }],
  takes: 'names',
  changes: true,
  run(reading, context) {
    const both = carAndName(reading, context);
    if (isOutcome(both)) return both;
    const back = `rename ${both.name} to ${both.car.name}`;
    return {
      answer: answer('changed', `${both.car.name} is now called ${both.name}.`, { next: [{ label: back, line: back }] }),
      changes: [{ change: 'rename car', car: both.car.id, name: both.name }],
    };
  },
};
