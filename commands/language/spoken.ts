/** A line that speaks of the catalogs, before its spans are read: what was asked, its atoms and its sections. */
import type { Reading } from '../reading.js';
import type { Token } from '../scan.js';
import { meaningsOf } from '../units.js';
import type { Atom } from './atom.js';
import { type Atoms, atomsOf } from './atoms.js';
import { Names } from './names.js';
import { cut, type Sections } from './sections.js';
import type { Setting } from './setting.js';
import type { Ground, Slot } from './slots.js';
import { type Vocabulary, vocabularyOf } from './vocabulary.js';

/** What is known of a line once its verb is found. */
export interface Asked {
  readonly verb: string | undefined;
  readonly changes: boolean;
  readonly topic: boolean;
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly names: readonly string[];
  readonly echo?: string;
  /** `what would mine need to have moths front share`: the line is a goal. */
  readonly goalOnly?: boolean;
  /** The topic's word, where the line begins with it. */
  readonly about?: string;
}
/** What a line says so far, put together. */
export type Draft = Omit<Reading, 'rest' | 'echoes' | 'mended'>;
/** A run of spans with its part in the line. */
export interface Part {
  readonly part: 'side' | 'tried' | 'without' | 'condition' | 'goal' | 'against';
  readonly side: number;
  readonly slots: readonly Slot[];
}

/** The slots of all parts, in the order of the parts. */
export const slotsOf = (parts: readonly Part[]): readonly Slot[] => parts.flatMap((part) => part.slots);

/** The line, with all that it is read by. */
export interface Spoken {
  readonly asked: Asked;
  readonly setting: Setting;
  readonly vocabulary: Vocabulary;
  readonly ground: Ground;
  readonly atoms: Atoms;
  readonly echoes: readonly string[];
  readonly sections: Sections;
}
/** Words made atoms, atoms cut into sections. */
export function spokenOf(asked: Asked, setting: Setting): Spoken {
  const vocabulary = vocabularyOf(setting.catalog);
  const ground: Ground = { vocabulary, preferences: setting.preferences, ...(asked.about ? { topic: asked.about } : {}) };
  const isCondition = (word: string) =>
    vocabulary.phrases.get(word)?.some(({ entry }) => entry.scope === 'question' && entry.kind === 'quantity') ?? false;
  const manners = {
    find: asked.verb === 'find' && !asked.goalOnly,
    draw: asked.verb === 'draw',
    compare: asked.verb === 'compare',
    isCondition,
  };
  const names = new Names(setting, vocabulary);
  const atoms = withMe(atomsOf(asked.tokens, vocabulary, names, manners), asked, names, manners.compare);
  const echoes = [...(asked.echo ? [asked.echo] : []), ...atoms.echoes];
  const compare = manners.compare || atoms.atoms.some((atom) => atom.is === 'between');
  const sections = sharedUnit(cut(atoms.atoms, { ...manners, compare }));
  return { asked, setting, vocabulary, ground, atoms, echoes, sections };
}
/** `me`, `mine` and `now` are sides of a comparison only. */
function withMe(atoms: Atoms, { tokens }: Asked, names: Names, compare: boolean): Atoms {
  const [first] = tokens;
  const word = first?.is === 'word' ? first.text : '';
  if (!compare && !atoms.atoms.some((atom) => atom.is === 'between')) return atoms;
  const out: Atom[] = [];
  if (word === 'me' || word === 'mine') out.push({ is: 'subject', subject: names.me, name: 'me', on: false, possessive: false });
  if (word === 'now') out.push({ is: 'subject', subject: { is: 'now' }, name: 'now', on: false, possessive: false });
  const last = tokens.at(-1);
  const end = last?.is === 'word' && tokens.length > 1 ? last.text : '';
  const tail: Atom[] =
    end === 'me' || end === 'mine'
      ? [{ is: 'subject', subject: names.me, name: 'me', on: false, possessive: false }]
      : end === 'now'
        ? [{ is: 'subject', subject: { is: 'now' }, name: 'now', on: false, possessive: false }]
        : [];
  return { ...atoms, atoms: [...out, ...atoms.atoms, ...tail] };
}
/** `22 vs 25 mm`: one unit of two sides that have an amount each; a length is shared by as many as there are, `24 mm wall 4 mm vs 22`. */
function sharedUnit(sections: Sections): Sections {
  const amounts = sections.sides.map(({ atoms }) => atoms.filter((atom) => atom.is === 'amount'));
  const units = new Set(amounts.flat().flatMap(({ token }) => token.unit ?? []));
  const [unit] = units;
  if (unit === undefined || units.size > 1 || amounts.length < 2) return sections;
  const isLength = meaningsOf(unit).some(({ dimension }) => dimension === 'length');
  if (amounts.some((all) => all.length !== 1 && !isLength)) return sections;
  const withUnit = (atom: Atom): Atom =>
    atom.is === 'amount' && atom.token.unit === undefined ? { ...atom, token: { ...atom.token, unit } } : atom;
  return { ...sections, sides: sections.sides.map((side) => ({ ...side, atoms: side.atoms.map(withUnit) })) };
}
