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
    name: 'corner weight adjustment',
    words: ['corner balance', 'corner balancing', 'cornerbalance', 'corner weighting', 'wedge bolt', 'corner jacking'],
    sentence:
      "I can't plan all four perches at once yet; the turns of one that bring the cross weight where you want it, and what a turn does, I can.",
    line: 'find lf perch turns for cross weight 50%',
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
      'scrub',
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
    words: ['damper', 'shock', 'shock absorber', 'rebound', 'click', 'valving', 'shim stack', 'shock dyno'],
    sentence: "I can't work out what clicks or valving do yet; a damping ratio from a damper's rate I can.",
    line: 'show damping ratio',
  },
  {
    name: 'brake heat and ABS',
    words: ['abs', 'brake fade', 'fade', 'brake cooling', 'rotor temperature', 'brake temperature', 'brake fluid'],
    sentence:
      "I can't work out heat, fade or ABS; brake forces, their share and where a wheel locks I can. The maker's data and a licensed workshop go first.",
    line: 'show brake share',
  },
  {
    name: 'dive, squat and torque steer',
    words: ['dive', 'squat', 'pitch', 'pitch center', 'torque steer'],
    sentence: "I can't work out how far the nose dives, the tail squats or the wheel tugs yet; anti-dive and anti-squat I can.",
    line: 'show front anti dive',
  },
  {
    name: 'statistics of runs',
    words: ['run time', 'log run', 'my run', 'average run', 'best run', 'consistency', 'standard deviation', 'statistic', 'cone penalty'],
    sentence: "I can't compare runs by their times yet; what a change of the car moves I can.",
    line: 'compare now with dry',
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
    words: ['pyrometer', 'pyro', 'temps', 'tire temp', 'tire temps', 'inside temp', 'outside temp', 'tread temperature', 'wear'],
    sentence: "I can't read tread temperatures or wear yet; hot and cold pressures I can.",
    line: 'pressure 30 psi at 65 f, hot 120 f',
  },
  {
    name: 'verdicts',
    words: ['too', 'enough', 'good', 'best', 'better', 'worth', 'recommend', 'ideal', 'should i', 'right spring', 'wrong'],
    sentence: "That's your call; I can say what it does, what is usual, and where your car lies. Name the part or the number.",
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
      // What is part of a longer phrase of the catalogs, right here, is theirs too.
      if (!subject || inCatalog(stems, from, length, vocabulary)) continue;
      if (!found || beyond.indexOf(subject) < beyond.indexOf(found.subject)) found = { subject, words };
    }
    if (found) return found;
  }
  return undefined;
}
function inCatalog(stems: readonly string[], at: number, size: number, vocabulary: Vocabulary): boolean {
  for (let length = size + 3; length > size; length--)
    for (let from = Math.max(0, at + size - length); from <= at && from + length <= stems.length; from++)
      if (vocabulary.phrases.has(keyOf(stems.slice(from, from + length)))) return true;
  return false;
}
export const beyondStop = (subject: Subject): Stop => ({ stop: 'beyond', sentence: subject.sentence, line: subject.line });
