/** The little words of the language: what they do, what is skipped, and how words are made one (plural, British, short). */

import type { Dimension } from '../core/dimensions.js';

/** A table without a prototype: a line may say `constructor`. */
const table = <V>(rows: Readonly<Record<string, V>>): ReadonlyMap<string, V> => new Map(Object.entries(rows));

/** Skipped wherever a phrase of the catalogs does not use them. */
export const fillers: ReadonlySet<string> = new Set(
  `a an the is are was be been being am it its of do does did done has have had having my mine our your i we me us you what whats which how much many
  please pls plz thx thanks thank hey hi ok okay so just now then there here this that these those would will wouldnt could can should shall may might
  need needs want wants get gets got give gives go goes going went make makes say says said tell let use using put run running about around car cars
  value number figure amount me exactly actually really also if when far move moved moving swap swapped switch switched ask neutral by off come comes came long off it's im ill id id like lets like s
  range something kind thing same each one gimme currently today please honestly anyway dude man guys`
    .split(/\s+/)
    .filter((word) => word !== 'about' && word !== 'now'),
);

/** Which corners or ends a word means; `stuck` ones are only read beside a number. */
export const placeWords: ReadonlyMap<string, readonly string[]> = table<readonly string[]>({
  front: ['front', 'lf', 'rf'],
  rear: ['rear', 'lr', 'rr'],
  back: ['rear', 'lr', 'rr'],
  frt: ['front', 'lf', 'rf'],
  fronts: ['front', 'lf', 'rf'],
  rears: ['rear', 'lr', 'rr'],
  fore: ['front', 'lf', 'rf'],
  aft: ['rear', 'lr', 'rr'],
  left: ['lf', 'lr'],
  right: ['rf', 'rr'],
  lefthand: ['lf', 'lr'],
  righthand: ['rf', 'rr'],
  lf: ['lf'],
  rf: ['rf'],
  lr: ['lr'],
  rr: ['rr'],
  fl: ['lf'],
  fr: ['rf'],
  rl: ['lr'],
  lh: ['lf', 'lr'],
  rh: ['rf', 'rr'],
  f: ['front', 'lf', 'rf'],
  r: ['rear', 'lr', 'rr'],
});
export const everywhere: readonly string[] = ['front', 'rear', 'lf', 'rf', 'lr', 'rr'];
/** Ways to say all wheels or both ends. */
export const allRound: readonly (readonly string[])[] = [
  ['all', 'round'],
  ['all', 'around'],
  ['all', 'four'],
  ['all', '4'],
  ['every', 'corner'],
  ['all', 'corner'],
  ['all', 'wheel'],
  ['each', 'corner'],
  ['both', 'end'],
  ['both', 'axle'],
  ['everywhere'],
];

/** What joins two sides. */
export const between: ReadonlySet<string> = new Set(['vs', 'v', 'versus', 'against', 'or', 'instead', 'than', 'compared', 'rather']);
export const withWords: ReadonlySet<string> = new Set(['with', 'w', 'assuming', 'given', 'if', 'wth']);
export const joints: ReadonlySet<string> = new Set(['and', 'n', 'plus', 'then']);
export const forWords: ReadonlySet<string> = new Set([
  'for',
  'give',
  'gives',
  'giving',
  'get',
  'gets',
  'make',
  'makes',
  'reach',
  'reaches',
  'hit',
  'hits',
  'to',
]);

/** A change of what is there: which way, and whether it speaks of a rate. */
export const changeWords: ReadonlyMap<string, 1 | -1> = table<1 | -1>({
  more: 1,
  extra: 1,
  higher: 1,
  stiffer: 1,
  up: 1,
  taller: 1,
  wider: 1,
  heavier: 1,
  bigger: 1,
  harder: 1,
  faster: 1,
  thicker: 1,
  less: -1,
  lower: -1,
  softer: -1,
  down: -1,
  narrower: -1,
  lighter: -1,
  smaller: -1,
  fewer: -1,
  slower: -1,
  thinner: -1,
});

/** Of these, what changes an amount that follows: `more 50 lb`. The others compare (`how much stiffer is a 24 mm bar`): after an amount only are they a change. */
export const leadingChanges: ReadonlySet<string> = new Set(['more', 'extra', 'up', 'less', 'down', 'fewer']);

/** What comparatives are said of; `24 mm stiffer` is no change of 24 mm. Those that are not here are said of anything. */
export const comparedIn: ReadonlyMap<string, readonly Dimension[]> = table<readonly Dimension[]>({
  stiffer: ['rate', 'rollStiffness'],
  softer: ['rate', 'rollStiffness'],
  harder: ['rate', 'rollStiffness', 'pressure'],
  heavier: ['mass', 'force'],
  lighter: ['mass', 'force'],
  taller: ['length'],
  wider: ['length'],
  narrower: ['length'],
  thicker: ['length'],
  thinner: ['length'],
});

/** Short forms, read only where the catalogs have no such word of their own. */
export const shortForms: ReadonlyMap<string, readonly string[]> = table<readonly string[]>({
  wb: ['wheelbase'],
  freq: ['frequency'],
  freqs: ['frequency'],
  ht: ['height'],
  dia: ['diameter'],
  diam: ['diameter'],
  mr: ['motion', 'ratio'],
  wt: ['weight'],
  weighs: ['weight'],
  wgt: ['weight'],
  press: ['pressure'],
  pres: ['pressure'],
  temp: ['temperature'],
  temps: ['temperature'],
  fd: ['final', 'drive'],
  cog: ['cg'],
  spd: ['speed'],
  revs: ['engine', 'speed'],
  rpm: ['engine', 'speed'],
  mph: ['speed'],
  speedo: ['speedometer'],
  od: ['outside', 'diameter'],
  id: ['inside', 'diameter'],
  susp: ['suspension'],
  pax: ['passenger'],
  ratios: ['ratio'],
  hz: ['ride', 'frequency'],
  stiff: ['rate'],
  tall: ['diameter'],
  heavy: ['weight'],
  fast: ['speed'],
  weigh: ['weight'],
  wheight: ['weight'],
  percentage: ['percent'],
  psi: ['pressure'],
});

