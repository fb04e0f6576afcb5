/** The calculator that commands are given: sums, worked out in a thread that can be stopped. */
import type { Calculator } from '../../commands/context.js';
import type { Sum, WorkedOut } from '../../commands/sums/sum.js';
import { Apart, ApartError, builtBeside } from '../apart.js';
import { workedSchema } from './question.js';

export interface CalculatorOptions {
  readonly deadlineMs?: number;
  readonly idleMs?: number;
}
export interface ClosableCalculator extends Calculator {
  /** Whether its thread is there now. */
  readonly running: boolean;
  close(): Promise<void>;
}

/** The thread starts with the first sum and ends when none comes for a minute; a sum that takes over 1.5 s or 64 MB is refused. */
export function createCalculator({ deadlineMs = 1500, idleMs = 60_000 }: CalculatorOptions = {}): ClosableCalculator {
  const thread = new Apart<Sum, WorkedOut>({ file: builtBeside(import.meta.url, './worker.js'), deadlineMs, idleMs, heapMb: 64 }, (reply) =>
    workedSchema.parse(reply),
  );
  return {
    get running() {
      return thread.running;
    },
    close: () => thread.close(),
    async calculate(sum) {
      try {
        return await thread.ask(sum);
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
