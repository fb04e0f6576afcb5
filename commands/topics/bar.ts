/** Anti-roll bars, with a saved car or none: one bar's rate, one against another, how to set links neutral, and what a share of roll stiffness asks. */

import { isRefusal } from '../../core/catalog.js';
import { pathAt, placesOf, probe } from '../../core/engine.js';
import { crossHooked, linkForce, preload, shorten } from '../../core/subjects/bars/preload.js';
import { twistRatio } from '../../core/subjects/bars/ratio.js';
import { barForShare } from '../../core/subjects/bars/share.js';
import * as bars from '../../core/subjects/bars/stiffness.js';
import { barBore, barDiameter, barLever, linkLonger } from '../../core/subjects/bars/told.js';
import { balanceIndex } from '../../core/subjects/cornering/balance.js';
import { rollAngle } from '../../core/subjects/roll/leaning.js';
import * as rolls from '../../core/subjects/roll/stiffness.js';
import { answer, type Row } from '../answer.js';
import { oneByOne } from '../breathing.js';
import type { Command, Outcome } from '../command.js';
import type { Context } from '../context.js';
import { refused } from '../house/own.js';
import { catalog, type Looked, numbersOf } from '../looked.js';
import type { Item, Reading } from '../reading.js';
import { bare, sentence, writing } from '../show/amount.js';
import { labelAt } from '../show/label.js';
import { type Side, sideLine } from '../show/sides.js';
import { typed } from '../show/typed.js';
import { askedOf } from '../verbs/asked.js';
import { sidesOf } from '../verbs/compare.js';
import { placesFor } from './places.js';
import { type Topic, topicAnswer } from './topic.js';

const barTopic: Topic = {
  word: 'bar',
  also: ['sway bar', 'anti-roll bar', 'arb'],
  summary: 'Anti-roll bars: rate, one size or hole against another, links and preload.',
  examples: [
    { line: 'bar 22 mm vs 25 mm', does: 'how much stiffer, with no car' },
    { line: 'bar hole 9.5 in vs hole 8 in', does: 'one hole against another' },
    { line: 'how do i set the endlinks neutral', does: 'and what a mismatch does' },
    { line: 'springs alone are 60% front, what front bar for 70% front', does: 'a share of roll stiffness' },
  ],
  alone: 'bar 22 mm vs 25 mm',
  figures: [
    bars.barRate,
    bars.barWheelRate,
    bars.barRollStiffness,
    rolls.barShare,
    rolls.suspensionRollStiffness,
    rolls.rollStiffnessShare,
    bars.barWeight,
    crossHooked,
    preload,
    linkForce,
  ],
};
const dueToLinks: readonly string[] = [preload.path, crossHooked.path, linkForce.path, shorten.path];
const isFact = (item: Item): boolean => item.said !== undefined;
const times = (ratio: number): string => Number(ratio.toPrecision(3)).toString();
/** `80 % stiffer`, `2.4 times as stiff`. */
const stiffness = (ratio: number): string => {
  const percent = Math.round(Math.abs(ratio - 1) * 100);
  return percent === 0 ? 'no stiffer' : `${percent} % ${ratio > 1 ? 'stiffer' : 'softer'}`;
};
const links = (rows: readonly Row[]): string => (rows.length > 0 ? ' Links that give take some of it.' : '');

/** `springs alone are 60% front, what rear bar gets 80% front`: shares of roll stiffness, with no car. */
const forShare =
  /^(?:the |my )?springs (?:alone )?(?:are|is|give) (\d{1,3}(?:\.\d{1,3})?) ?% front,? (?:what|which) (front|rear) (?:anti-?roll ?bar|sway ?bar|arb|bar) (?:gets|gives|for|makes|do i need for) (\d{1,3}(?:\.\d{1,3})?) ?% front\W*$/i;
function ofShare(text: string, context: Context): Outcome | undefined {
  const found = forShare.exec(text);
  if (!found) return undefined;
  const [, springs, end, wanted] = found;
  const [s, w] = [Number(springs) / 100, Number(wanted) / 100];
  if (!(s > 0 && s < 1 && w > 0 && w < 1))
    return refused('A share lies between 0 and 100 %.', 'springs alone are 60% front, what front bar for 70% front');
  const asked = end?.toLowerCase() === 'rear' ? 'rear' : 'front';
  const other = asked === 'rear' ? 'front' : 'rear';
  const [x, instead] = [barForShare(s, w, asked), barForShare(s, w, other)];
  const percent = (part: number) => `${Number((100 * part).toPrecision(3))} %`;
  const does = asked === 'rear' ? 'A rear bar only takes the front share down' : 'A front bar only takes the front share up';
  const line = `springs alone are ${percent(s).replace(' ', '')} front, what ${other} bar for ${percent(w).replace(' ', '')} front`;
  const notes = [
    `Shares of roll stiffness: all springs together are 100 %. On a saved car, find does it with its own numbers: ${typed('what front bar for 60% front roll share', context.room)}`,
  ];
  if (x < 0)
    return {
      answer: answer(
        'refused',
        `${does}: from ${percent(s)}, ${percent(w)} would take a bar below zero (${percent(x)} of the springs). A ${other} bar of ${percent(instead)} of the roll stiffness of all springs does it.`,
        { next: [{ label: `what ${other} bar`, line }] },
      ),
    };
  const headline = `A ${asked} bar of ${percent(x)} of the roll stiffness of all springs takes the front share from ${percent(s)} to ${percent(w)}.`;
  return { answer: answer('told', headline, { amount: bare(x, 'ratio', { units: 'us', decimalMark: '.' }), notes }) };
}

