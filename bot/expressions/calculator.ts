/** The calculator that commands are given: free expressions, worked out in a thread that can be stopped. */
import type { Calculator } from '../../commands/context.js';
import { Apart, ApartError, builtBeside } from '../apart.js';
import { prepare } from './normalise.js';
import { type Question, type Worked, workedSchema } from './question.js';

export interface CalculatorOptions {
  readonly deadlineMs?: number;
  readonly idleMs?: number;
}
export interface ClosableCalculator extends Calculator {
  /** Whether its thread is there now. */
  readonly running: boolean;
  close(): Promise<void>;
}

/**
 * Works out sums of numbers, of SI units by their symbols (`78807 N/m`: a number before a unit is SI already, quantities in other units are given as
 * names), of names (in any spelling, spaces too; looked for before units and functions), of + - * / ^ % and brackets, and of the functions that
 * `allowed.ts` lists. The thread starts with the first sum and ends when none comes for a minute; a sum that takes over 1.5 s or 64 MB is refused.
 */
export function createCalculator({ deadlineMs = 1500, idleMs = 60_000 }: CalculatorOptions = {}): ClosableCalculator {
  const thread = new Apart<Question, Worked>(
    { file: builtBeside(import.meta.url, './worker.js'), deadlineMs, idleMs, heapMb: 64 },
    (reply) => workedSchema.parse(reply),
  );
  return {
    get running() {
      return thread.running;
    },
    close: () => thread.close(),
    async calculate(expression, names) {
      const prepared = prepare(expression, names.keys());
      if ('refused' in prepared) return prepared;
      if (prepared.text.trim() === '') return { refused: 'There is nothing to work out; try: calc 2 * 450 lb/in * 0.65^2' };
      const given = new Map(
        [...prepared.names].map(([identifier, said]) => {
          const { si, unit } = names.get(said) ?? { si: Number.NaN, unit: '' };
          return [identifier, { si, unit, said }] as const;
        }),
      );
      try {
        return await thread.ask({ text: prepared.text, names: given });
      } catch (error) {
        if (error instanceof ApartError && error.why === 'slow')
          return { refused: 'That sum takes too long to work out; a shorter one, please.' };
        if (error instanceof ApartError && error.why === 'memory')
          return { refused: 'That sum needs too much memory; a shorter one, please.' };
        throw error;
      }
    },
  };
}
