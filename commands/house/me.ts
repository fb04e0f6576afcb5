/** The member: preferences, what is kept, taking it along, and being forgotten. */
import { answer } from '../answer.js';
import type { Command, Outcome } from '../command.js';
import type { Preferences } from '../context.js';
import { refused } from './own.js';

const unitText = ({ units }: Preferences): string => (units === 'us' ? 'us: lb, in, lb/in, psi, mph' : 'metric: kg, mm, N/mm, bar, km/h');
const markText = ({ decimalMark }: Preferences): string => (decimalMark === '.' ? 'point: 30.5' : 'comma: 30,5');

const wordsFor: readonly (readonly [RegExp, Partial<Preferences>])[] = [
  [/^(us|imperial|american|lb|lbs|inch|inches|pounds)$/, { units: 'us' }],
  [/^(metric|si|kg|mm|european)$/, { units: 'metric' }],
  [/^(comma|,)$/, { decimalMark: ',' }],
  [/^(point|dot|period|\.)$/, { decimalMark: '.' }],
];

export const units: Command = {
  word: 'units',
  also: ['unit', 'my units'],
  group: 'house',
  summary: 'Your units (us or metric) and decimal mark (point or comma).',
  examples: [
    { line: 'units metric', does: 'kg, mm, N/mm, bar, km/h' },
    { line: 'units us', does: 'lb, in, lb/in, psi, mph' },
    { line: 'units comma', does: '30,5 and not 30.5' },
  ],
  takes: 'names',
  changes: true,
  run(reading, context) {
    const said = reading.names.flatMap((name) => name.toLowerCase().split(/[\s]+/)).filter((word) => word !== 'and' && word !== 'decimal');
    const { preferences } = context.asker;
    const rows = (now: Preferences) => [
      { label: 'units', cells: [unitText(now)] },
      { label: 'decimal mark', cells: [markText(now)] },
    ];
    if (said.length === 0) {
      const other = preferences.units === 'us' ? 'units metric' : 'units us';
      return {
        answer: answer('told', `Your units are ${preferences.units}.`, { rows: rows(preferences), next: [{ label: other, line: other }] }),
      };
    }
    let changed: Partial<Preferences> = {};
    for (const word of said) {
      const found = wordsFor.find(([pattern]) => pattern.test(word));
      if (!found) return refused(`Units are us or metric, the decimal mark point or comma; not ${word}.`, 'units metric');
      changed = { ...changed, ...found[1] };
    }
    const now = { ...preferences, ...changed };
    const back =
      preferences.units === now.units ? `units ${preferences.decimalMark === '.' ? 'point' : 'comma'}` : `units ${preferences.units}`;
    return {
      answer: answer('changed', `Your units are ${now.units}, with a decimal ${now.decimalMark === ',' ? 'comma' : 'point'}.`, {
        rows: rows(now),
        next: [{ label: back, line: back }],
      }),
      changes: [{ change: 'prefer', preferences: changed }],
    };
  },
};

export const me: Command = {
  word: 'me',
  also: ['who am i', 'my settings', 'my data'],
  group: 'house',
  summary: 'What is kept of you: units, cars; how to take it along or erase it.',
  examples: [{ line: 'me', does: 'your settings and cars' }],
  takes: 'nothing',
  changes: false,
  run(_, context) {
    const { asker, garage } = context;
    const cars = garage.mine.map((car) => `${car.name}${car.shared ? ' (shared here)' : ''}`).join(', ');
    const rows = [
      { label: 'units', cells: [unitText(asker.preferences)] },
      { label: 'decimal mark', cells: [markText(asker.preferences)] },
      { label: 'cars', cells: [cars === '' ? 'none yet' : cars] },
      { label: 'in use', cells: [garage.chosen?.name ?? 'none'] },
    ];
    return {
      answer: answer(
        'told',
        `${asker.name}: ${garage.mine.length === 1 ? 'one car' : `${garage.mine.length} cars`}, units ${asker.preferences.units}`,
        {
          rows,
          notes: ['Your cars are private until you share one in a room.'],
          next: [
            { label: 'export my data', line: 'export my data' },
            { label: 'forget me', line: 'forget me' },
          ],
        },
      ),
    };
  },
};

/** Where others could read it, now or later. */
export const exportElsewhere =
  'To get your data, open a new direct chat with me that nobody else was ever in, and type there: export my data';
export const exportMe: Command = {
  word: 'export my data',
  also: ['export me', 'export', 'download my data'],
  group: 'house',
  summary: 'All that is kept of you, as a file; asked for in a direct chat that nobody else was ever in.',
  examples: [{ line: 'export my data', does: 'gives you a file, or says where to ask' }],
  takes: 'nothing',
  changes: true,
  run: (_, { room }) =>
    room.private
      ? { answer: answer('changed', 'Here is all that is kept of you, as a file.'), changes: [{ change: 'export me' }] }
      : { answer: answer('told', exportElsewhere) },
};

export const forgetMe: Command = {
  word: 'forget me',
  also: ['delete me', 'delete my data', 'erase my data'],
  group: 'house',
  summary: 'Erases all that is kept of you. Asks first.',
  examples: [{ line: 'forget me', does: 'asks, then erases' }],
  takes: 'nothing',
  changes: true,
  run(_, context): Outcome {
    const cars = context.garage.mine.length;
    const what = cars === 0 ? 'your settings' : `your settings and ${cars === 1 ? 'your car' : `all ${cars} cars`} with their history`;
    return {
      answer: answer('asked', `Erase ${what}? It can't be undone.`, {
        choices: [
          { label: 'erase all that is mine', line: 'erase me' },
          { label: 'keep it', line: 'me' },
        ],
      }),
    };
  },
};
export const eraseMe: Command = {
  word: 'erase me',
  also: [],
  group: 'house',
  summary: 'Erases all that is kept of you, at once.',
  examples: [{ line: 'erase me', does: 'without asking again' }],
  takes: 'nothing',
  changes: true,
  run: () => ({ answer: answer('changed', 'All that was kept of you is erased.'), changes: [{ change: 'forget me' }] }),
};
