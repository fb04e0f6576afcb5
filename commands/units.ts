/**
 * Units as people type them, each with its exact factor to SI, and quantities as they are written.
 * A spelling may mean several things (`lb` a mass or a force, `'` feet or minutes): the dimension that is wanted decides.
 */
import type { Dimension } from '../core/dimensions.js';
import type { Preferences } from './context.js';

// Exact definitions: BIPM SI brochure; NIST SP 811 App. B (international inch and pound, standard gravity, horsepower of 550 ft lbf/s and of 75 kgf m/s).
const inch = 0.0254;
const foot = 12 * inch;
const mile = 5280 * foot;
const pound = 0.45359237;
const gravity = 9.80665;
const poundForce = pound * gravity;
const psi = poundForce / inch ** 2;
/** Gauge zero, in pascals. */
export const atmosphere = 101325;
const degree = Math.PI / 180;
const turn = 2 * Math.PI;

interface Unit {
  /** As written in answers. */
  readonly shown: string;
  /** As typed, lower case, the plainest first. */
  readonly typed: readonly string[];
  readonly factor: number;
  /** SI = number * factor + offset. */
  readonly offset?: number;
}
const unit = (shown: string, typed: string, factor: number, offset?: number): Unit => ({
  shown,
  typed: typed.split('|'),
  factor,
  ...(offset === undefined ? {} : { offset }),
});

/** Spring rates: `450 lb/in`, `8 kg/mm`, and `8k` between people who say kilos. */
const rates: readonly Unit[] = [
  unit(
    'lb/in',
    'lb/in|lbs/in|lb/inch|lbs/inch|lbf/in|lbf/inch|#/in|#/inch|lb per in|lbs per in|lb per inch|lbs per inch|pounds per inch|pound per inch|lb-in|lb/"|lbs/"|lb in|lbs in',
    poundForce / inch,
  ),
  unit('N/mm', 'n/mm|newton/mm|newtons/mm|n per mm|newtons per mm|kn/m', 1e3),
  unit('kg/mm', 'kg/mm|kgf/mm|kgs/mm|kg per mm|kilo/mm|kilos/mm|k', gravity * 1e3),
  unit('N/m', 'n/m|n per m', 1),
  unit('lb/ft', 'lb/ft|lbf/ft|lbs/ft', poundForce / foot),
];
const pressures: readonly Unit[] = [
  unit('psi', 'psi|psig|lb/in2|lb/in²|lb/in^2|lb/sq in|pounds of air', psi),
  unit('bar', 'bar|bars|b', 1e5),
  unit('kPa', 'kpa', 1e3),
  unit('Pa', 'pa|pascal|pascals', 1),
  unit('kg/cm²', 'kg/cm2|kg/cm²|kg/cm^2|kgf/cm2|kgf/cm²|kgf/cm^2', gravity * 1e4),
  unit('psi absolute', 'psia|psi abs|psi absolute', psi, -atmosphere),
  unit('bar absolute', 'bara|bar abs|bar absolute', 1e5, -atmosphere),
  unit('kPa absolute', 'kpa abs|kpa absolute', 1e3, -atmosphere),
];

