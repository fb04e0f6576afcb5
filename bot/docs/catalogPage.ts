/** core/REFERENCE.md: every input and every figure, from the catalogs. */
import { writeQuantity } from '../../commands/language/quantities.js';
import { type Entry, isInput, type Within } from '../../core/catalog.js';
import { dimensions } from '../../core/dimensions.js';
import { entries } from '../../core/entries.js';
import { cell, table } from './markdown.js';

const us = { units: 'us', decimalMark: '.' } as const;
const metric = { units: 'metric', decimalMark: '.' } as const;

/** In both systems, since members use both. */
function inBoth(si: number, entry: Entry): string {
  if (entry.dimension === undefined) return String(si);
  const [a, b] = [writeQuantity(si, entry.dimension, us), writeQuantity(si, entry.dimension, metric)];
  return a === b ? a : `${a} (${b})`;
}
function tolerance(within: Within, entry: Entry): string {
  return 'relative' in within ? `± ${Number((within.relative * 100).toPrecision(3))} %` : `± ${inBoth(within.absolute, entry)}`;
}
function told(entry: Entry): string {
  if (!entry.told) return '';
  const { usually, measured, spec } = entry.told;
  return `measured ${tolerance(measured, entry)}, from a spec sheet ${tolerance(spec, entry)}; usually ${usually === 'spec' ? 'from a spec sheet' : 'measured'}`;
}
function range(entry: Entry): string {
  if (entry.options) return entry.options.join(', ');
  if (!entry.sane) return '';
  return `${inBoth(entry.sane[0], entry)} to ${inBoth(entry.sane[1], entry)}`;
}
function estimate(entry: Entry): string {
  if (!entry.compute) return 'none';
  const shared = entry.error === 'common' ? '; one error for all places' : '';
  return `${entry.within ? `${tolerance(entry.within, entry)}${shared}; ` : ''}${entry.source ?? ''}`;
}
const needs = (entry: Entry): string =>
  Object.entries(entry.needs ?? {})
    .map(([name, need]) => `${name}: ${need.terms.map(({ entry: e, at }) => [...at, e.path].join(' ')).join(' or ')}`)
    .join('; ');

const inputRows = (): string[][] =>
  entries
    .filter(isInput)
    .map((e) => [`\`${e.path}\``, e.name, e.scope, (e.words ?? []).join(', '), range(e), told(e), estimate(e), e.measure ?? '']);
const figureRows = (): string[][] =>
  entries
    .filter((e) => e.kind === 'figure')
    .map((e) => [
      `\`${e.path}\``,
      e.name,
      e.symbol ?? '',
      e.scope,
      (e.words ?? []).join(', '),
      e.dimension === undefined ? '' : dimensions[e.dimension].unit,
      e.formula === undefined ? '' : `\`${e.formula}\``,
      needs(e),
      [e.source ?? '', ...(e.nonlinear ? [`Doubt: ${e.nonlinear}`] : [])].join('. '),
    ]);

export const catalogPage = (): string => `# Every input and every figure

Generated from the catalogs by \`npm run docs\`; a test fails when it is stale. Signs and directions are in CONVENTIONS.md. Every tolerance and every
plus-or-minus is the half-width that holds 19 in 20.

## Inputs
What a member can record. Scope \`question\`: a condition of one answer, never saved with a car.

${table(['path', 'name', 'scope', 'words', 'range', 'tolerance when told', 'when not told', 'how to measure'], inputRows())}

## Figures
What the core works out. A figure without words is a step on the way: \`why\` shows it.

${table(['path', 'name', 'symbol', 'scope', 'words', 'unit', 'formula', 'needs', 'source'], figureRows())}

## Structures
What several figures read: worked out once for a car and a condition.

${entries
  .filter((e) => e.kind === 'structure')
  .map((e) => `- \`${e.path}\` (${e.scope}): ${cell(e.name)}. ${cell(e.source ?? '')}`)
  .join('\n')}
`;
