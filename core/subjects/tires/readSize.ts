/** Reads a tire size in any of the forms in which people write them. */
import { isRefusal, type Refusal, refuse } from '../../catalog.js';
import { letterLoads_lb } from './letterLoads.js';
import { readTail, type Tail } from './readTail.js';
import type { FlotationSize, MetricSize, OlderSize, RaceSize, Series, TireSize } from './size.js';
import { isSpeedSymbol, type SpeedSymbol } from './speedSymbol.js';

const inch = 0.0254;
const number = '\\d{1,4}(?:\\.\\d{1,3})?';
/** What stands before the rim code: a speed letter and the construction, or only a sign or a space. */
const before = '(?:\\s*[/-]?\\s*(?<letter>[A-Z])?(?<construction>RF|R|D|B)\\s*-?\\s*|\\s*[/x-]\\s*|\\s+)';
const rim = '(?<rim>\\d{1,3}(?:\\.5)?)(?![\\d.])';
const metricForm = new RegExp(
  `^(?<series>P|LT|ST|T)?\\s*(?<width>\\d{2,4})\\s*(?:[/x-]\\s*|\\s+)(?<aspect>\\d{1,3})${before}${rim}(?<tail>.*)$`,
);
// A dash with a space before it only is the sign of a wheel's offset, not a tire: 18x9 -15.
const inchForm = new RegExp(
  `^(?<diameter>${number})(?:\\s*[x/]\\s*|\\s+(?=\\d+\\.\\d))(?<width>${number})(?!\\s+-\\d)(?:\\s*(?<construction>RF|R|D|B)\\s*-?\\s*|\\s*(?<dash>-)\\s*|\\s*[/x]\\s*|\\s+)${rim}(?<tail>.*)$`,
);
const olderForm = new RegExp(
  `^(?<width>\\d{3}|\\d{1,2}\\.\\d{2})\\s*(?<letter>[A-Z])?\\s*(?<construction>R|D|B|-)\\s*${rim}(?:/(?<twin>\\d{1,2}\\.\\d{2})-\\k<rim>)?(?<tail>.*)$`,
);
const letterForm = /^(?<letter>[A-Z])(?<construction>R)?\s?(?<aspect>50|60|70|78)\s?-?\s?(?<rim>1[0-8])$/;

const limits = {
  width_mm: [105, 405],
  aspect: [20, 95],
  rim_in: [8, 30],
  rim_mm: [300, 600],
  diameter_in: [18.5, 45],
  width_in: [4, 18],
} as const;
const within = (value: number, [low, high]: readonly [number, number]): boolean => value >= low && value <= high;
const outside = (name: string, value: string, [low, high]: readonly [number, number], unit: string): string =>
  `${name} ${value} is out of range (${low} to ${high}${unit})`;
const sentence = (whole: string, faults: readonly string[]): Refusal =>
  refuse(`${whole} is no tire: ${faults.join(' and ')}. Sizes look like 245/40R17`);

const constructionOf = (mark: string | undefined): 'radial' | 'diagonal' | 'belted' =>
  mark === 'D' || mark === '-' ? 'diagonal' : mark === 'B' ? 'belted' : 'radial';
const rimOf = (code: number): { readonly rimCode: number; readonly rimDiameter: number } => ({
  rimCode: code,
  rimDiameter: code >= 100 ? code / 1000 : code * inch,
});
const rimFault = (code: string): string[] =>
  within(Number(code), Number(code) >= 100 ? limits.rim_mm : limits.rim_in) ? [] : [outside('rim', code, limits.rim_in, ' in')];
/** A metric size with a bare dash is written so by habit: its tires are radial unless it says D or B. */
const written = { radial: 'R', diagonal: 'D', belted: 'B' } as const;

