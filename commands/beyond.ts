/** Subjects that members ask about and that are not built: one honest sentence each, so that none is misread as something that is. */
import { keyOf, stemsOf, type Vocabulary } from './language/vocabulary.js';
import type { Stop } from './reading.js';

export interface Subject {
  readonly name: string;
  /** Words and phrases that only this subject has; one that the catalogs come to use is theirs from then on. */
  readonly words: readonly string[];
  readonly sentence: string;
  /** What can be asked instead. */
  readonly line: string;
}
export const beyond: readonly Subject[] = [
  {
    name: 'anti-roll bars',
    words: [
      'bar',
      'sway bar',
      'swaybar',
      'anti roll bar',
      'antiroll bar',
      'arb',
      'roll bar',
      'endlink',
      'end link',
      'drop link',
      'droplink',
      'bar rate',
      'bar stiffness',
      'blade',
    ],
    sentence:
      'I know nothing of anti-roll bars and their links yet: springs, tires, gearing, ride heights and pressures are what I work out.',
    line: 'show front wheel rate',
  },
  {
    name: 'corner weight adjustment',
    words: [
      'corner balance',
      'corner balancing',
      'cornerbalance',
      'corner weighting',
      'cornerweight',
      'corner jacking',
      'jacking',
      'half turn',
      'crossweight',
      'turn up',
      'turn down',
      'wedge bolt',
    ],
    sentence:
      "I can't work out yet how turning a perch moves the corner weights; I keep scale readings, and what they say of front, left and cross.",
    line: 'show everything front',
  },
  {
    name: 'toe conversion',
    words: ['toe out', 'total toe', 'out total', 'toe plate', 'toe change', 'ackermann', 'toe curve'],
    sentence: "I can't turn a toe measured as a length into an angle yet; toe in degrees of one wheel can be recorded.",
    line: 'set front toe 0.1 deg',
  },
  {
    name: 'alignment adjustment',
    words: [
      'eccentric',
      'cam bolt',
      'camber plate',
      'camber bolt',
      'camber curve',
      'camber gain',
      'align',
      'alignment',
      'kingpin',
      'king pin',
      'kpi',
      'scrub radius',
      'steering axis',
      'crash bolt',
    ],
    sentence:
      "I can't work out alignment adjustments yet, such as what an eccentric or a plate does; camber, toe and caster can be recorded.",
    line: 'set front camber -2 deg',
  },
  {
    name: 'caster from a sweep',
    words: ['sweep', 'caster sweep', 'camber swing', 'caster swing'],
    sentence: "I can't work out caster from a camber sweep yet; caster itself can be recorded.",
    line: 'set front caster 5 deg',
  },
  {
    name: 'bump steer',
    words: ['bump steer', 'bumpsteer', 'tie rod', 'roll steer', 'steering rack', 'rack height', 'steer arm'],
    sentence: "I can't work out bump steer yet, neither from a table of toe nor from the tie rod.",
    line: 'show ride height',
  },
  {
    name: 'CG height from lifted axles',
    words: [
      'rear up',
      'front up',
      'nose up',
      'tail up',
      'lifted rear',
      'lifted front',
      'rear lifted',
      'front lifted',
      'rear raised',
      'front raised',
      'raise rear',
      'raise front',
    ],
    sentence:
      "I can't work out CG height from weighing with one end raised yet; a CG height that you have can be recorded. Lift only on rated stands, wheels chocked, nobody under it.",
    line: 'set cg height 19 in',
  },
  {
    name: 'dampers',
    words: [
      'damper',
      'shock',
      'shock absorber',
      'damping',
      'damping ratio',
      'rebound',
      'click',
      'valving',
      'shim stack',
      'shock dyno',
      'critical damping',
      'zeta',
    ],
    sentence: "I can't work out dampers yet: neither what they should be for a spring nor what clicks do.",
    line: 'show ride frequency',
  },
  {
    name: 'brakes',
    words: [
      'brake',
      'braking',
      'brake bias',
      'bias',
      'brake pad',
      'pad',
      'caliper',
      'rotor',
      'master cylinder',
      'lock up',
      'lockup',
      'stopping distance',
      'abs',
      'proportioning valve',
    ],
    sentence: "I can't work out brakes yet. Brake parts decide whether you stop: the maker's data and a licensed workshop go first.",
    line: 'help',
  },
  {
    name: 'roll',
    words: [
      'roll',
      'body roll',
      'lean',
      'roll stiffness',
      'roll center',
      'roll center height',
      'roll couple',
      'roll rate',
      'roll angle',
      'roll gradient',
      'roll axis',
      'load transfer',
      'weight transfer',
      'lift a wheel',
      'wheel lift',
      'roll distribution',
    ],
    sentence: "I can't work out how the car rolls or moves its load in a corner yet; wheel and ride rates, which decide it, I can.",
    line: 'show wheel rate',
  },
  {
    name: 'anti-dive and anti-squat',
    words: ['anti dive', 'antidive', 'anti squat', 'antisquat', 'anti lift', 'dive', 'squat', 'instant center', 'pitch center'],
    sentence: "I can't work out anti-dive or anti-squat yet.",
    line: 'show ride frequency',
  },
  {
    name: 'grip and balance',
    words: [
      'let go',
      'lets go',
      'grip',
      'understeer',
      'oversteer',
      'push',
      'loose',
      'balance',
      'corner speed',
      'cornering speed',
      'lateral g',
      'skidpad',
      'tight',
      'slide',
      'slip angle',
      'mu',
      'friction',
      'traction circle',
    ],
    sentence: "I can't tell grip or which end gives up first yet; where the weight and the stiffness lie I can.",
    line: 'show front share',
  },
  {
    name: 'wheelspin and traction',
    words: [
      'spin',
      'wheelspin',
      'traction',
      'launch',
      'differential',
      'lsd',
      'limited slip',
      'whp',
      'bhp',
      'hook up',
      'burnout',
      'torque steer',
    ],
    sentence: "I can't tell yet whether the tires can take the thrust; thrust and speed in each gear I can work out.",
    line: 'gear 6500 rpm 2nd 1.93 final 3.73 245/40R17',
  },
  {
    name: 'times and distances',
    words: [
      'lap time',
      'quarter mile',
      '0 60',
      'zero to sixty',
      'acceleration time',
      'et slip',
      'trap speed',
      'slalom',
      'elapsed time',
      'lap',
      'time',
    ],
    sentence: "I can't work out times yet, of a lap, a slalom or a sprint; road speed in each gear I can.",
    line: 'how fast in 2nd at 6500',
  },
  {
    name: 'aerodynamics',
    words: ['downforce', 'wing', 'splitter', 'drag', 'aero', 'diffuser', 'cda'],
    sentence: "I can't work out aerodynamics yet.",
    line: 'help',
  },
  {
    name: 'tire temperatures',
    words: ['pyrometer', 'tire temp', 'tire temps', 'inside temp', 'outside temp', 'tread temperature', 'wear'],
    sentence: "I can't read tread temperatures or wear yet; hot and cold pressures I can.",
    line: 'pressure 30 psi at 65 f, hot 120 f',
  },
  {
    name: 'the share of the springs alone',
    words: ['spring alone', 'springs alone', 'without bar share'],
    sentence:
      "I can't start from a share that the springs alone would have: tell the spring rates, then seek the bar for a share of roll stiffness.",
    line: 'show front share of roll stiffness',
  },
  {
    name: 'verdicts',
    words: ['too', 'enough', 'good', 'best', 'better', 'worth', 'recommend', 'ideal', 'should i', 'right spring', 'wrong'],
    sentence: 'I give numbers, not verdicts: ask for a figure, and what is typical of it is told with it.',
    line: 'show front ride frequency',
  },
];

