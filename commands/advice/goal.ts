/** What a member wants of the car, or complains of, in everyday words: `pushes going in`, `more grip rear`, `softer, same balance`. */

import { everyday } from '../language/everyday.js';
import { tidy } from '../language/tidy.js';
import { vocabularyOf } from '../language/vocabulary.js';
import { catalog } from '../looked.js';
import { nearest } from '../spelling.js';
import { stem } from '../words.js';

export type Phase = 'entry' | 'mid' | 'exit';
export type Wish = 'rotation' | 'grip' | 'front grip' | 'rear grip' | 'roll' | 'traction' | 'softer' | 'stiffer';
export interface Wanted {
  readonly wish: Wish;
  /** More or less of it. */
  readonly towards: 1 | -1;
  readonly phase: Phase;
  /** The balance is to stay as it is: `less roll, same balance`. */
  readonly held?: true;
  /** Whether the words said when. */
  readonly phased: boolean;
  /** How hard the car brakes or speeds up, or how hard it turns in the middle, in g; where it was said. */
  readonly hardness?: number;
  readonly turn?: 'left' | 'right';
  /** A car that was named. */
  readonly car?: string;
  readonly echoes: readonly string[];
}

/** What is being done to the wish: `less`, `too`, `not enough`. */
interface Found {
  text: string;
  readonly tags: Set<string>;
}
type Rule = readonly [pattern: RegExp, ...tags: string[]];
const the = `(?:(?:the|my|a|its|her) )?`;
const corner = '(?:corners?|turns?|bends?)';

