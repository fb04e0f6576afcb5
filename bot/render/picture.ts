/** A chart as a PNG: drawn in a thread that is started for it and ends when no more come. */
import type { Chart } from '../../commands/answer.js';
import { Apart, builtBeside } from '../apart.js';
import { chartHeight, chartWidth } from './chart.js';

export interface Picture {
  readonly png: Buffer;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** Alternative text. */
  readonly words: string;
}
export interface Draughtsman {
  /** @throws ApartError when it cannot be drawn; the answer's rows and the chart's words say the same in text. */
  draw(chart: Chart): Promise<Picture>;
  /** Whether its thread is there now. */
  readonly running: boolean;
  close(): Promise<void>;
}

function png(reply: unknown): Buffer {
  if (!(reply instanceof Uint8Array)) throw new Error('the drawing thread sent something else than a picture');
  return Buffer.from(reply.buffer, reply.byteOffset, reply.byteLength);
}
export function createDraughtsman({ idleMs = 20_000 }: { readonly idleMs?: number } = {}): Draughtsman {
  const thread = new Apart<Chart, Buffer>(
    { file: builtBeside(import.meta.url, './picture.worker.js'), deadlineMs: 15_000, idleMs, heapMb: 192 },
    png,
  );
  return {
    get running() {
      return thread.running;
    },
    close: () => thread.close(),
    draw: async (chart) => ({ png: await thread.ask(chart), width: chartWidth, height: chartHeight, words: chart.words }),
  };
}
