/**
 * A reading as one short line, for corpora:
 * `VERB | on CAR: ITEM, ITEM vs ITEM | goal: ITEM | with: ITEM | against: ITEM | unit: mm | names: a, b | everything: front | mended | evidence: spec`.
 * An item is `place.path=value`, several places joined by `+`, `path?` where no place was said; numbers are SI to five digits, so that an expectation may be
 * written in any unit (`front.spring.rate=450 lb/in`). A stop is `asked: ...`, `refused: ...`, `beyond: ...`; what follows are pieces of its sentence or lines.
 */

import type { Item, Reading, Stop } from '../../commands/reading.js';
import { isStop } from '../../commands/reading.js';
import type { Setting } from '../../commands/resolve.js';
import { placesOf } from '../../core/engine.js';

/** Factors of the expectations, from the definitions of REFERENCES section 1 and not from the table under test. */
const factors: Readonly<Record<string, number>> = {
  'lb/in': 175.12683524647636,
  'N/mm': 1000,
  'kg/mm': 9806.65,
  lb: 0.45359237,
  lbf: 4.4482216152605,
  kg: 1,
  in: 0.0254,
  mm: 0.001,
  m: 1,
  psi: 6894.757293168361,
  bar: 1e5,
  kPa: 1e3,
  deg: Math.PI / 180,
  mph: 0.44704,
  'km/h': 1 / 3.6,
  rpm: Math.PI / 30,
  Hz: 1,
  '%': 0.01,
  g: 9.80665,
  gal: 0.003785411784,
};
const digits = (value: number): string => String(Number(value.toPrecision(5)));

/** Numbers with a unit in an expectation, in SI. */
export function expected(text: string): string {
  return text
    .replace(
      /([=~]|\.\.)(-?\d+(?:\.\d+)?)(?:\.\.(-?\d+(?:\.\d+)?))?(?: ?(lb\/in|N\/mm|kg\/mm|lbf|lb|kg|in|mm|psi|bar|kPa|deg|mph|km\/h|rpm|Hz|gal|%|g|m))?(?![\w/])/g,
      (_, mark: string, from: string, to: string | undefined, unit: string | undefined) => {
        const factor = unit === undefined ? 1 : (factors[unit] ?? Number.NaN);
        return `${mark}${digits(Number(from) * factor)}${to === undefined ? '' : `..${digits(Number(to) * factor)}`}`;
      },
    )
    .trim();
}
function saidText(item: Item): string {
  const { said } = item;
  if (!said) return '';
  const mark = said.change === 'plus' ? '+=' : said.change === 'times' ? '*=' : '=';
  const { value } = said;
  if (typeof value === 'string') return `${mark}${value}`;
  if (typeof value === 'object')
    return `${mark}${value.between}[${value.x.map((x, n) => `${digits(x)}:${digits(value.y[n] ?? Number.NaN)}`).join(' ')}]`;
  return `${mark}${digits(value)}${said.to === undefined ? '' : `..${digits(said.to)}`}${said.within === undefined ? '' : `~${digits(said.within)}`}`;
}
export function itemText(item: Item): string {
  const one = placesOf(item.entry.scope).length === 1;
  const where = one ? '' : item.placed ? `${item.places.join('+')}.` : '';
  return `${where}${item.entry.path}${one || item.placed ? '' : '?'}${saidText(item)}`;
}
const items = (all: readonly Item[]): string => all.map(itemText).join(', ');

export function describeReading(reading: Reading, setting: Setting): string {
  const side = (one: Reading['sides'][number]): string => {
    const who = one.subjects.map((subject) => {
      if (subject.is === 'car') return [...setting.cars, ...setting.others].find((car) => car.id === subject.id)?.name ?? '?';
      if (subject.is === 'setup') return subject.name;
      if (subject.is === 'member') return `@${setting.members.find((member) => member.id === subject.id)?.name ?? '?'}`;
      return 'now';
    });
    return `${who.length > 0 ? `on ${who.join(' ')}: ` : ''}${items(one.items)}`.trim();
  };
  const sides = reading.sides.map(side).join(' vs ');
  const calc = reading.verb === 'calc';
  const parts = [
    reading.verb ?? 'none',
    reading.mended ? 'mended' : '',
    sides,
    reading.goal ? `goal: ${itemText(reading.goal)}` : '',
    reading.tried.length > 0 ? `with: ${items(reading.tried)}` : '',
    reading.against ? `against: ${itemText(reading.against)}` : '',
    reading.wantedUnit ? `unit: ${reading.wantedUnit}` : '',
    reading.everything ? `everything: ${reading.everything.places.join(' ') || 'all'}` : '',
    reading.names.length > 0 && !(calc && !reading.wantedUnit) ? `names: ${reading.names.join(', ')}` : '',
    calc && !reading.wantedUnit ? `rest: ${reading.rest}` : '',
    reading.evidence ? `evidence: ${reading.evidence}` : '',
  ];
  return parts.filter((part) => part !== '').join(' | ');
}
/** What is wrong with a reading against its expectation, or undefined. */
export function mismatch(got: Reading | Stop, want: string, setting: Setting): string | undefined {
  const stop = /^(asked|refused|beyond): ?(.*)$/.exec(want);
  if (!stop) {
    const text = isStop(got)
      ? `${got.stop}: ${got.sentence} ${got.stop === 'asked' ? got.choices.map((choice) => choice.line).join(' | ') : (got.line ?? '')}`
      : describeReading(got, setting);
    return text.replace(/\s+/g, ' ') === expected(want).replace(/\s+/g, ' ') ? undefined : text;
  }
  if (!isStop(got)) return describeReading(got, setting);
  const text = `${got.sentence} ${got.stop === 'asked' ? got.choices.map((choice) => choice.line).join(' | ') : (got.line ?? '')}`;
  const separator = got.stop === 'asked' ? ' | ' : ', ';
  const missing = (stop[2] ?? '').split(separator).filter((part) => part !== '' && !text.toLowerCase().includes(part.toLowerCase()));
  return got.stop === stop[1] && missing.length === 0
    ? undefined
    : `${got.stop}: ${text}${missing.length > 0 ? ` (without ${missing.join(' and ')})` : ''}`;
}
export const expand = (line: string): string =>
  line
    .replace('{{empty}}', '')
    .replace(/\{\{u\+([0-9a-f]{4,6})\}\}/gi, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)))
    .replace(/\{\{repeat:(.):(\d+)\}\}/g, (_, text: string, times: string) => text.repeat(Number(times)));