const numberSaid = (items: readonly Item[], entry: Item['entry']): number | undefined => {
  const value = items.find((item) => item.entry === entry)?.said?.value;
  return typeof value === 'number' ? value : undefined;
};
/** The second bar over the first by what the line tells alone, where it tells enough; the car's own bar where it has to. */
function ratioOf(reading: Reading, sides: readonly Side[]): number | undefined {
  const both = reading.sides.slice(0, 2);
  const saidOf = (entry: Item['entry']): boolean => both.some(({ items }) => numberSaid(items, entry) !== undefined);
  // A side that is only the car as it stands has its own bar, at the end that the other side names.
  const named = both.find(({ items }) => items.length > 0)?.items[0]?.places[0] ?? 'front';
  const shapes = both.map(({ items }, at) => {
    const numbers = sides[at] && numbersOf(sides[at].looked.situation);
    const place = items[0]?.places[0] ?? named;
    const own = (entry: Item['entry']): number | undefined => (items.length === 0 && saidOf(entry) ? known(entry) || undefined : undefined);
    const known = (entry: Item['entry']): number => {
      const value = numbers?.number(pathAt(placesOf(entry.scope).includes(place) ? place : (placesOf(entry.scope)[0] ?? ''), entry));
      return value === undefined || isRefusal(value) ? 0 : value;
    };
    return {
      outer: numberSaid(items, barDiameter) ?? own(barDiameter),
      bore: numberSaid(items, barBore) ?? known(barBore),
      lever: numberSaid(items, barLever) ?? own(barLever),
    };
  });
  const [a, b] = shapes;
  if (!a || !b) return undefined;
  const sized = a.outer !== undefined && b.outer !== undefined;
  const held = a.lever !== undefined && b.lever !== undefined;
  if ((!sized && !held) || (a.outer === undefined) !== (b.outer === undefined) || (a.lever === undefined) !== (b.lever === undefined))
    return undefined;
  const shape = (one: typeof a) => ({ outer: one.outer ?? 1, bore: sized ? one.bore : 0, lever: one.lever ?? 1 });
  const ratio = twistRatio(shape(a), shape(b));
  return Number.isFinite(ratio) && ratio > 0 ? ratio : undefined;
}
/** What the change means on the car: only where the line says which end, or for figures of the bar itself. */
async function rowsOf(sides: readonly Side[], told: readonly Item[], { asker, breathe }: Context): Promise<readonly Row[]> {
  const placed = told.every(({ placed: where }) => where);
  const ends = new Set(told.flatMap(({ places }) => places.map((place) => (/^(?:front|lf|rf)$/.test(place) ? 'front' : 'rear'))));
  const own = [bars.barRate, bars.barRollStiffness].flatMap((entry) => [...ends].map((end) => pathAt(end, entry)));
  const whole = placed && ends.size === 1 ? [rolls.rollStiffnessShare, rollAngle, balanceIndex].map((entry) => entry.path) : [];
  const lines = await oneByOne([...own, ...whole], breathe, (path) => sideLine(path, sides, asker.preferences));
  return lines.flatMap((line) => (line && line.weight > 0 ? [line.row] : []));
}
async function against(reading: Reading, context: Context): Promise<Outcome> {
  const sides = sidesOf(reading, context);
  if ('answer' in sides) return sides;
  const told = reading.sides.flatMap(({ items }) => items.filter(isFact));
  const ratio = reading.sides.length === 2 ? ratioOf(reading, sides) : undefined;
  if (ratio === undefined) return topicAnswer(barTopic, reading, context);
  const [first = '', second = ''] = reading.sides.map(({ items }) =>
    items.length === 0 ? 'the one fitted' : items.map(({ said }) => said?.text ?? '').join(', '),
  );
  const byHole = told.some(({ entry }) => entry === barLever);
  // Without a car there is only the bar: the rest would be assumed.
  const rows = sides.some(({ looked }) => looked.car) ? await rowsOf(sides, told, context) : [];
  return {
    answer: answer('told', `${sentence(second)} is ${stiffness(ratio)} than ${first}${byHole ? ', at the wheel' : ''}.`, {
      amount: { si: ratio, dimension: 'ratio', text: times(ratio) },
      notes: [`${byHole ? 'Twist of the bar alone, by the lever squared.' : 'Twist of the bar alone, by its diameter.'}${links(rows)}`],
      ...(rows.length > 0 ? { further: [{ name: 'on the car', columns: [first, second, 'change'], rows }] } : {}),
    }),
  };
}