const phases: readonly Rule[] = [
  [/(?<=\b(?:loose|tight|push|pushes) )off$/, 'exit'],
  [/(?<=\b(?:loose|tight|push|pushes) )in$/, 'entry'],
  [
    new RegExp(
      `\\b(?:(?:when|as|after) (?:i|you) (?:lift|get off)|lifting|lift ?off|off throttle|off ${the}(?:throttle|gas))(?: (?:the )?(?:throttle|gas))?\\b`,
    ),
    'entry',
  ],
  [/\b(?:on |under |while |when )?trail ?braking\b/, 'entry', 'braking'],
  [new RegExp(`\\b(?:on |under |while |when )?${the}(?:braking|brakes?)\\b`), 'entry', 'braking'],
  [
    new RegExp(
      `\\b(?:going|goin'?|coming|turning|turn|tipping|diving|driving|steering|on turn|on the way|the way) ?in(?:to ${the}${corner})?\\b`,
    ),
    'entry',
    'act',
  ],
  [new RegExp(`\\b(?:on |at |in |under |during )?${the}(?:${corner} )?(?:entry|entries|entrance|entering|initial turn)\\b`), 'entry'],
  [new RegExp(`\\binto ${the}${corner}\\b`), 'entry'],
  [
    new RegExp(
      `\\b(?:(?:when|as) (?:i|you) )?(?:get|getting|stepping|step|back|roll|rolling|picking up)? ?(?:back )?on ${the}(?:throttle|power|gas|loud pedal)\\b`,
    ),
    'exit',
  ],
  [/\b(?:under|with|on) (?:power|throttle)\b|\b(?:power|throttle) on\b|\b(?:when|while )?accelerating\b/, 'exit'],
  [new RegExp(`\\b(?:coming|comming|comin'?|getting|going|powering|driving) (?:out|off)(?: (?:of )?${the}${corner})?\\b`), 'exit'],
  [new RegExp(`\\b(?:out of|off|leaving) ${the}${corner}\\b`), 'exit'],
  [new RegExp(`\\b(?:on |at |in |during )?${the}(?:${corner} )?exit(?:s|ing)?\\b`), 'exit'],
  [new RegExp(`\\b(?:in |at |through |around )?${the}mid(?:dle)?[ -]?(?:of )?${the}(?:${corner})?(?![a-z])`), 'mid'],
  [
    /\b(?:at |in |on |around |through )?(?:the )?(?:apex|apexes|steady state|steady|sweepers?|skid ?pad|long corners?|constant radius)\b/,
    'mid',
  ],
];
const turns: readonly Rule[] = [
  [new RegExp(`\\b(?:in |on |turning |at )?${the}left(?: ?hand)?(?:ers?| ${corner}|s)\\b|\\bturning left\\b`), 'left'],
  [new RegExp(`\\b(?:in |on |turning |at )?${the}right(?: ?hand)?(?:ers?| ${corner}|s)\\b|\\bturning right\\b`), 'right'],
];
const gives = `(?:(?:is|keeps|starts|wants to|just) )?(?:slides?|sliding|washes|washing|washed|lets? go|letting go|goes|gives? up|breaks? (?:away|loose)|skates?|skips?)(?: (?:out|wide|first|away))*`;
const symptoms: readonly Rule[] = [
  [/\b(?:can(?:'?t|not)|won'?t|doesn'?t|hard to) put (?:the |my |its )?power down\b/, 'traction', 'lacking'],
  [/\bput(?:s|ting)? (?:the |my |its )?power down(?: better)?\b/, 'traction', 'act', 'more'],
  [
    /\b(?:spins?|spinning|lights? up) (?:the |its )?(?:inside|inner|tires?|tyres?|wheels?|driven)(?: (?:wheels?|tires?|rear|front))*\b|\bwheel ?spin\b/,
    'traction',
    'lacking',
  ],
  [/\btraction\b/, 'traction'],
  [
    /\b(?:won'?t|wont|will not|doesn'?t|doesnt|does not|not|refuses to) (?:want to )?(?:turn(?: in)?|rotate|tuck(?: in)?|point|come around)\b/,
    'push',
    'act',
  ],
  [/\b(?:no|lacks?|lacking) (?:front end|front bite|turn in|turn-in|rotation)\b/, 'push', 'act'],
  [new RegExp(`\\b(?:front|front end|nose|front tires?|front tyres?) ${gives}`), 'push', 'act'],
  [/\b(?:washes|washing|washed|runs|running) (?:out|wide)\b/, 'push', 'act'],
  [/\b(?:pushe?s|pushing|pushy|pushed|plows?|plowing|ploughs?|ploughing|understeers|understeering|understeery)\b/, 'push', 'act'],
  [
    new RegExp(
      `\\b(?:rear|rear end|back|back end|tail|tail end|rear tires?|rear tyres?|arse|ass|butt) (?:steps? out|stepping out|stepped out|comes? (?:a?round|out)|coming (?:a?round|out)|kicks? out|swings? (?:out|round|around)|wags|hangs out|${gives})`,
    ),
    'loose',
    'act',
  ],
  [
    /\b(?:snaps?|snappy|snapping)(?: (?:oversteers?|loose|a?round|out))?\b|\bswaps? ends\b|\btail[ -]?happy\b|\bspins? (?:out|around|me|on me)\b/,
    'loose',
    'act',
  ],
  [/\b(?:oversteers|oversteering|oversteery|twitchy|nervous|too lively)\b/, 'loose', 'act'],
  [/\b(?:looser|loosen(?:ed|ing)?(?: (?:it|her|the car|up))*|free(?:s|d)? (?:it|her|the car) up|freer)\b/, 'rotation', 'act', 'more'],
  [
    /\b(?:tighter|tighten(?:ed|ing)?(?: (?:it|her|the car|up))*|more stable|more stability|calm(?:er)?(?: (?:it|the rear|down))*)\b/,
    'rotation',
    'act',
    'less',
  ],
  [/\b(?:rotations?|rotates?|rotating)\b/, 'rotation'],
  [/\b(?:push|understeer|tight|plow)\b/, 'push'],
  [/\b(?:loose|oversteer)\b/, 'loose'],
  [
    /\b(?:(?:less|reduce) (?:stiff|harsh)|softer|soften(?:ed|ing)?(?: (?:it|up))*|more compliant|more compliance|smoother ride|ride softer)\b/,
    'softer',
  ],
  [/\b(?:stiffer|stiffen(?:ed|ing)?(?: (?:it|up))*|firmer)\b/, 'stiffer'],
  [/\b(?:body )?(?:rolls|rolling|leans|leaning)\b/, 'roll', 'act'],
  [/\bbody ?(?:roll|lean)\b|\b(?:roll|lean)\b/, 'roll'],
  [/\b(?:grip|bite|stick)\b/, 'grip'],
];
const holds: readonly Rule[] = [
  [
    /\b(?:(?:and|but|,) )*(?:keep(?:ing|s)?|hold(?:ing)?|same|without (?:changing|losing|upsetting|touching)|not chang(?:e|ing)|with the same|unchanged|leave|leaving) (?:the |my |its |same |present )*(?:balance|handling)(?: (?:the same|alone|as it is|unchanged))?(?: (?:and|but))?\b/,
    'hold',
  ],
  [/\b(?:the )?balance (?:the same|unchanged|as it is|kept)\b/, 'hold'],
];
const manners: readonly Rule[] = [
  [
    /\b(?:not|isn'?t|never|hardly|doesn'?t have|don'?t have|lacks?|lacking|short of|without|no)(?= |$)(?: (?:enough|much|any))?\b/,
    'lacking',
  ],
  [/\benough\b/, 'enough'],
  [
    /\b(?:less|reduce|reducing|cut|cure|curing|fix|fixing|stop|stopping|kill|get rid of|dial(?:ing)? out|tune out|take out|lose|fewer|against|remove)\b/,
    'less',
  ],
  [/\btoo(?: much| many)?\b/, 'too'],
  [/\b(?:more|add|adding|increase|increasing|extra|better|improve|gain|find|most)\b/, 'more'],
];
/** Said beside a wish without changing it. */
const fillers = new Set(
  `i im me my we our you it its it's i'm the a an that thats this these car cars is are be being been am isnt has have had got get gets getting getting do does did like feels feel
  feeling bit little lot lots some slightly really very way still always again just only please pls plz thanks thx thank help how to what whats which would could should shall can might
  may change changes changing swap adjust try for want wants need needs give gives giving make makes making at in on into of with when while and or but from so there here now up down
  off all around round during through under over one thing parts part box my mine hey hi ok okay then end ends handling corner corners turn turns first out if by as also seem seems
  anything something everything everywhere bad badly real pig truck keeps starts place kinda hell crazy much kind sort quite pretty suggest suggestion advice advise gas any ideas idea best wise her she he`.split(
    /\s+/,
  ),
);
/** Bare names of these are figures that can be shown; a wish says more, or less, or when, or that it happens. */
const nearWords: readonly string[] = [
  ...new Set(
    `rotation rotates pushes pushing understeer understeers oversteer oversteers loose tight grip traction braking throttle entry corner corners middle apex exit coming going
    balance softer stiffer rear front washes sweepers more less turning handers power`.split(/\s+/),
  ),
];

function take(found: Found, rules: readonly Rule[]): void {
  for (const [pattern, ...tags] of rules) {
    const hit = pattern.exec(found.text);
    if (!hit) continue;
    found.text = `${found.text.slice(0, hit.index)} | ${found.text.slice(hit.index + hit[0].length)}`;
    for (const tag of tags) found.tags.add(tag);
  }
}
const ends: readonly Rule[] = [
  [/\b(?:at |in |on |from )?(?:the )?(?:front|nose|front end|front tires?|fronts)\b/, 'front'],
  [/\b(?:at |in |on |from )?(?:the )?(?:rear|back|tail|rear end|back end|rear tires?|rears)\b/, 'rear'],
];

/** Words that nothing here knows, mended where only one known word is near; the catalogs' own words are left alone. */
function mend(text: string, echoes: string[]): string {
  const vocabulary = vocabularyOf(catalog);
  return text.replace(/[a-z][a-z']{3,}/g, (word) => {
    if (echoes.length >= 2 || fillers.has(word) || nearWords.includes(word) || vocabulary.words.has(stem(word))) return word;
    const [near, another] = nearest(word, nearWords);
    if (near === undefined || another !== undefined) return word;
    echoes.push(`"${word}" read as ${near}`);
    return near;
  });
}
const only = (tags: ReadonlySet<string>, ...among: readonly string[]): string | undefined => {
  const found = among.filter((tag) => tags.has(tag));
  return found.length === 1 ? found[0] : undefined;
};

function wishOf(tags: ReadonlySet<string>): Pick<Wanted, 'wish' | 'towards' | 'held'> | undefined {
  const less = tags.has('less') || tags.has('too');
  const lacking = tags.has('lacking');
  const more = tags.has('more');
  const told = less || lacking || more;
  if (tags.has('hold')) {
    const way = only(tags, 'softer', 'stiffer');
    if (way === 'softer' || way === 'stiffer') return { wish: way, towards: 1 };
    const other = wishOf(new Set([...tags].filter((tag) => tag !== 'hold')));
    return other === undefined || other.wish === 'rotation' ? undefined : { ...other, held: true };
  }
  const wish = only(tags, 'traction', 'push', 'loose', 'rotation', 'roll', 'grip');
  const happens = tags.has('act') || tags.has('phase') || tags.has('happens');
  switch (wish) {
    case 'push':
      // `not tight enough`, `more understeer` is a wish for it; all else is a complaint of it.
      if ((lacking && tags.has('enough')) || (more && !less)) return { wish: 'rotation', towards: -1 };
      return told || happens ? { wish: 'rotation', towards: 1 } : undefined;
    case 'loose':
      if ((lacking && tags.has('enough')) || (more && !less)) return { wish: 'rotation', towards: 1 };
      return told || happens ? { wish: 'rotation', towards: -1 } : undefined;
    case 'rotation':
      if (lacking) return { wish: 'rotation', towards: 1 };
      return more !== less ? { wish: 'rotation', towards: more ? 1 : -1 } : undefined;
    case 'roll':
      if (!told && !tags.has('act')) return undefined;
      return { wish: 'roll', towards: lacking || (more && !less) ? 1 : -1 };
    case 'traction':
      return more || lacking || less ? { wish: 'traction', towards: 1 } : undefined;
    case 'grip': {
      if (!more && !lacking) return undefined;
      const end = only(tags, 'front', 'rear');
      return { wish: end === undefined ? 'grip' : end === 'front' ? 'front grip' : 'rear grip', towards: 1 };
    }
    default:
      return undefined;
  }
}

/** `turnip pushes mid corner`: the one word that nothing here knows, where it stands first and something is said of it, is a car's. */
function firstName(text: string, left: readonly string[]): string | undefined {
  const [word, another] = left;
  if (word === undefined || another !== undefined || everyday.has(word) || vocabularyOf(catalog).words.has(stem(word))) return undefined;
  const [, name] =
    /^(?:my )?([\p{L}][\p{L}\p{N}]{2,}?)(?:'s)? (?:(?!less\b)[a-z]+s\b|won'?t\b|can'?t\b|doesn'?t\b|too\b|so\b|loose\b|tight\b)/u.exec(
      text,
    ) ?? [];
  return name !== undefined && (name === word || `${name}'s` === word) ? name : undefined;
}
function attempt(text: string, echoes: readonly string[]): Wanted | undefined {
  const found: Found = { text, tags: new Set() };
  const named = /(?:\b(?:on|for|of) )(?:my )?(?:'([^']+)'|([\p{L}][\p{L}\p{N}]*))\s*$/u.exec(found.text);
  const hard = /(?:\b(?:at|of|with) )?(\d{0,2}[.,]?\d+) ?g\b/.exec(found.text);
  if (hard) found.text = found.text.replace(hard[0], ' | ');
  take(found, holds);
  take(found, turns);
  // `won't turn in` is a symptom before `turn in` is a phase.
  take(found, symptoms.slice(4, 7));
  const acted = found.tags.has('act');
  const turnsIn = /turn|tuck|point/.test(text) && found.tags.has('push') && /\b(?:turn|tuck)(?:s|ing)? ?in\b/.test(text);
  take(found, phases);
  const said = only(found.tags, 'entry', 'mid', 'exit');
  const several = ['entry', 'mid', 'exit'].filter((tag) => found.tags.has(tag)).length > 1;
  if (several) return undefined;
  found.tags.delete('act');
  if (acted) found.tags.add('act');
  if (said !== undefined) found.tags.add('phase');
  if (turnsIn || /\b(?:won'?t|wont|doesn'?t|not) /.test(text)) if (found.tags.has('push')) found.tags.add('act');
  take(found, symptoms);
  take(found, manners);
  take(found, ends);
  if (/\b(?:is|it'?s|its|im|gets|feels|getting|still|so|really|always)\b/.test(found.text)) found.tags.add('happens');
  const left = found.text
    .replace(/[^a-z0-9'\s]/g, ' ')
    .split(/\s+/)
    .filter((word) => word !== '' && !fillers.has(word));
  const last = named?.[1] ?? named?.[2];
  const isOf = (name: string, word: string): boolean => name.toLowerCase().split(' ').includes(word);
  // `on exit` is no car: what is read as when is not left to be a name.
  const car = last !== undefined && left.some((word) => isOf(last, word)) ? last : firstName(text, left);
  const unknown = left.filter((word) => car === undefined || !isOf(car, word));
  if (unknown.length > 0) return undefined;
  const wish = wishOf(found.tags);
  if (!wish) return undefined;
  const phase: Phase =
    said === 'entry' || said === 'mid' || said === 'exit' ? said : turnsIn ? 'entry' : wish.wish === 'traction' ? 'exit' : 'mid';
  const turn = only(found.tags, 'left', 'right');
  return {
    ...wish,
    phase,
    phased: said !== undefined || turnsIn,
    ...(hard ? { hardness: Number((hard[1] ?? '').replace(',', '.')) } : {}),
    ...(turn === 'left' || turn === 'right' ? { turn } : {}),
    ...(car !== undefined && left.length > 0 ? { car } : {}),
    echoes,
  };
}

const about =
  /rotat|push|plo(?:w|ugh)|understeer|oversteer|loose|freer?\b|tight|grip|\bbite|stick|traction|\broll|lean|soft|stiff|firm|complian|smooth|wash|slid|snap|spin|steps? out|stepping|swing|kick|tail|turn in|tuck|point|wide|power down|twitch|nervous|stab|calm|lets? go|gives? up|breaks? away|com(?:es?|ing) (?:a?round|out)|swaps/;
const when = /\bmid|corner|entry|exit|coming|comm|going|goin|throttle|brak|apex/;

/** The wish of a line; undefined where it tells none, or holds words that are not understood: then it is not for advice. */
export function wantedOf(line: string): Wanted | undefined {
  const text = (tidy(line) ?? '').toLowerCase().replace(/-/g, ' ');
  // Most lines have none of its words: a quick look first.
  if (
    !about.test(text) &&
    !(when.test(text) && /^(?:more|less|too|it|car|my|the|[a-z]+ (?:mid|on|in|at|going|coming|goin|comming))\b/.test(text))
  )
    return undefined;
  // Which car leans more is a question about cars, not a wish.
  if (/^(?:which|who|what) (?:car|one|has|is|of)\b/.test(text)) return undefined;
  if (text.length > 120 || (text.endsWith('?') && text.split(' ').length < 3)) return undefined;
  const direct = attempt(text, []);
  if (direct) return direct;
  const echoes: string[] = [];
  const mended = mend(text, echoes);
  return echoes.length > 0 ? attempt(mended, echoes) : undefined;
}
