/**
 * Turns of phrase that no grammar of nouns and amounts covers, each put as the plainer line that it means: `how far does turnip
 * lean` is `roll angle turnip`. What is assumed on the way is echoed. Every pattern is looked for once, from left to right, in time linear in the line.
 */

import { asked } from './turns/asked.js';
import { bars } from './turns/bars.js';
import { changes, perches } from './turns/changes.js';
import { coils } from './turns/coils.js';
import { comparing } from './turns/comparing.js';
import { corners, longitudinal } from './turns/corners.js';
import { gearing } from './turns/gearing.js';
import { house } from './turns/house.js';
import { pressures } from './turns/pressures.js';
import { plain, questions } from './turns/questions.js';
import { splits } from './turns/splits.js';
import type { Turn } from './turns/turn.js';

export const turns: readonly Turn[] = [
  ...house,
  ...pressures,
  ...gearing,
  ...comparing,
  ...asked,
  ...coils,
  ...bars,
  ...corners,
  ...longitudinal,
  ...splits,
  ...perches,
  ...changes,
  ...plain,
  ...questions,
];

export interface Plainer {
  readonly text: string;
  readonly echoes: readonly string[];
}
/** The line in plainer words, each turn of phrase replaced where it stands first. */
export function plainer(text: string): Plainer {
  let out = text;
  const echoes: string[] = [];
  for (const { said, means, echo } of turns) {
    const before = out;
    out = typeof means === 'string' ? out.replace(said, means) : out.replace(said, (...parts: (string | undefined)[]) => means(...parts));
    if (out === before) continue;
    out = out.replace(/\s+/g, ' ').trim();
    if (echo !== undefined) echoes.push(echo);
  }
  return { text: out, echoes };
}
