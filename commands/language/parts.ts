/** The sections of a line, each read into slots by what it is for. */
import type { Choice, Stop } from '../reading.js';
import { nearestLine } from './asking.js';
import { draftOf } from './assembling.js';
import type { Atom } from './atom.js';
import type { Mode, Slot } from './slots.js';
import { readings } from './spans.js';
import type { Part, Spoken } from './spoken.js';
import { writeReading } from './write.js';

const recordVerbs: ReadonlySet<string> = new Set(['set', 'save', 'forget', 'find', 'try']);

/** What the words of a part are looked up for. */
function modeOf(spoken: Spoken, part: Part['part']): Mode {
  const { verb, goalOnly } = spoken.asked;
  if (part === 'goal') return 'goal';
  if (part === 'condition') return 'condition';
  if (part === 'against') return 'record';
  if (goalOnly) return 'ask';
  return verb !== undefined && recordVerbs.has(verb) && part === 'side' ? 'record' : 'ask';
}
/** Each section read in the way that costs least; a stop where one can't be, or can be in several ways. */
export function readParts(spoken: Spoken): readonly Part[] | Stop {
  const { sides, tried, without, conditions, goal, against } = spoken.sections;
  const all: { part: Part['part']; side: number; atoms: readonly Atom[] }[] = [
    ...sides.map((side, n) => ({ part: 'side' as const, side: n, atoms: side.atoms })),
    ...tried.map((atoms) => ({ part: 'tried' as const, side: 0, atoms })),
    ...without.map((atoms) => ({ part: 'without' as const, side: 0, atoms })),
    ...conditions.map((atoms) => ({ part: 'condition' as const, side: 0, atoms })),
    ...(goal ? [{ part: 'goal' as const, side: 0, atoms: goal }] : []),
    ...(against ? [{ part: 'against' as const, side: 0, atoms: against }] : []),
  ];
  const parts: Part[] = [];
  let open: { readonly at: number; readonly ways: readonly (readonly Slot[])[] } | undefined;
  for (const { part, side, atoms } of all) {
    const ways = readings(withSharedWords(spoken, part, side, atoms), modeOf(spoken, part), spoken.ground);
    const [first, second] = ways;
    if (first === undefined) {
      if (atoms.every((atom) => atom.is === 'break')) continue;
      return {
        stop: 'refused',
        sentence: `I can't tell what "${spoken.asked.text}" names.`,
        line: nearestLine(spoken.atoms, spoken.vocabulary),
      };
    }
    if (second && !first.some((slot) => slot.trouble)) open ??= { at: parts.length, ways };
    parts.push({ part, side, slots: first });
  }
  return (open && eitherWay(spoken, parts, open.at, open.ways)) ?? parts;
}
/** A side that has an amount or a place but no words takes them from the other: `front spring 450 vs 500`, `wheel rate front vs rear`. */
function withSharedWords(spoken: Spoken, part: Part['part'], side: number, atoms: readonly Atom[]): readonly Atom[] {
  if (part !== 'side' || spoken.sections.sides.length < 2 || atoms.some((atom) => atom.is === 'word')) return atoms;
  const placed = atoms.some((atom) => atom.is === 'place');
  const amounts = atoms.some((atom) => atom.is === 'amount') ? 1 : 0;
  if (amounts === 0 && !placed) return atoms;
  const other = spoken.sections.sides.find(
    (one, n) =>
      n !== side &&
      one.atoms.some((atom) => atom.is === 'word') &&
      one.atoms.filter((atom) => atom.is === 'amount').length === amounts &&
      (amounts > 0 || one.atoms.some((atom) => atom.is === 'place')),
  );
  if (!other) return atoms;
  return [...other.atoms.filter((atom) => atom.is === 'word' || (atom.is === 'place' && !placed)), ...atoms];
}
/** Readings of one part that cost the same: each as a line, where the lines differ. */
function eitherWay(spoken: Spoken, parts: readonly Part[], at: number, ways: readonly (readonly Slot[])[]): Stop | undefined {
  const choices: Choice[] = [];
  for (const slots of ways.slice(0, 4)) {
    const thisWay = parts.map((part, n) => (n === at ? { ...part, slots } : part));
    const line = writeReading(draftOf(spoken, thisWay), spoken.setting);
    if (!choices.some((choice) => choice.line === line)) choices.push({ label: line, line });
  }
  return choices.length < 2
    ? undefined
    : { stop: 'asked', sentence: `"${spoken.asked.text}" can be read in ${choices.length} ways.`, choices };
}