/** Evidence in so many words. */
export const evidenceWords: readonly { readonly words: readonly string[]; readonly evidence: 'measured' | 'spec' | 'estimated' }[] = [
  { words: ['from', 'the', 'spec', 'sheet'], evidence: 'spec' },
  { words: ['from', 'a', 'spec', 'sheet'], evidence: 'spec' },
  { words: ['spec', 'sheet'], evidence: 'spec' },
  { words: ['from', 'the', 'box'], evidence: 'spec' },
  { words: ['on', 'the', 'box'], evidence: 'spec' },
  { words: ['from', 'the', 'manual'], evidence: 'spec' },
  { words: ['from', 'the', 'maker'], evidence: 'spec' },
  { words: ['per', 'the', 'maker'], evidence: 'spec' },
  { words: ['as', 'sold'], evidence: 'spec' },
  { words: ['advertised'], evidence: 'spec' },
  { words: ['from', 'spec'], evidence: 'spec' },
  { words: ['measured'], evidence: 'measured' },
  { words: ['i', 'measured'], evidence: 'measured' },
  { words: ['weighed'], evidence: 'measured' },
  { words: ['on', 'the', 'scales'], evidence: 'measured' },
  { words: ['maybe'], evidence: 'estimated' },
  { words: ['probably'], evidence: 'estimated' },
  { words: ['i', 'think'], evidence: 'estimated' },
  { words: ['i', 'guess'], evidence: 'estimated' },
  { words: ['estimated'], evidence: 'estimated' },
  { words: ['estimate'], evidence: 'estimated' },
  { words: ['guess'], evidence: 'estimated' },
  { words: ['guessed'], evidence: 'estimated' },
  { words: ['about'], evidence: 'estimated' },
  { words: ['roughly'], evidence: 'estimated' },
  { words: ['approx'], evidence: 'estimated' },
  { words: ['approximately'], evidence: 'estimated' },
  { words: ['a', 'hair', 'under'], evidence: 'estimated' },
  { words: ['a', 'hair', 'over'], evidence: 'estimated' },
  { words: ['just', 'under'], evidence: 'estimated' },
  { words: ['just', 'over'], evidence: 'estimated' },
  { words: ['around'], evidence: 'estimated' },
  { words: ['ish'], evidence: 'estimated' },
];

/** British and American as one, after the plural is taken off. */
const spelledAlike: ReadonlyMap<string, string> = table<string>({
  tyre: 'tire',
  centre: 'center',
  metre: 'meter',
  kilometre: 'kilometer',
  litre: 'liter',
  aluminium: 'aluminum',
  colour: 'color',
  castor: 'caster',
  gauge: 'gauge',
  gage: 'gauge',
  calliper: 'caliper',
  axel: 'axle',
  wheelspan: 'wheelspan',
  percentage: 'percent',
  frequencie: 'frequency',
  radii: 'radius',
  indices: 'index',
  grey: 'gray',
  masse: 'mass',
  geometrie: 'geometry',
});
const keepsS: ReadonlySet<string> = new Set([
  'mass',
  'gas',
  'bias',
  'radius',
  'modulus',
  'stress',
  'loss',
  'units',
  'us',
  'vs',
  'is',
  'this',
  'less',
  'plus',
  'chassis',
  'bus',
  'pass',
  'cross',
  'press',
  'thickness',
  'stiffness',
  'class',
  'unless',
  'versus',
  'across',
  'diameters?',
]);
const memo = new Map<string, string>();

/** A word in the singular and in one spelling. */
export function stem(word: string): string {
  const known = memo.get(word);
  if (known !== undefined) return known;
  let out = word;
  if (word.length > 3 && !keepsS.has(word)) {
    if (/(?:ss|us|is)$/.test(word)) out = word;
    else if (/(?:ch|sh|x|ss)es$/.test(word)) out = word.slice(0, -2);
    else if (/[^aeiou]ies$/.test(word)) out = `${word.slice(0, -3)}y`;
    else if (word.endsWith('s')) out = word.slice(0, -1);
  }
  out = spelledAlike.get(out) ?? out;
  // People's slips come and go: the memory is for words of the language, and bounded.
  if (memo.size < 4000) memo.set(word, out);
  return out;
}

/** Prepositions and such, which do nothing where no rule of the grammar takes them. */
export const littleWords: ReadonlySet<string> = new Set(
  'to for on in by into as at from over after under still only per called named alone side now'.split(' '),
);
/** Words with a part in the grammar: a phrase of the catalogs is found without them. */
export const isGrammar = (word: string): boolean =>
  fillers.has(word) ||
  littleWords.has(word) ||
  withWords.has(word) ||
  joints.has(word) ||
  between.has(word) ||
  word === 'without' ||
  word === 'no' ||
  word === 'yes';
/** What an amount of that dimension is about when nothing else is said: the plainest word for it. */
export const nouns: ReadonlyMap<string, string> = table<string>({
  frequency: 'hz',
  speed: 'speed',
  angularSpeed: 'rpm',
  pressure: 'pressure',
  rate: 'spring',
  mass: 'weight',
  temperature: 'temperature',
  acceleration: 'lateral',
});