function speedInside(letter: string | undefined, whole: string): { readonly sizeSpeed?: SpeedSymbol | 'Z' } | Refusal {
  if (letter === undefined) return {};
  if (letter === 'Z' || isSpeedSymbol(letter)) return { sizeSpeed: letter };
  return refuse(`${whole}: there is no speed symbol ${letter}; before the R stands Z, V, H, T or S, or nothing.`);
}
const isSeries = (text: string | undefined): text is Series => text === 'P' || text === 'LT' || text === 'T' || text === 'ST';

type Groups = Readonly<Record<string, string | undefined>>;

function metric(groups: Groups, tail: Tail, whole: string): MetricSize | RaceSize | Refusal {
  const { series: prefix, width = '', aspect = '', letter, construction: mark, rim: code = '' } = groups;
  const speed = speedInside(letter, whole);
  if (isRefusal(speed)) return speed;
  const construction = constructionOf(mark);
  const inside = `${speed.sizeSpeed ?? ''}${written[construction]}`;
  const shared = { ...rimOf(Number(code)), ...speed, construction, service: tail.service, suffixes: tail.suffixes };
  // 245/620R17: the second number can only be a diameter.
  if (prefix === undefined && within(Number(width), limits.width_mm) && within(Number(aspect), [450, 850])) {
    const faults = rimFault(code);
    if (faults.length > 0 || Number(aspect) / 1000 < shared.rimDiameter + 0.08)
      return sentence(whole, faults.length > 0 ? faults : [`diameter ${aspect} mm does not leave a tire on that rim`]);
    return {
      form: 'race',
      ...shared,
      label: `${width}/${aspect}${inside}${Number(code)}`,
      diameter: Number(aspect) / 1000,
      width: Number(width) / 1000,
    };
  }
  const faults = [
    ...(within(Number(width), limits.width_mm) ? [] : [outside('width', width, limits.width_mm, ' mm')]),
    ...(within(Number(aspect), limits.aspect) ? [] : [outside('aspect ratio', aspect, limits.aspect, '')]),
    ...rimFault(code),
  ];
  if (faults.length > 0) return sentence(whole, faults);
  const series = isSeries(prefix) ? prefix : tail.lightTruck ? 'LT' : undefined;
  return {
    form: 'metric',
    ...(series === undefined ? {} : { series }),
    ...shared,
    label: `${series ?? ''}${Number(width)}/${Number(aspect)}${inside}${Number(code)}`,
    width_mm: Number(width),
    aspect: Number(aspect),
  };
}
const decimals = (value: number, least: number): string => {
  const plain = String(value);
  return value.toFixed(least).length > plain.length || !plain.includes('.') ? value.toFixed(least) : plain;
};

function inches(groups: Groups, tail: Tail, whole: string): FlotationSize | RaceSize | Refusal {
  const { diameter: diameterText = '', width: widthText = '', construction: mark, dash, rim: code = '' } = groups;
  const diameter = Number(diameterText);
  const width = Number(widthText);
  const faults = [
    ...(within(diameter, limits.diameter_in) ? [] : [outside('diameter', diameterText, limits.diameter_in, ' in')]),
    ...(within(width, limits.width_in) ? [] : [outside('width', widthText, limits.width_in, ' in')]),
    ...rimFault(code),
  ];
  if (faults.length === 0 && diameter < Number(code) + 3.5)
    faults.push(`diameter ${diameterText} in does not leave a tire on a ${code} in rim`);
  if (faults.length > 0) return sentence(whole, faults);
  const shared = { ...rimOf(Number(code)), service: tail.service, suffixes: tail.suffixes };
  // Light-truck sizes have a whole diameter; race sizes are told by their smaller diameters or decimals.
  const flotation = tail.lightTruck || (Number.isInteger(diameter) && !diameterText.includes('.') && diameter >= 27 && dash === undefined);
  if (flotation) {
    const construction = constructionOf(mark ?? dash);
    const sign = construction === 'diagonal' ? '-' : written[construction];
    return {
      form: 'flotation',
      ...shared,
      construction,
      lightTruck: tail.lightTruck,
      label: `${diameter}x${decimals(width, 2)}${sign}${Number(code)}${tail.lightTruck ? 'LT' : ''}`,
      diameter_in: diameter,
      width_in: width,
    };
  }
  const construction = constructionOf(mark ?? '-');
  return {
    form: 'race',
    ...shared,
    construction,
    label: `${decimals(diameter, 1)}x${decimals(width, 1)}${construction === 'diagonal' ? '-' : written[construction]}${Number(code)}`,
    diameter: diameter * inch,
    width: width * inch,
  };
}