/** By dimension; the first unit of each is not special: the member's own is in `home`. Pressures are gauge, as gauges read. */
export const units: Readonly<Record<Dimension, readonly Unit[]>> = {
  ratio: [unit('', ':1|to 1|to one', 1), unit('%', '%|percent|per cent|pct|procent', 0.01)],
  mass: [
    unit('lb', 'lb|lbs|lb.|lbs.|pound|pounds|#', pound),
    unit('kg', 'kg|kgs|kilo|kilos|kilogram|kilograms', 1),
    unit('g', 'g|gram|grams', 1e-3),
    unit('t', 't|ton|tons|tonne|tonnes', 1e3),
    unit('slug', 'slug|slugs', poundForce / foot),
    unit('oz', 'oz|ounce|ounces', pound / 16),
  ],
  force: [
    unit('lb', 'lb|lbs|lbf|lb.|lbs.|pound|pounds|#', poundForce),
    unit('N', 'n|newton|newtons', 1),
    unit('kN', 'kn', 1e3),
    unit('kg', 'kg|kgs|kgf|kp|kilo|kilos', gravity),
  ],
  length: [
    unit('in', "in|in.|ins|inch|inches|\"|''|″", inch),
    unit('mm', 'mm|mms|millimeter|millimeters|millimetre|millimetres', 1e-3),
    unit('cm', 'cm|cms|centimeter|centimeters|centimetre|centimetres', 1e-2),
    unit('m', 'm|meter|meters|metre|metres', 1),
    unit('ft', "ft|ft.|foot|feet|'|′", foot),
    unit('yd', 'yd|yds|yard|yards', 3 * foot),
    unit('km', 'km|kms|kilometer|kilometers|kilometre|kilometres', 1e3),
    unit('mi', 'mi|mile|miles', mile),
    unit('thou', 'thou|mil|mils', inch / 1000),
  ],
  rate: rates,
  angle: [
    unit('°', '°|deg|degs|deg.|degree|degrees|º|˚', degree),
    unit("'", "'|′|min|mins|minute|minutes|arcmin", degree / 60),
    unit('rad', 'rad|rads|radian|radians', 1),
    unit('mrad', 'mrad', 1e-3),
  ],
  pressure: pressures,
  stress: [
    unit('MPa', 'mpa|n/mm2|n/mm²|n/mm^2', 1e6),
    unit('GPa', 'gpa', 1e9),
    unit('ksi', 'ksi|kpsi', psi * 1e3),
    unit('Mpsi', 'mpsi', psi * 1e6),
    unit('psi', 'psi', psi),
    unit('kPa', 'kpa', 1e3),
    unit('Pa', 'pa', 1),
  ],
  frequency: [unit('Hz', 'hz|hertz|cps|1/s', 1), unit('cpm', 'cpm|cycles per minute', 1 / 60)],
  time: [
    unit('s', 's|sec|secs|sec.|second|seconds', 1),
    unit('ms', 'ms', 1e-3),
    unit('min', 'min|mins|minute|minutes', 60),
    unit('h', 'h|hr|hrs|hour|hours', 3600),
  ],
  speed: [
    unit('mph', 'mph|mi/h|m/h|miles per hour|miles an hour', mile / 3600),
    unit('km/h', 'km/h|kmh|kph|kmph|k/h|km per hour|kilometers per hour', 1 / 3.6),
    unit('m/s', 'm/s|mps|m per s', 1),
    unit('ft/s', 'ft/s|fps|ft per s', foot),
    unit('in/s', 'in/s|ips|in/sec|inch/s|in per s|"/s', inch),
    unit('mm/s', 'mm/s|mm/sec', 1e-3),
  ],
  acceleration: [unit('g', "g|g's|gs|gee|gees", gravity), unit('m/s²', 'm/s2|m/s²|m/s^2', 1), unit('ft/s²', 'ft/s2|ft/s²|ft/s^2', foot)],
  angularSpeed: [
    unit('rpm', 'rpm|rpms|r/min|rev/min|1/min|revs', turn / 60),
    // 7.2k on a rev counter.
    unit('x1000 rpm', 'k|k rpm|krpm', (turn / 60) * 1e3),
    unit('rad/s', 'rad/s', 1),
    unit('°/s', '°/s|deg/s', degree),
  ],
  turnsPerLength: [
    unit('/mile', '/mile|per mile|turns per mile|turns/mile|rev/mile|revs/mile|revs per mile|rpmile', 1 / mile),
    unit('/km', '/km|per km|turns per km|turns/km|rev/km|revs/km|revs per km', 1e-3),
    unit('/m', '/m|per m|1/m', 1),
  ],
  ratioPerLength: [unit('/in', '/in|per in|per inch|1/in', 1 / inch), unit('/mm', '/mm|per mm|1/mm', 1e3), unit('/m', '/m|per m|1/m', 1)],
  torque: [
    unit(
      'lb-ft',
      'lb-ft|lbs-ft|lb ft|lbs ft|lbft|lbf-ft|lbf ft|ft-lb|ft-lbs|ft lb|ft lbs|ftlb|ftlbs|foot pounds|foot-pounds|pound feet|lb·ft|lbf·ft|lb.ft|ft·lb',
      poundForce * foot,
    ),
    unit('N·m', 'nm|n·m|n m|n.m|n-m|newton meters|newton meter|newton metres', 1),
    unit('lb-in', 'lb-in|in-lb|in-lbs|in lb|in lbs|inch pounds|lbf-in|lb·in', poundForce * inch),
    unit('kg·m', 'kg·m|kgm|kgf m|kgf·m|mkg', gravity),
  ],
  rollStiffness: [
    unit(
      'lb-ft/deg',
      'lb-ft/deg|lb ft/deg|lbf-ft/deg|ft-lb/deg|ft lb/deg|ft-lbs/deg|lbft/deg|lb-ft/°|lb ft per deg',
      (poundForce * foot) / degree,
    ),
    unit('N·m/deg', 'nm/deg|n·m/deg|nm/°|n·m/°|n m/deg|nm per deg', 1 / degree),
    unit('N·m/rad', 'nm/rad|n·m/rad|n m/rad', 1),
    unit('lb-in/deg', 'lb-in/deg|in-lb/deg|lb in/deg', (poundForce * inch) / degree),
  ],
  power: [
    unit('hp', 'hp|bhp|whp|horsepower|horse|horses', 550 * foot * poundForce),
    unit('kW', 'kw|kilowatt|kilowatts', 1e3),
    unit('PS', 'ps|cv|metric hp', 75 * gravity),
    unit('W', 'w|watt|watts', 1),
  ],
  powerPerMass: [
    unit('hp/lb', 'hp/lb|hp per lb|hp per pound', (550 * foot * poundForce) / pound),
    unit('W/kg', 'w/kg|w per kg|watts per kg', 1),
    unit('kW/kg', 'kw/kg', 1e3),
  ],
  energy: [
    unit('kJ', 'kj|kilojoule|kilojoules', 1e3),
    unit('J', 'j|joule|joules', 1),
    unit('MJ', 'mj|megajoule', 1e6),
    unit('Wh', 'wh|watt hours', 3600),
  ],
  dampingRate: [
    unit('lb·s/in', 'lb·s/in|lb s/in|lb-s/in|lbs/in/s|lb/in/s|lb/(in/s)|lbf s/in|lbf·s/in', poundForce / inch),
    unit('N·s/m', 'n·s/m|ns/m|n s/m|n-s/m|n/(m/s)', 1),
    unit('N·s/mm', 'n·s/mm|ns/mm|n s/mm', 1e3),
    unit('kg·s/mm', 'kgf s/mm|kg s/mm', gravity * 1e3),
  ],
  volume: [
    unit('gal', 'gal|gals|gallon|gallons', 231 * inch ** 3),
    unit('L', 'l|liter|liters|litre|litres|ltr', 1e-3),
    unit('cc', 'cc|cm3|cm³|cm^3|ml', 1e-6),
    unit('in³', 'in3|in³|in^3|cu in|ci', inch ** 3),
    unit('m³', 'm3|m³|m^3', 1),
    unit('qt', 'qt|quart|quarts', (231 * inch ** 3) / 4),
  ],
  temperature: [
    unit('°F', '°f|f|degf|deg f|degrees f|fahrenheit|deg fahrenheit|degrees fahrenheit|ºf', 5 / 9, (459.67 * 5) / 9),
    unit('°C', '°c|c|degc|deg c|degrees c|celsius|centigrade|degrees celsius|deg celsius|ºc', 1, 273.15),
    unit('K', 'k|kelvin', 1),
    // Nobody says which: the member's own scale.
    unit('°', '°|deg|degs|degree|degrees', Number.NaN),
  ],
};

