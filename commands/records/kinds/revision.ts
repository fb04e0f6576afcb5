/** A revision: a car's facts at one moment, never altered. What a message records of a car is one of them. */
import { z } from 'zod';
import type { Fact, Facts } from '../../../core/car.js';
import { nameAt } from '../../../core/engine.js';
import { catalog } from '../../../core/stubaxle.js';
import { isSame } from '../../same.js';
import { revisionRows } from '../../show/revisions.js';
import { format } from '../facts.js';
import type { Held } from '../held.js';
import type { Kind } from '../kind.js';
import { exportedFacts, factsOf } from './exported.js';

export interface RevisionData {
  readonly parent: number | undefined;
  readonly facts: Facts;
  /** The revision in which the ride heights and scale readings were taken. */
  readonly measuredIn: number | undefined;
  /** Of an undo: the oldest revision that it took back. */
  readonly undoes: number | undefined;
}
export type HeldRevision = Held<RevisionData, number>;
const number = z.int().optional();
const stored = z.strictObject({ parent: number, measuredIn: number, undoes: number, facts: format.schema });

export const revisions: Kind<RevisionData, number> = {
  name: 'revision',
  owner: 'car',
  schema: z.custom<RevisionData>((it) => typeof it === 'object' && it !== null && 'facts' in it && it.facts instanceof Map),
  format: {
    plain: (data) => ({ ...data, facts: format.plain(data.facts) }),
    read(plain) {
      const { parent, measuredIn, undoes, facts } = stored.parse(plain);
      return { parent, measuredIn, undoes, facts };
    },
  },
  rows: (was, is, { preferences }) =>
    revisionRows({ facts: was?.data.facts ?? new Map() }, { facts: is?.data.facts ?? new Map() }, preferences),
  exported: {
    as: 'revisions',
    schema: z
      .object({
        number: z.int(),
        parent: number,
        at: z.iso.datetime().describe('UTC'),
        line: z.string().describe('What was typed; empty once it was redacted'),
        measuredIn: z.int().optional().describe('The revision in which ride heights and scale readings were taken'),
        undoes: number,
        facts: exportedFacts,
      })
      .describe('Oldest first'),
    write: ({ id, data: { parent, measuredIn, undoes, facts }, told, text }) => ({
      ...{ number: id, parent, at: new Date(told?.at ?? 0).toISOString(), line: text, measuredIn, undoes },
      facts: factsOf(facts),
    }),
  },
  gone: 'That moment is not in the history any more.',
};
export const noMoment = (car: string | undefined): string => `${car ?? 'That car'} has no such moment in its history any more.`;

export const sameFact = (a: Fact | undefined, b: Fact | undefined): boolean =>
  a === b ||
  (a !== undefined &&
    b !== undefined &&
    isSame(a.value, b.value) &&
    a.within === b.within &&
    a.evidence === b.evidence &&
    a.source === b.source);
/** Paths at which they differ. */
export const differing = (a: Facts, b: Facts): readonly string[] =>
  [...new Set([...a.keys(), ...b.keys()])].filter((path) => !sameFact(a.get(path), b.get(path)));
/** As people call it. */
export function factName(path: string): string {
  const node = catalog.byPath.get(path);
  return node === undefined ? path : nameAt(node.entry, node.place);
}
