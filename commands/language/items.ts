/** A line that speaks of the catalogs: its sections read, what is still open settled by what depends on what, and put together as a reading. */
import { beyondStop, findBeyond } from '../beyond.js';
import type { Reading, Stop } from '../reading.js';
import { draftOf } from './assembling.js';
import { conversion } from './conversion.js';
import { check } from './enough.js';
import { goalless } from './goals.js';
import { readParts } from './parts.js';
import { plainlyWrong, worstOf } from './refusals.js';
import type { Setting } from './setting.js';
import { orders, settle, stillOpen } from './settling.js';
import { type Asked, type Draft, type Part, type Spoken, slotsOf, spokenOf } from './spoken.js';
import { unknownWords } from './unknown.js';
import { nothingNamed } from './unnamed.js';

const mostSides = 6;

/** The reading of a line, or what stops it: what is wrong first, then what is open, then what is missing. */
export function readItems(asked: Asked, setting: Setting): Reading | Stop {
  const spoken = spokenOf(asked, setting);
  const { atoms, sections, vocabulary } = spoken;
  const converted = conversion(spoken);
  if (converted) return converted;
  const beyond = findBeyond(atoms.stems, vocabulary);
  if (beyond) return plainlyWrong(spoken) ?? beyondStop(beyond.subject);
  if (atoms.unknown.length > 0) return unknownWords(spoken, atoms.unknown);

  const empty = nothingNamed(spoken);
  if (empty) return empty;
  if (sections.sides.length > mostSides)
    return {
      stop: 'refused',
      sentence: `That is ${sections.sides.length} sides; I put up to ${mostSides} side by side.`,
      line: 'compare 205/50R15 vs 225/45R15',
    };
  const parts = readParts(spoken);
  if ('stop' in parts) return parts;
  const stop = worstOf(spoken, parts) ?? goalless(spoken, parts);
  if (stop) return stop;
  const settled = settle(spoken, parts);
  const open = stillOpen(spoken, settled) ?? orders(spoken, settled);
  if (open) return open;
  const draft = draftOf(spoken, settled);
  return check(spoken, draft) ?? finish(spoken, settled, draft);
}
/** The draft with what is said of how it was read. */
function finish(spoken: Spoken, parts: readonly Part[], draft: Draft): Reading {
  const notes = slotsOf(parts).flatMap((slot) => slot.candidates.slice(0, 1).flatMap((one) => (one.note ? [one.note] : [])));
  const lists = slotsOf(parts).flatMap((slot) =>
    slot.candidates[0]?.each && slot.candidates[0].item.entry.scope === 'corner' ? ['read in the order lf, rf, lr, rr'] : [],
  );
  const echoes = [...new Set([...spoken.echoes, ...notes, ...lists])];
  return { ...draft, rest: spoken.asked.text, echoes, mended: spoken.atoms.mended || spoken.asked.echo !== undefined };
}