interface Found {
  readonly subject: Subject;
  readonly words: string;
}
interface Index {
  readonly keys: ReadonlyMap<string, Subject>;
  readonly longest: number;
  readonly words: ReadonlySet<string>;
}
const indexes = new WeakMap<Vocabulary, Index>();
function indexOf(vocabulary: Vocabulary): Index {
  const known = indexes.get(vocabulary);
  if (known) return known;
  const keys = new Map<string, Subject>();
  const words = new Set<string>();
  let longest = 1;
  for (const subject of beyond)
    for (const phrase of subject.words) {
      const stems = stemsOf(phrase);
      // What the catalogs name is theirs.
      if (vocabulary.phrases.has(keyOf(stems))) continue;
      keys.set(stems.join(' '), subject);
      for (const stem of stems) words.add(stem);
      longest = Math.max(longest, stems.length);
    }
  const index = { keys, longest, words };
  indexes.set(vocabulary, index);
  return index;
}
/** Words of those subjects: known, so never mended into something else. */
export const beyondWords = (vocabulary: Vocabulary): ReadonlySet<string> => indexOf(vocabulary).words;

/** The subject that a line's words speak of: the longest phrase first, then in the order of the list, in which verdicts come last. */
export function findBeyond(stems: readonly string[], vocabulary: Vocabulary): Found | undefined {
  const { keys, longest } = indexOf(vocabulary);
  for (let length = Math.min(longest, stems.length); length > 0; length--) {
    let found: Found | undefined;
    for (let from = 0; from + length <= stems.length; from++) {
      const words = stems.slice(from, from + length).join(' ');
      const subject = keys.get(words);
      // A word that is part of a longer phrase of the catalogs, right here, is theirs too.
      if (!subject || (length === 1 && inCatalog(stems, from, vocabulary))) continue;
      if (!found || beyond.indexOf(subject) < beyond.indexOf(found.subject)) found = { subject, words };
    }
    if (found) return found;
  }
  return undefined;
}
function inCatalog(stems: readonly string[], at: number, vocabulary: Vocabulary): boolean {
  for (let length = 4; length > 1; length--)
    for (let from = Math.max(0, at - length + 1); from <= at && from + length <= stems.length; from++)
      if (vocabulary.phrases.has(keyOf(stems.slice(from, from + length)))) return true;
  return false;
}
export const beyondStop = (subject: Subject): Stop => ({ stop: 'beyond', sentence: subject.sentence, line: subject.line });
