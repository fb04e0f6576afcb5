/** Wheels: how they are typed, where their edges stand, and whether there is room. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../core/catalog.js';
import { readWheelSize, type WheelSize, writeWheelSize } from '../../core/subjects/wheels/wheelSize.js';
import { ask, car, inch, refusalOf, type Told } from './tires/ask.js';

const read = (text: string): WheelSize => {
  const size = readWheelSize(text);
  if (isRefusal(size)) throw new Error(size.refused);
  return size;
};
const typed = [
  ['17x8 et35', '17x8 ET35'],
  ['15x7 +38', '15x7 ET38'],
  ['18x9.5 et 35', '18x9.5 ET35'],
  ['17x8', '17x8'],
  ['8x17', '17x8'],
  ['17x8et35', '17x8 ET35'],
  ['17x8+35', '17x8 ET35'],
  ['17x8 35', '17x8 ET35'],
  ['17x8 et35mm', '17x8 ET35'],
  ['17x8 offset 35', '17x8 ET35'],
  ['17x8 +35 offset', '17x8 ET35'],
  ['17 x 8" ET 35', '17x8 ET35'],
  ['17×7,5 et 42.5', '17x7.5 ET42.5'],
  ['7.5Jx17 ET42', '17x7.5 ET42'],
  ['7.5J x 17 H2 ET42', '17x7.5 ET42'],
  ['17x7.5J H2 ET 42', '17x7.5 ET42'],
  ['15x8 -12', '15x8 ET-12'],
  ['15x8 et-25', '15x8 ET-25'],
  ['15x8 ET −25', '15x8 ET-25'],
  ['15x7 0', '15x7 ET0'],
  ['15x7 -0', '15x7 ET0'],
  ['15x7 bs 4.25', '15x7 BS4.25'],
  ['15x7 4.25 backspacing', '15x7 BS4.25'],
  ['13x13', '13x13'],
] as const;

describe('reading a wheel size', () => {
  it('has every row', () => expect(typed.length).toBe(24));
  it.each(typed)('%s is %s', (text, written) => {
    expect(writeWheelSize(read(text))).toBe(written);
    expect(read(written)).toEqual(read(text));
  });
  it.each([
    ['17x8 et350', 'offset 350 is out of range'],
    ['17x28', 'no wheel'],
    ['40x8', 'diameter 40 is out of range'],
    ['17x2', 'width 2 is out of range'],
    ['17x8 wibble', 'WIBBLE'],
    ['17x8 bs 14', 'backspacing 14 is out of range'],
    ['23.0x8.0-13', 'is a tire size'],
    ['31x10.5r15', 'no wheel'],
    ['245/40R17', 'not a wheel size'],
    ['', 'not a wheel size'],
    ['moth', 'not a wheel size'],
  ])('%s is refused: %s', (text, words) => {
    const size = readWheelSize(text);
    expect(isRefusal(size) ? size.refused : writeWheelSize(size)).toContain(words);
  });
  it('is read back as written, for every wheel', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 24 }),
        fc.integer({ min: 8, max: 20 }),
        fc.integer({ min: -60, max: 75 }),
        (diameter, halves, offset) => {
          fc.pre(halves / 2 <= diameter);
          const text = `${diameter}x${halves / 2} ET${offset}`;
          expect(writeWheelSize(read(text))).toBe(text);
          expect(read(text).offset).toBeCloseTo(offset / 1000, 12);
        },
      ),
    );
  });
});

const wheel = (size: string, more: Told = {}): Told => ({ 'front.wheel.size': size, ...more });
const mm = (metres: number): number => metres * 1000;

describe('edges', () => {
  it('offset to backspacing and back: 8 in rim, 1 in of flanges, ET 35: 149.3 mm (geometry)', () => {
    expect(mm(ask(wheel('17x8 ET35'), 'front.wheel.backspacingNow'))).toBeCloseTo(4.5 * 25.4 + 35, 9);
    expect(mm(ask(wheel('17x8', { 'front.wheel.backspacing': (4.5 * 25.4 + 35) / 1000 }), 'front.wheel.effectiveOffset'))).toBeCloseTo(
      35,
      9,
    );
    expect(mm(ask(wheel('15x7 BS4'), 'front.wheel.effectiveOffset'))).toBeCloseTo(0, 9);
  });
  it('rim edges add up to the overall width, tire edges to the section, for any offset', () => {
    fc.assert(
      fc.property(fc.integer({ min: -40, max: 60 }), fc.constantFrom(7, 7.5, 8, 9.5), (offset, width) => {
        const told = wheel(`17x${width} ET${offset}`, { 'front.tire.size': '225/45R17' });
        expect(mm(ask(told, 'front.wheel.innerRimEdge') + ask(told, 'front.wheel.edge'))).toBeCloseTo(width * 25.4 + 25.4, 6);
        expect(ask(told, 'front.tire.innerEdge') + ask(told, 'front.tire.outerEdge')).toBeCloseTo(ask(told, 'front.tire.sectionWidth'), 9);
      }),
    );
  });
  it('17x8 et35 stands 15.7 mm further out than 15x7 +38: half an inch of rim and 3 mm less offset', () => {
    const [one, other] = ['17x8 et35', '15x7 +38'].map((text) => mm(ask(wheel(text), 'front.wheel.edge')));
    expect(one! - other!).toBeCloseTo(12.7 + 3, 9);
  });
  it('a spacer moves the wheel out: both edges by its thickness, the track by twice', () => {
    const [bare, spaced] = [0, 0.01].map((thickness) => wheel('17x8 ET35', { 'front.wheel.spacer': thickness }));
    const change = (path: string): number => mm(ask(spaced!, path) - ask(bare!, path));
    expect(change('front.wheel.edge')).toBeCloseTo(10, 9);
    expect(change('front.wheel.innerRimEdge')).toBeCloseTo(-10, 9);
    expect(change('front.wheel.trackPart')).toBeCloseTo(20, 9);
    // Backspacing is the wheel's own.
    expect(change('front.wheel.backspacingNow')).toBeCloseTo(0, 9);
  });
  it('a told offset goes before the one in the size, and the answer can say so', () => {
    const it = car(wheel('17x8 ET35', { 'front.wheel.offset': 0.04 }));
    expect(it.number('front.wheel.effectiveOffset')).toBeCloseTo(0.04, 12);
    expect(it.used('front.wheel.offsetAlone')).toContainEqual({ need: 'offset', path: 'front.wheel.offset' });
  });
  it('refuses edges without an offset, and says what to add', () => {
    expect(refusalOf(wheel('17x8'), 'front.wheel.edge')).toMatch(/offset/);
  });
  it('refuses a tire on a wheel of another rim', () => {
    expect(refusalOf(wheel('18x8 ET35', { 'front.tire.size': '245/40R17' }), 'front.tire.sectionWidth')).toContain('does not go on');
  });
});

describe('rim width against the size (ranges as remembered of ISO 4000-1: the usual printed ones)', () => {
  const rows = [
    ['205/55R16', 5.5, 7.5],
    ['195/65R15', 5.5, 7],
    ['205/50R15', 5.5, 7.5],
    ['225/50R16', 6, 8],
    ['175/70R13', 4.5, 6],
    ['225/45R17', 7, 8.5],
    ['245/40R17', 8, 9.5],
    ['255/40R17', 8.5, 10],
    ['225/40R18', 7.5, 9],
    ['275/35R18', 9, 11],
    ['265/35R18', 9, 10.5],
  ] as const;
  it('has every row', () => expect(rows.length).toBe(11));
  it.each(rows)('%s: %d to %d in', (size, least, most) => {
    const told = { 'front.tire.size': size };
    expect(ask(told, 'front.tire.leastRim') / inch).toBeCloseTo(least, 9);
    expect(ask(told, 'front.tire.mostRim') / inch).toBeCloseTo(most, 9);
  });
  it('the margin is below zero outside the range', () => {
    const margin = (text: string): number => ask(wheel(text, { 'front.tire.size': '245/40R17' }), 'front.tire.rimMargin') / inch;
    expect(margin('17x8 ET35')).toBeCloseTo(0, 9);
    expect(margin('17x8.5 ET35')).toBeCloseTo(0.5, 9);
    expect(margin('17x7 ET35')).toBeCloseTo(-1, 9);
    expect(margin('17x10 ET35')).toBeCloseTo(-0.5, 9);
  });
  it('every measuring rim is inside its range', () => {
    fc.assert(
      fc.property(fc.integer({ min: 27, max: 65 }), fc.integer({ min: 4, max: 16 }), (width, aspect) => {
        const told = { 'front.tire.size': `${width * 5}/${aspect * 5}R16` };
        const rim = ask(told, 'front.tire.measuringRim');
        expect(rim).toBeGreaterThanOrEqual(ask(told, 'front.tire.leastRim') - 1e-9);
        expect(rim).toBeLessThanOrEqual(ask(told, 'front.tire.mostRim') + 1e-9);
      }),
    );
  });
  it('no rule for flotation and race sizes', () => {
    for (const size of ['31x10.50R15LT', '23.0x8.0-13', '165R13']) {
      expect(refusalOf({ 'front.tire.size': size }, 'front.tire.leastRim')).toContain("maker's data");
    }
  });
});

describe('room', () => {
  const now: Told = { 'front.wheel.size': '17x8 ET30', 'front.tire.size': '245/40R17' };
  const gaps: Told = { 'front.gap.inside': 0.02, 'front.gap.outside': 0.015, 'front.gap.around': 0.03 };
  it('needs a measured gap or room to say anything', () => {
    expect(refusalOf(now, 'front.clear.least')).toMatch(/gap inside the tire|inside room/);
  });
  it('with the same wheels the clearance is the gap', () => {
    for (const side of ['inside', 'outside', 'around']) {
      expect(ask({ ...now, ...gaps }, `front.clear.${side}`)).toBeCloseTo(gaps[`front.gap.${side}`] as number, 12);
    }
    expect(ask({ ...now, ...gaps }, 'front.clear.least')).toBeCloseTo(0.015, 12);
  });
  it('275/35R18 on 18x9.5 ET35 instead: the gaps shrink by what the edges gain', () => {
    const then = { ...now, ...gaps };
    const other = { ...gaps, 'front.wheel.size': '18x9.5 ET35', 'front.tire.size': '275/35R18' };
    const gain = (edge: string): number => ask(other, edge) - ask(now, edge);
    expect(ask(other, 'front.clear.inside', then)).toBeCloseTo(0.02 - gain('front.tire.innerEdge'), 9);
    expect(ask(other, 'front.clear.outside', then)).toBeCloseTo(0.015 - gain('front.tire.outerEdge'), 9);
    expect(ask(other, 'front.clear.around', then)).toBeCloseTo(0.03 - (0.6497 - 0.6278) / 2, 9);
    // Section 278 mm on 9.5 in against 242.9 on 8: 17.5 mm a side; offset 5 mm inboard.
    expect(mm(gain('front.tire.innerEdge'))).toBeCloseTo((278 - 242.92) / 2 + 5, 6);
    expect(mm(gain('front.tire.outerEdge'))).toBeCloseTo((278 - 242.92) / 2 - 5, 6);
  });
  it('room measured from the hub goes before a gap', () => {
    const told = { ...now, ...gaps, 'front.room.inside': 0.2 };
    expect(ask(told, 'front.clear.inside')).toBeCloseTo(0.2 - ask(now, 'front.tire.innerEdge'), 12);
  });
});

describe('the lever', () => {
  it('moving a wheel out lowers the motion ratio, moving it in raises it', () => {
    const then = { 'rear.wheel.size': '15x7 ET20', 'rear.wheel.lever': 1.2 };
    const ratio = (offset: number): number => ask({ ...then, 'rear.wheel.size': `15x7 ET${offset}` }, 'rear.wheel.leverRatio', then);
    expect(ratio(20)).toBe(1);
    expect(ratio(0)).toBeLessThan(1);
    expect(ratio(40)).toBeGreaterThan(1);
  });
});