const steps = [
  'Level ground, tires at pressure, driver or ballast in, wheel straight.',
  'One link of the bar off. Bounce, let it settle.',
  'Turn that link until its bolt slips in by hand, then lock it.',
];
/** How to take preload out, and what is in it now. */
function neutral(looked: Looked, items: readonly Item[], context: Context): Outcome {
  const { preferences } = context.asker;
  const numbers = numbersOf(looked.situation);
  const ends = (['front', 'rear'] as const).filter((end) =>
    items.every((item) => item.entry.scope !== 'axle' || item.places.includes(end)),
  );
  const rows: Row[] = [];
  let headline = 'Neutral links: the last bolt slips in by hand, car level on its wheels.';
  for (const end of ends) {
    const path = pathAt(end, linkLonger);
    const longer = numbers.number(path);
    if (numbers.status(path) !== 'told' || isRefusal(longer) || longer === 0) continue;
    const way = longer > 0 ? 'Shorten' : 'Lengthen';
    headline = `${way} the left ${end} link by ${bare(Math.abs(longer), 'length', preferences).text}, and the preload is out.`;
  }
  for (const end of ends) {
    const [base, moved] = probeOf(looked, pathAt(end, linkLonger));
    if (base === undefined || moved === undefined || base === moved) continue;
    rows.push({
      label: `${end}: 1 mm longer left`,
      cells: [bare(moved - base, 'ratio', preferences, Math.abs(moved - base) / 20, { percent: true, signed: true }).text],
    });
  }
  const cross = numbers.number(crossHooked.path);
  if (!isRefusal(cross) && rows.length > 0)
    rows.unshift({
      label: labelAt(crossHooked, ''),
      cells: [bare(cross, 'ratio', preferences, numbers.within(crossHooked.path), writing(crossHooked))],
    });
  return {
    answer: answer('told', headline, {
      rows,
      notes: [
        steps.map((step, at) => `${at + 1}. ${step}`).join('\n'),
        ...(rows.length > 1 ? ['The rows: cross weight, and what a link moves it by.'] : []),
      ],
      cautions: shorten.caution === undefined ? [] : [shorten.caution],
      next: looked.car && looked.current ? [{ label: 'left link 5 mm longer', line: 'try front left endlink 5 mm longer' }] : [],
    }),
  };
}
const probeOf = (looked: Looked, path: string): readonly (number | undefined)[] => {
  const ask = probe(catalog, looked.situation, [path], [crossHooked.path]);
  return [ask(0)[0], ask(0.001)[0]];
};

function run(reading: Reading, context: Context): Outcome | Promise<Outcome> {
  const share = ofShare(reading.names.join(' '), context);
  if (share) return share;
  if (reading.sides.length > 1) return against(reading, context);
  const asked = askedOf(reading.sides[0], reading, context);
  if ('answer' in asked) return asked;
  const wanted = asked.items.filter(({ entry }) => entry.kind === 'figure');
  if (wanted.some(({ entry }) => entry.path === shorten.path)) return neutral(asked.looked, wanted, context);
  const told = [...(reading.sides[0]?.items ?? []), ...reading.tried].filter(isFact);
  const linked = told.some(({ entry }) => entry.path.startsWith('bar.link') || entry.path === 'bar.end');
  if (linked) return topicAnswer({ ...barTopic, figures: [crossHooked, preload, linkForce, shorten] }, reading, context);
  const numbers = numbersOf(asked.looked.situation);
  const places = placesFor(barDiameter, told);
  const none = places.every((end) => {
    const rate = numbers.number(pathAt(end, bars.barRate));
    return isRefusal(rate) || rate === 0;
  });
  if (told.length === 0 && (none || !asked.looked.car))
    return refused(
      asked.looked.car ? `Nobody told me a bar for ${asked.looked.car.name}, so I take it to have none.` : 'Which bar?',
      asked.looked.car ? 'set front bar 22 mm' : 'bar 22 mm vs 25 mm',
    );
  // What links do is told where a mismatch is.
  const mismatch = (['front', 'rear'] as const).some((end) => numbers.status(pathAt(end, linkLonger)) === 'told');
  const figures = mismatch
    ? [crossHooked, ...barTopic.figures.filter((entry) => entry !== crossHooked)]
    : barTopic.figures.filter(({ path }) => !dueToLinks.includes(path));
  return topicAnswer({ ...barTopic, figures }, reading, context);
}
export const bar: Command = {
  word: barTopic.word,
  also: barTopic.also,
  group: 'topic',
  summary: barTopic.summary,
  examples: barTopic.examples,
  takes: 'items',
  changes: false,
  hears: (text) => forShare.test(text),
  run,
};