const dimensionNames: readonly Dimension[] = Object.keys(units) as Dimension[];
/** The member's own unit, by dimension. */
const home: Readonly<Record<Preferences['units'], Readonly<Record<Dimension, string>>>> = {
  us: {
    ratio: '',
    mass: 'lb',
    force: 'lb',
    length: 'in',
    rate: 'lb/in',
    angle: '°',
    pressure: 'psi',
    stress: 'ksi',
    frequency: 'Hz',
    time: 's',
    speed: 'mph',
    acceleration: 'g',
    angularSpeed: 'rpm',
    turnsPerLength: '/mile',
    ratioPerLength: '/in',
    torque: 'lb-ft',
    rollStiffness: 'lb-ft/deg',
    power: 'hp',
    powerPerMass: 'hp/lb',
    energy: 'kJ',
    dampingRate: 'lb·s/in',
    volume: 'gal',
    temperature: '°F',
  },
  metric: {
    ratio: '',
    mass: 'kg',
    force: 'N',
    length: 'mm',
    rate: 'N/mm',
    angle: '°',
    pressure: 'bar',
    stress: 'MPa',
    frequency: 'Hz',
    time: 's',
    speed: 'km/h',
    acceleration: 'g',
    angularSpeed: 'rpm',
    turnsPerLength: '/km',
    ratioPerLength: '/m',
    torque: 'N·m',
    rollStiffness: 'N·m/deg',
    power: 'kW',
    powerPerMass: 'W/kg',
    energy: 'kJ',
    dampingRate: 'N·s/m',
    volume: 'L',
    temperature: '°C',
  },
};
/** What a bare number may also mean, if it can't be in the member's own unit. */
const everyday: Partial<Readonly<Record<Dimension, readonly string[]>>> = {
  ratio: ['', '%'],
  mass: ['lb', 'kg'],
  force: ['lb', 'N'],
  length: ['in', 'mm'],
  rate: ['lb/in', 'N/mm', 'kg/mm'],
  pressure: ['psi', 'bar', 'kPa'],
  stress: ['ksi', 'MPa', 'GPa'],
  speed: ['mph', 'km/h'],
  torque: ['lb-ft', 'N·m'],
  rollStiffness: ['lb-ft/deg', 'N·m/deg'],
  power: ['hp', 'kW'],
  volume: ['gal', 'L'],
  temperature: ['°F', '°C'],
  turnsPerLength: ['/mile', '/km'],
};

