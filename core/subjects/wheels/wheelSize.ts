/** A wheel size as it is written, and its reader. */
import { isRefusal, type Refusal, refuse } from '../../catalog.js';
import { readTireSize } from '../tires/readSize.js';

export interface WheelSize {
  /** Rim width between the bead seats, m. */
  readonly width: number;
  /** Nominal rim diameter, m. */
  readonly diameter: number;
  readonly width_in: number;
  readonly diameter_in: number;
  /** Mounting face to the rim's centre plane, m; positive when the face is outboard of it. */
  readonly offset?: number;
  /** Mounting face to the inner rim edge, m, where it was given instead. */
  readonly backspacing?: number;
}
const inch = 0.0254;
const plain = (value: number): string => String(Math.round(value * 100) / 100);

/** `17x8 ET35`, `15x8 ET-12`, `15x7 BS4.25`; `readWheelSize` reads it back to the same. */
export function writeWheelSize({ width_in, diameter_in, offset, backspacing }: WheelSize): string {
  const where = offset !== undefined ? ` ET${plain(offset * 1000)}` : backspacing !== undefined ? ` BS${plain(backspacing / inch)}` : '';
  return `${plain(diameter_in)}x${plain(width_in)}${where}`;
}

const sizeForm =
  /^(?<one>\d{1,2}(?:\.\d{1,2})?)\s*(?<flange>(?:JJ|J|K|B)(?![A-WYZ]))?\s*[Xx×*]\s*(?<two>\d{1,2}(?:\.\d{1,2})?)\s*(?<flange2>(?:JJ|J|K|B)(?![A-WYZ]))?(?:\s*H2?)?(?<rest>(?:[^\d.].*)?)$/;
const offsetForm = /^(?:ET|OFFSET|\+|IS)?\s*(?<sign>[+-])?\s*(?<offset>\d{1,3}(?:\.\d)?)\s*(?:MM)?(?:\s*(?:ET|OFFSET))?$/;
const backspacingForm =
  /^(?:BS|BACK ?SPACING|BACK ?SPACE)\s*(?<back>\d{1,2}(?:\.\d{1,3})?)\s*(?:IN|INCH(?:ES)?)?$|^(?<after>\d{1,2}(?:\.\d{1,3})?)\s*(?:IN|INCH(?:ES)?)?\s*(?:BS|BACK ?SPACING|BACK ?SPACE)$/;

const within = (value: number, low: number, high: number): boolean => value >= low && value <= high;

/**
 * Reads a wheel size: rim diameter and width in inches in either order, offset in millimetres or backspacing in inches behind, or neither.
 * `17x8 et35`, `15x7 +38`, `18x9.5 et 35`, `7.5Jx17 ET42`, `15x8 -12`, `15x7 bs 4.25`. Refused in one sentence: what is no wheel, and numbers out of range.
 */
export function readWheelSize(text: string): WheelSize | Refusal {
  const whole = text.trim();
  const tidied = whole
    .slice(0, 60)
    .normalize('NFKC')
    .toUpperCase()
    .replace(/["”″]/g, '')
    .replace(/[‐-―−]/g, '-')
    .replace(/(?<=\d),(?=\d)/g, '.')
    .replace(/\s+/g, ' ');
  const groups = sizeForm.exec(tidied)?.groups;
  if (!groups) return refuse(`${whole || 'Nothing'} is not a wheel size that I know. Wheels look like 17x8 ET35`);
  // 23.0x8.0-13 is a tire; the sign of an offset stands behind a space or ET.
  if (/\d-\d/.test(tidied) && !isRefusal(readTireSize(tidied))) return refuse(`${whole} is a tire size; wheels look like 17x8 ET35.`);
  const one = Number(groups.one);
  const two = Number(groups.two);
  // The letter marks the width (7.5Jx17); without it, the rim's diameter is the larger of the two.
  const first = groups.flange2 ? true : groups.flange ? false : one >= two;
  const [diameter_in, width_in] = first ? [one, two] : [two, one];
  const faults = [
    ...(within(diameter_in, 8, 30) ? [] : [`diameter ${diameter_in} is out of range (8 to 30 in)`]),
    ...(within(width_in, 3, 16) ? [] : [`width ${width_in} is out of range (3 to 16 in)`]),
  ];
  const size = { diameter_in, width_in, diameter: diameter_in * inch, width: width_in * inch };
  const rest = (groups.rest ?? '').trim();
  const back = backspacingForm.exec(rest)?.groups;
  const offset = offsetForm.exec(rest)?.groups;
  const backspacing_in = Number(back?.back ?? back?.after);
  const offset_mm = offset ? (offset.sign === '-' ? -1 : 1) * Number(offset.offset) : undefined;
  if (back && !within(backspacing_in, 0.5, 12)) faults.push(`backspacing ${backspacing_in} is out of range (0.5 to 12 in)`);
  if (offset_mm !== undefined && !within(offset_mm, -120, 120)) faults.push(`offset ${offset_mm} is out of range (-120 to 120 mm)`);
  if (faults.length > 0) return refuse(`${whole} is no wheel: ${faults.join(' and ')}. Wheels look like 17x8 ET35`);
  if (rest === '') return size;
  if (back) return { ...size, backspacing: backspacing_in * inch };
  if (offset_mm !== undefined) return { ...size, offset: (offset_mm === 0 ? 0 : offset_mm) / 1000 };
  return refuse(`${whole}: I can't read "${rest}" behind the wheel size; an offset looks like ET35.`);
}