function older(groups: Groups, tail: Tail, whole: string): OlderSize | Refusal {
  const { width = '', letter, construction: mark, rim: code = '' } = groups;
  const speed = speedInside(letter, whole);
  if (isRefusal(speed)) return speed;
  const inInches = width.includes('.');
  const faults = [
    ...(within(Number(width), inInches ? limits.width_in : limits.width_mm)
      ? []
      : [inInches ? outside('width', width, limits.width_in, ' in') : outside('width', width, limits.width_mm, ' mm')]),
    ...rimFault(code),
  ];
  if (faults.length > 0) return sentence(whole, faults);
  const construction = constructionOf(mark);
  const sign = construction === 'diagonal' ? '-' : written[construction];
  return {
    form: 'older',
    ...rimOf(Number(code)),
    ...speed,
    construction,
    service: tail.service,
    suffixes: tail.suffixes,
    label: `${inInches ? Number(width).toFixed(2) : width}${speed.sizeSpeed ?? ''}${sign}${Number(code)}`,
    width: inInches ? Number(width) * inch : Number(width) / 1000,
  };
}

function letterSize(groups: Groups, whole: string): Refusal {
  const load = letterLoads_lb[groups.letter ?? ''];
  return refuse(
    load
      ? `${whole}: the letter stands for a load (${load.at24psi} lb at 24 psi), not for a width, so its dimensions can't be worked out; use its metric replacement, as in 205/70R14.`
      : `${whole}: no such load letter exists; letter sizes run from A to N without I.`,
  );
}

/** What leads is a metric width, not a diameter in inches. */
const isWidth = (lead: string | undefined, text: string): boolean => Number(lead) >= (text.includes('/') ? 50 : 100);

const longest = 60;
/** Capitals, a small x for every sign of multiplication, points for decimal commas, single spaces, without what is not seen. */
const tidy = (text: string): string =>
  text
    .normalize('NFKC')
    .toUpperCase()
    .replace(/["”″]/g, '')
    .replace(/(?<=\d\s*)[X×*](?=\s*\d)/g, 'x')
    .replace(/[‐-―−]/g, '-')
    .replace(/(?<=\d),(?=\d)/g, '.')
    .replace(/\s+/g, ' ')
    .trim();

/**
 * Reads a tire size.
 * Forms: metric (`P245/40ZR17 91W`, `245 40 17`, `205/50-15`), older without ratio (`165R13`, `6.40-13`), flotation (`31x10.50R15LT`),
 * race (`23.0x8.0-13`, `245/620R17`); upper or lower case, with load index, speed symbol and suffixes behind.
 * Refused in one sentence: what is no size, and numbers out of a tire's range, each named.
 */
export function readTireSize(text: string): TireSize | Refusal {
  if (text.length > longest) return refuse('That is too long for a tire size. Sizes look like 245/40R17');
  const tidied = tidy(text);
  for (const [form, make] of [
    [inchForm, inches],
    [metricForm, metric],
    [olderForm, older],
  ] as const) {
    const groups = form.exec(tidied)?.groups;
    if (!groups || (form === inchForm && isWidth(groups.diameter, tidied))) continue;
    const tail = readTail(groups.tail ?? '', text.trim());
    return isRefusal(tail) ? tail : make(groups, tail, text.trim());
  }
  const letters = letterForm.exec(tidied)?.groups;
  if (letters) return letterSize(letters, text.trim());
  return refuse(
    `${text.trim() || 'An empty line'} is not a tire size that I know. Sizes look like 245/40R17, 165R13, 31x10.50R15LT or 23.0x8.0-13.`,
  );
}