export const unitShown = (dimension: Dimension, shown: string): Unit | undefined => units[dimension].find((one) => one.shown === shown);
/** The member's own unit of a dimension. */
export function homeUnit(dimension: Dimension, preferences: Preferences): Unit {
  const found = unitShown(dimension, home[preferences.units][dimension]);
  if (!found) throw new Error(`no unit is shown for ${dimension}`);
  return found;
}
/** The member's own unit first, then the others that a bare number may be in. */
export function everydayUnits(dimension: Dimension, preferences: Preferences): readonly Unit[] {
  return familiar[preferences.units].get(dimension) ?? [homeUnit(dimension, preferences)];
}
function familiarTo(system: Preferences['units']): ReadonlyMap<Dimension, readonly Unit[]> {
  const preferences: Preferences = { units: system, decimalMark: '.' };
  return new Map(
    dimensionNames.map((dimension) => {
      const own = homeUnit(dimension, preferences);
      const others = (everyday[dimension] ?? []).map((shown) => unitShown(dimension, shown)).filter((one) => one !== undefined);
      return [dimension, [own, ...others.filter((one) => one !== own)]];
    }),
  );
}
const familiar = { us: familiarTo('us'), metric: familiarTo('metric') };

export interface Meaning {
  readonly dimension: Dimension;
  readonly unit: Unit;
}
const meanings = new Map<string, Meaning[]>();
for (const dimension of dimensionNames)
  for (const one of units[dimension])
    for (const typed of one.typed) {
      const known = meanings.get(typed) ?? [];
      known.push({ dimension, unit: one });
      meanings.set(typed, known);
    }
/** Every spelling, lower case. */
export const spellings: readonly string[] = [...meanings.keys()];
/** What a spelling can mean; none for a spelling that nobody knows. */
export const meaningsOf = (spelling: string): readonly Meaning[] => meanings.get(spelling.toLowerCase().trim()) ?? [];

/** A number in a unit, in SI. A difference (2 psi less, 10 °F more) has no offset. */
export function toSI(value: number, one: Unit, preferences: Preferences, difference = false): number {
  // A bare degree of temperature is the member's own.
  const real = Number.isNaN(one.factor) ? homeUnit('temperature', preferences) : one;
  return value * real.factor + (difference ? 0 : (real.offset ?? 0));
}
export const fromSI = (si: number, one: Unit, difference = false): number => (si - (difference ? 0 : (one.offset ?? 0))) / one.factor;

export interface AmountRead {
  readonly dimension: Dimension;
  readonly si: number;
}
const plainly: Preferences = { units: 'us', decimalMark: '.' };
/** Everything that a number with this unit can be: `5 lb` is a mass and a force. */
export const amountsOf = (value: number, spelling: string, preferences: Preferences = plainly): AmountRead[] =>
  meaningsOf(spelling).map(({ dimension, unit: one }) => ({ dimension, si: toSI(value, one, preferences) }));

/** What a quantity of that dimension is called in a sentence: `a rate`, `a length`. */
export const dimensionWords: Readonly<Record<Dimension, string>> = {
  ratio: 'a plain number',
  mass: 'a weight',
  force: 'a force',
  length: 'a length',
  rate: 'a rate',
  angle: 'an angle',
  pressure: 'a pressure',
  stress: 'a stress',
  frequency: 'a frequency',
  time: 'a time',
  speed: 'a speed',
  acceleration: 'an acceleration',
  angularSpeed: 'an engine speed',
  turnsPerLength: 'turns per distance',
  ratioPerLength: 'a change of ratio over travel',
  torque: 'a torque',
  rollStiffness: 'a roll stiffness',
  power: 'a power',
  powerPerMass: 'a power over weight',
  energy: 'an energy',
  dampingRate: 'a damping rate',
  volume: 'a volume',
  temperature: 'a temperature',
};
