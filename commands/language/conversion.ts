/** Plain conversions: amounts and the unit that they are wanted in. */
import type { Reading } from '../reading.js';
import { meaningsOf } from '../units.js';
import type { Spoken } from './spoken.js';

/** A reading for `calc`, where amounts are wanted in a unit and nothing of the car is spoken of; else undefined. */
export function conversion(spoken: Spoken): Reading | undefined {
  const { wantedUnit, atoms } = spoken.atoms;
  const { verb, changes } = spoken.asked;
  if (wantedUnit === undefined || changes || (verb !== undefined && verb !== 'calc' && verb !== 'show' && verb !== 'spring'))
    return undefined;
  const amounts = atoms.flatMap((atom) => (atom.is === 'amount' ? (atom.list ?? [atom.token, ...(atom.to ? [atom.to] : [])]) : []));
  if (amounts.length === 0 || !spoken.setting.commands.some(({ word }) => word === 'calc')) return undefined;
  const wanted = meaningsOf(wantedUnit).map((one) => one.dimension);
  if (!amounts.every((token) => token.unit === undefined || meaningsOf(token.unit).some((one) => wanted.includes(one.dimension))))
    return undefined;
  // A figure is asked for, or a place is spoken of: then it is no plain conversion.
  const words = atoms.flatMap((atom) => (atom.is === 'word' ? [atom.word] : []));
  if (words.length > 1 || atoms.some((atom) => atom.is === 'subject' || atom.is === 'place' || atom.is === 'at' || atom.is === 'with'))
    return undefined;
  const names = amounts.map((token) => token.text);
  return { verb: 'calc', sides: [], tried: [], wantedUnit, names, rest: spoken.asked.text, echoes: spoken.echoes, mended: false };
}
