/** The reader of tire sizes: every form that people type, the one way of writing, and its refusals. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../../core/catalog.js';
import { designOf } from '../../../core/subjects/tires/design.js';
import { readTireSize } from '../../../core/subjects/tires/readSize.js';
import { type TireSize, writeTireSize } from '../../../core/subjects/tires/size.js';
import { speedOfSymbol_kmh } from '../../../core/subjects/tires/speedSymbol.js';

const read = (text: string): TireSize => {
  const size = readTireSize(text);
  if (isRefusal(size)) throw new Error(size.refused);
  return size;
};
const refusal = (text: string): string => {
  const size = readTireSize(text);
  return isRefusal(size) ? size.refused : `read as ${writeTireSize(size)}`;
};

const typed = [
  ['245/40R17', '245/40R17'],
  ['245/40r17', '245/40R17'],
  ['245/40 R17', '245/40R17'],
  ['245/40R 17', '245/40R17'],
  ['245/40/17', '245/40R17'],
  ['245/40-17', '245/40R17'],
  ['245-40-17', '245/40R17'],
  ['245-40R17', '245/40R17'],
  ['245 40 17', '245/40R17'],
  ['245 40 r17', '245/40R17'],
  ['245x40x17', '245/40R17'],
  [' 245 / 40 / 17 ', '245/40R17'],
  ['245\u00d740R17', '245/40R17'],
  ['245\u201340\u201317', '245/40R17'],
  ['225 45 16', '225/45R16'],
  ['205 50 15', '205/50R15'],
  ['205/50-15', '205/50R15'],
  ['265/75-15', '265/75R15'],
  ['205/50R15 86V', '205/50R15 86V'],
  ['205/50r15 86 v', '205/50R15 86V'],
  ['205/50R15 86', '205/50R15 86'],
  ['P245/40ZR17 91W', 'P245/40ZR17 91W'],
  ['p 245/40zr17 91w', 'P245/40ZR17 91W'],
  ['245/40zr17 (91Y)', '245/40ZR17 (91Y)'],
  ['245/40ZR17 (Y)', '245/40ZR17 (Y)'],
  ['245/40r17 95w xl', '245/40R17 95W XL'],
  ['245/40R17 XL 95W', '245/40R17 95W XL'],
  ['245/40R17 95W extra load', '245/40R17 95W XL'],
  ['205/65r16c 107/105t', '205/65R16C 107/105T'],
  ['205/65R16 C 107/105T', '205/65R16C 107/105T'],
  ['LT265/75R16', 'LT265/75R16'],
  ['265/75R16LT', 'LT265/75R16'],
  ['lt265/75r16 123/120q lre', 'LT265/75R16 123/120Q LRE'],
  ['LT265/75R16 10PR', 'LT265/75R16 10PR'],
  ['T125/70D16 96M', 'T125/70D16 96M'],
  ['205/60HR15', '205/60HR15'],
  ['205/60 VR 15', '205/60VR15'],
  ['235/35ZRF19 91Y', '235/35ZR19 91Y'],
  ['220/55R390', '220/55R390'],
  ['195/60B14', '195/60B14'],
  ['275/35 R18', '275/35R18'],
  ['225/70R19.5', '225/70R19.5'],
  ['165R13', '165R13'],
  ['165 r 13', '165R13'],
  ['185R14 90S', '185R14 90S'],
  ['165SR13', '165SR13'],
  ['6.40-13', '6.40-13'],
  ['6,40-13', '6.40-13'],
  ['155-13', '155-13'],
  ['155-13/6.15-13', '155-13'],
  ['31x10.50R15LT', '31x10.50R15LT'],
  ['31x10.5r15', '31x10.50R15'],
  ['31X10.5 R15 LT', '31x10.50R15LT'],
  ['31 x 10.50 - 15 lt', '31x10.50-15LT'],
  ['31/10.50R15', '31x10.50R15'],
  ['31"x10.5"R15', '31x10.50R15'],
  ['31x10,5r15', '31x10.50R15'],
  ['31 10.5 15', '31x10.50R15'],
  ['33x12.5R15LT 108Q', '33x12.50R15LT 108Q'],
  ['23.0x8.0-13', '23.0x8.0-13'],
  ['23x8-13', '23.0x8.0-13'],
  ['23/8.0-13', '23.0x8.0-13'],
  ['22.5 x 9.5 - 13', '22.5x9.5-13'],
  ['20.0x7.25-13', '20.0x7.25-13'],
  ['26.0x9.0R16', '26.0x9.0R16'],
  ['245/620R17', '245/620R17'],
] as const;

describe('reading', () => {
  it('has every row', () => expect(typed.length).toBe(66));
  it.each(typed)('%s is %s', (text, written) => {
    expect(writeTireSize(read(text))).toBe(written);
  });
  it.each(typed)('%s: what is written is read back to the same', (text) => {
    const size = read(text);
    expect(read(writeTireSize(size))).toEqual(size);
  });
  it('keeps the parts', () => {
    expect(read('P245/40ZR17 91W XL')).toEqual({
      form: 'metric',
      series: 'P',
      width_mm: 245,
      aspect: 40,
      rimCode: 17,
      rimDiameter: 17 * 0.0254,
      construction: 'radial',
      sizeSpeed: 'Z',
      service: { loadIndex: 91, speed: 'W' },
      suffixes: ['XL'],
      label: 'P245/40ZR17',
    });
    expect(read('205/65R16C 107/105T').service).toEqual({ loadIndex: 107, twinLoadIndex: 105, speed: 'T' });
    expect(read('245/40ZR17 (91Y)').service).toEqual({ loadIndex: 91, speed: 'Y', faster: true });
    expect(read('6.40-13')).toMatchObject({ form: 'older', construction: 'diagonal', width: 6.4 * 0.0254 });
    expect(read('165R13')).toMatchObject({ form: 'older', construction: 'radial', width: 0.165 });
    expect(read('23.0x8.0-13')).toMatchObject({ form: 'race', construction: 'diagonal', diameter: 23 * 0.0254, width: 8 * 0.0254 });
    expect(read('245/620R17')).toMatchObject({ form: 'race', diameter: 0.62, width: 0.245 });
  });
});

const refused = [
  ['9999/1R17', ['width 9999', 'aspect ratio 1', 'out of range']],
  ['245/400R17', ['aspect ratio 400']],
  ['245/15R17', ['aspect ratio 15']],
  ['95/40R17', ['width 95']],
  ['245/40R7', ['rim 7']],
  ['245/40R71', ['rim 71']],
  ['742 699 571', ['width 742']],
  ['60x10.5R15', ['diameter 60']],
  ['31x30.5R15', ['width 30.5']],
  ['19x8-18', ['does not leave a tire']],
  ['245/40R17 91I', ['no speed symbol I']],
  ['245/40R17 91Z', ['Z stands inside the size']],
  ['245/40R17 999W', ['load indices end at 279']],
  ['245/40R17 91W 95V', ['95V']],
  ['245/40R17 wibble', ['WIBBLE', 'load index']],
  ['245/40OR17', ['no speed symbol O']],
  ['BR78-13', ['980 lb', 'not for a width']],
  ['IR78-13', ['without I']],
  ['17x8', ['not a tire size']],
  ['18x9 -15', ['no tire']],
  ['turnip', ['turnip is not a tire size']],
  ['', ['not a tire size']],
  ['245/40', ['not a tire size']],
  [`245/40R17${' '.repeat(60)}91W`, ['too long']],
] as const;

describe('refusals', () => {
  it('has every row', () => expect(refused.length).toBe(24));
  it.each(refused)('%s', (text, words) => {
    const sentence = refusal(text);
    for (const word of words) expect(sentence).toContain(word);
    expect(sentence).not.toMatch(/NaN|undefined|Infinity/);
  });
  it('never throws and never answers without a value', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[0-9xX/R. ()-]{0,20}$/)), (text) => {
        const size = readTireSize(text);
        if (isRefusal(size)) expect(size.refused.length).toBeGreaterThan(10);
        else expect(read(writeTireSize(size))).toEqual(size);
      }),
      { numRuns: 3000 },
    );
  });
});

const speeds = fc.constantFrom(...(Object.keys(speedOfSymbol_kmh) as (keyof typeof speedOfSymbol_kmh)[]));
const metric = fc.record({
  series: fc.constantFrom('', 'P', 'LT'),
  width: fc.integer({ min: 21, max: 80 }).map((n) => n * 5 + 0),
  aspect: fc.integer({ min: 5, max: 18 }).map((n) => n * 5),
  mark: fc.constantFrom('R', 'ZR', 'D'),
  rim: fc.integer({ min: 10, max: 24 }),
  service: fc.option(fc.tuple(fc.integer({ min: 10, max: 279 }), speeds), { nil: undefined }),
  suffix: fc.constantFrom('', ' XL', ' RF'),
});

describe('properties', () => {
  it('every metric size is read, written the same, and read back, in capitals and in small letters', () => {
    fc.assert(
      fc.property(metric, ({ series, width, aspect, mark, rim, service, suffix }) => {
        const text = `${series}${width}/${aspect}${mark}${rim}${service ? ` ${service[0]}${service[1]}` : ''}${suffix}`;
        expect(writeTireSize(read(text))).toBe(text);
        expect(read(text.toLowerCase())).toEqual(read(text));
      }),
      { numRuns: 1000 },
    );
  });
  it('a wider, taller or larger-rimmed size is never smaller', () => {
    const diameter = (width: number, aspect: number, rim: number): number => {
      const design = designOf(read(`${width}/${aspect}R${rim}`));
      if (isRefusal(design)) throw new Error(design.refused);
      return design.diameter;
    };
    fc.assert(
      fc.property(metric, ({ width, aspect, rim }) => {
        const here = diameter(width, aspect, rim);
        if (width < 400) expect(diameter(width + 5, aspect, rim)).toBeGreaterThanOrEqual(here);
        if (aspect < 90) expect(diameter(width, aspect + 5, rim)).toBeGreaterThan(here);
        expect(diameter(width, aspect, rim + 1)).toBeGreaterThan(here);
      }),
    );
  });
  it('rounding moves a diameter by at most 1.5 mm', () => {
    fc.assert(
      fc.property(metric, ({ width, aspect, rim }) => {
        const design = designOf(read(`${width}/${aspect}R${rim}`));
        if (isRefusal(design)) throw new Error(design.refused);
        expect(Math.abs(design.diameter - design.nominalDiameter)).toBeLessThanOrEqual(0.0015 + 1e-12);
        expect(Math.abs(design.sectionHeight - design.nominalSectionHeight)).toBeLessThanOrEqual(0.0005 + 1e-12);
      }),
    );
  });
});
