import fc from 'fast-check';
import { unit as mathUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { writeExactly, writePlusMinus, writeQuantity } from '../../commands/language/quantities.js';
import { amountsOf, everydayUnits, fromSI, homeUnit, meaningsOf, toSI, units } from '../../commands/units.js';
import { type Dimension, dimensions } from '../../core/dimensions.js';

const us = { units: 'us', decimalMark: '.' } as const;
const metric = { units: 'metric', decimalMark: ',' } as const;
const all = Object.keys(units) as Dimension[];

/** Our shown units in mathjs's words: its definitions are the second opinion. Not there: what mathjs lacks, checked by hand below. */
const inMathjs: Readonly<Record<string, readonly [string, string]>> = {
  'mass lb': ['lbm', 'kg'],
  'mass kg': ['kg', 'kg'],
  'mass g': ['g', 'kg'],
  'mass t': ['tonne', 'kg'],
  'mass oz': ['oz', 'kg'],
  'force lb': ['lbf', 'N'],
  'force N': ['N', 'N'],
  'force kN': ['kN', 'N'],
  'force kg': ['kgf', 'N'],
  'length in': ['inch', 'm'],
  'length mm': ['mm', 'm'],
  'length cm': ['cm', 'm'],
  'length m': ['m', 'm'],
  'length ft': ['ft', 'm'],
  'length yd': ['yd', 'm'],
  'length km': ['km', 'm'],
  'length mi': ['mi', 'm'],
  'length thou': ['mil', 'm'],
  'rate lb/in': ['lbf/inch', 'N/m'],
  'rate N/mm': ['N/mm', 'N/m'],
  'rate kg/mm': ['kgf/mm', 'N/m'],
  'rate N/m': ['N/m', 'N/m'],
  'rate lb/ft': ['lbf/ft', 'N/m'],
  'angle °': ['deg', 'rad'],
  "angle '": ['arcmin', 'rad'],
  'angle rad': ['rad', 'rad'],
  'angle mrad': ['mrad', 'rad'],
  'pressure psi': ['psi', 'Pa'],
  'pressure bar': ['bar', 'Pa'],
  'pressure kPa': ['kPa', 'Pa'],
  'pressure Pa': ['Pa', 'Pa'],
  'pressure kg/cm²': ['kgf/cm^2', 'Pa'],
  'stress MPa': ['MPa', 'Pa'],
  'stress GPa': ['GPa', 'Pa'],
  'stress psi': ['psi', 'Pa'],
  'stress kPa': ['kPa', 'Pa'],
  'stress Pa': ['Pa', 'Pa'],
  'frequency Hz': ['Hz', 'Hz'],
  'frequency cpm': ['minute^-1', 'Hz'],
  'time s': ['s', 's'],
  'time ms': ['ms', 's'],
  'time min': ['minute', 's'],
  'time h': ['hour', 's'],
  'speed mph': ['mile/hour', 'm/s'],
  'speed km/h': ['km/hour', 'm/s'],
  'speed m/s': ['m/s', 'm/s'],
  'speed ft/s': ['ft/s', 'm/s'],
  'speed in/s': ['inch/s', 'm/s'],
  'speed mm/s': ['mm/s', 'm/s'],
  'acceleration m/s²': ['m/s^2', 'm/s^2'],
  'acceleration ft/s²': ['ft/s^2', 'm/s^2'],
  'angularSpeed rad/s': ['rad/s', 'rad/s'],
  'angularSpeed °/s': ['deg/s', 'rad/s'],
  'turnsPerLength /mile': ['mile^-1', 'm^-1'],
  'turnsPerLength /km': ['km^-1', 'm^-1'],
  'turnsPerLength /m': ['m^-1', 'm^-1'],
  'ratioPerLength /in': ['inch^-1', 'm^-1'],
  'ratioPerLength /mm': ['mm^-1', 'm^-1'],
  'ratioPerLength /m': ['m^-1', 'm^-1'],
  'torque lb-ft': ['lbf ft', 'N m'],
  'torque N·m': ['N m', 'N m'],
  'torque lb-in': ['lbf inch', 'N m'],
  'torque kg·m': ['kgf m', 'N m'],
  'rollStiffness lb-ft/deg': ['lbf ft/deg', 'N m/rad'],
  'rollStiffness N·m/deg': ['N m/deg', 'N m/rad'],
  'rollStiffness N·m/rad': ['N m/rad', 'N m/rad'],
  'rollStiffness lb-in/deg': ['lbf inch/deg', 'N m/rad'],
  'power hp': ['hp', 'W'],
  'power kW': ['kW', 'W'],
  'power W': ['W', 'W'],
  'power PS': ['75 kgf m/s', 'W'],
  'powerPerMass hp/lb': ['hp/lbm', 'W/kg'],
  'powerPerMass W/kg': ['W/kg', 'W/kg'],
  'powerPerMass kW/kg': ['kW/kg', 'W/kg'],
  'energy kJ': ['kJ', 'J'],
  'energy J': ['J', 'J'],
  'energy MJ': ['MJ', 'J'],
  'energy Wh': ['Wh', 'J'],
  'dampingRate lb·s/in': ['lbf s/inch', 'N s/m'],
  'dampingRate N·s/m': ['N s/m', 'N s/m'],
  'dampingRate N·s/mm': ['N s/mm', 'N s/m'],
  'dampingRate kg·s/mm': ['kgf s/mm', 'N s/m'],
  'volume gal': ['gal', 'm^3'],
  'volume L': ['L', 'm^3'],
  'volume cc': ['cc', 'm^3'],
  'volume in³': ['cuin', 'm^3'],
  'volume m³': ['m^3', 'm^3'],
  'volume qt': ['qt', 'm^3'],
};
/** Those that mathjs does not have: REFERENCES section 1 (U3, U15), and arithmetic on definitions. */
const byHand: Readonly<Record<string, number>> = {
  'ratio ': 1,
  'ratio %': 0.01,
  'mass slug': 14.593902937206362,
  'acceleration g': 9.80665,
  'angularSpeed rpm': (2 * Math.PI) / 60,
  'angularSpeed x1000 rpm': (2000 * Math.PI) / 60,
  'temperature K': 1,
  'stress ksi': 6894757.293168361,
  'stress Mpsi': 6894757293.168361,
};

describe('factors', () => {
  const rows: readonly (readonly [string, number])[] = all.flatMap((dimension) =>
    units[dimension]
      .filter((unit) => unit.offset === undefined && !Number.isNaN(unit.factor))
      .map((unit) => [String(`${dimension} ${unit.shown}`), unit.factor] as const),
  );
  test.each(rows)('%s', (name, factor) => {
    const theirs = inMathjs[name];
    const want = theirs ? mathUnit(theirs[0]).toNumber(theirs[1]) : byHand[name];
    expect(want, `nothing to compare ${name} with`).toBeDefined();
    expect(Math.abs(factor / (want ?? Number.NaN) - 1)).toBeLessThan(1e-9);
  });
  test('no comparison is left over', () => {
    const names = new Set(rows.map(([name]) => name));
    for (const name of [...Object.keys(inMathjs), ...Object.keys(byHand)]) expect(names.has(name), name).toBe(true);
  });
  // REFERENCES section 1, rows U1 to U12: exact by definition (BIPM SI brochure, NIST SP 811 App. B).
  test.each([
    [1, 'in', 'length', 0.0254],
    [1, 'lb', 'mass', 0.45359237],
    [1, 'lbf', 'force', 4.4482216152605],
    [1, 'psi', 'pressure', 6894.757293168361],
    [14.503773773020923, 'psi', 'pressure', 1e5],
    [1, 'lb/in', 'rate', 175.12683524647636],
    [55.99741459495891, 'lb/in', 'rate', 9806.65],
    [8, 'kg/mm', 'rate', 78453.2],
    [1, 'lb-ft', 'torque', 1.3558179483314003],
    [1, 'lb-in', 'torque', 0.11298482902761668],
    [1, 'hp', 'power', 745.6998715822702],
    [1, 'ps', 'power', 735.49875],
    [1, 'mph', 'speed', 0.44704],
    [1, 'mile', 'length', 1609.344],
    [0, '°c', 'temperature', 273.15],
    [-40, '°f', 'temperature', 233.15],
    [-40, '°c', 'temperature', 233.15],
    [100, 'f', 'temperature', 310.92777777777775],
  ] as const)('%d %s is a %s of %d', (value, spelling, dimension, si) => {
    const found = amountsOf(value, spelling).find((one) => one.dimension === dimension);
    expect(Math.abs((found?.si ?? Number.NaN) - si)).toBeLessThan(1e-12 * Math.max(1, Math.abs(si)));
  });
});
describe('meanings', () => {
  test.each([
    ['lb', ['mass', 'force']],
    ['kg', ['mass', 'force']],
    ['nm', ['torque']],
    ["'", ['length', 'angle']],
    ['k', ['rate', 'angularSpeed', 'temperature']],
    ['psi', ['pressure', 'stress']],
    ['g', ['mass', 'acceleration']],
    ['%', ['ratio']],
    ['furlong', []],
    ['constructor', []],
  ])('%s', (spelling, wanted) => expect(meaningsOf(spelling).map((one) => one.dimension)).toEqual(wanted));

  test('absolute pressures and temperatures are affine, their differences are not', () => {
    const psia = meaningsOf('psia')[0]?.unit;
    const degF = meaningsOf('°f')[0]?.unit;
    if (!psia || !degF) throw new Error('psia and °f are spellings');
    // REFERENCES U6: 1 atm is 14.69594877551345 psi, so 0 gauge.
    expect(toSI(14.69594877551345, psia, us)).toBeCloseTo(0, 6);
    expect(toSI(10, degF, us, true)).toBeCloseTo(10 / 1.8, 12);
  });
  test('a bare degree of temperature is the member’s', () => {
    const degree = units.temperature.find((one) => one.shown === '°');
    if (!degree) throw new Error('there is a bare degree');
    expect(toSI(100, degree, us)).toBeCloseTo(310.9277777777778, 9);
    expect(toSI(100, degree, metric)).toBeCloseTo(373.15, 9);
  });
  test('every spelling is lower case, and of one unit in a dimension', () => {
    for (const dimension of all) {
      const seen = new Set<string>();
      for (const one of units[dimension])
        for (const typed of one.typed) {
          expect(typed).toBe(typed.toLowerCase());
          expect(seen.has(typed), `${typed} twice in ${dimension}`).toBe(false);
          seen.add(typed);
        }
    }
  });
  test('every dimension has a home in both systems', () => {
    for (const dimension of Object.keys(dimensions) as Dimension[])
      for (const preferences of [us, metric]) expect(everydayUnits(dimension, preferences)[0]).toBe(homeUnit(dimension, preferences));
  });
});
describe('writing', () => {
  const rate = 175.12683524647636;
  test.each([
    [1.9312, 'frequency', 0.1134, '1.93 Hz', '± 0.11'],
    [1300 * rate, 'rate', 250 * rate, '1,300 lb/in', '± 300'],
    [1304 * rate, 'rate', 250 * rate, '1,300 lb/in', '± 300'],
    [1.93, 'frequency', 0.0962, '1.93 Hz', '± 0.10'],
    [1.93, 'frequency', 0.0996, '1.93 Hz', '± 0.10'],
    [0.52, 'ratio', 0.005, '0.520', '± 0.005'],
    [-0.0004, 'ratio', 0.02, '0.00', '± 0.02'],
    [0.0254 * 101.3, 'length', 0, '101.3 in', ''],
    [Math.PI / 180, 'angle', undefined, '1°', ''],
    [-2.5 * (Math.PI / 180), 'angle', undefined, '-2.5°', ''],
    [12345.678 * 0.0254, 'length', undefined, '12,346 in', ''],
  ] as const)('%d %s ± %d is %s', (si, dimension, within, text, plusMinus) => {
    expect(writeQuantity(si, dimension, us, within)).toBe(text);
    expect(writePlusMinus(within ?? 0, dimension, us)).toBe(plusMinus);
  });
  test('in the member’s units and decimal mark, without marks between thousands', () => {
    expect(writeQuantity(2.5705, 'length', metric)).toBe('2570,5 mm');
    expect(writeQuantity(210_500, 'pressure', metric)).toBe('2,105 bar');
    expect(writeQuantity(0.009525, 'length', us, undefined, { unit: 'mm' })).toBe('9.525 mm');
    expect(writeQuantity(0.525, 'ratio', us, undefined, { percent: true })).toBe('52.5 %');
    expect(writeQuantity(5, 'temperature', us, undefined, { difference: true, signed: true })).toBe('+9 °F');
  });
  test('written exactly, it reads back as the same number', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...all),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.constantFrom(us, metric),
        (dimension, value, preferences) => {
          const unit = homeUnit(dimension, preferences);
          const si = toSI(value, unit, preferences);
          const number = writeExactly(si, dimension, preferences).replace(unit.shown, '').trim().replace(',', '.');
          expect(Math.abs(toSI(Number(number), unit, preferences) - si)).toBeLessThanOrEqual(1e-11 * Math.max(1, Math.abs(si)));
        },
      ),
    );
  });
  test('SI and back', () => {
    fc.assert(
      fc.property(fc.constantFrom(...all), fc.nat(), fc.double({ min: -1e6, max: 1e6, noNaN: true }), (dimension, n, value) => {
        const usable = units[dimension].filter((one) => !Number.isNaN(one.factor));
        const unit = usable[n % usable.length];
        if (!unit) return;
        expect(Math.abs(fromSI(toSI(value, unit, us), unit) - value)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(value)));
      }),
    );
  });
});
