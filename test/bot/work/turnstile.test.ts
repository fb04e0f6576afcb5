import { describe, expect, it } from 'vitest';
import { dear_ms, Stopped, Turnstile } from '../../../bot/work/turnstile.js';
import { OutOfTime } from '../../../commands/breathing.js';

/** A process whose work is counted by hand, and whose event loop turns when it is told to. */
function byHand(most_ms = 1000) {
  let worked = 0;
  const turns: (() => void)[] = [];
  const turnstile = new Turnstile({ worked: () => worked, later: (go) => turns.push(go), most_ms });
  return {
    turnstile,
    work: (ms: number) => {
      worked += ms;
    },
    turn: async () => {
      for (const go of turns.splice(0)) go();
      await settle();
    },
    get turnsWanted() {
      return turns.length;
    },
  };
}
const settle = async (): Promise<void> => {
  for (let k = 0; k < 5; k++) await Promise.resolve();
};

describe('a breath', () => {
  it('costs no turn of the event loop while little was worked', async () => {
    const it = byHand();
    const { breathe } = it.turnstile.enter();
    it.work(3);
    await breathe();
    it.work(3);
    await breathe();
    expect(it.turnsWanted).toBe(0);
  });
  it('lets the event loop turn once enough was worked, whoever worked it', async () => {
    const it = byHand();
    const [a, b] = [it.turnstile.enter(), it.turnstile.enter()];
    it.work(6);
    await a.breathe();
    it.work(6);
    let passed = false;
    void b.breathe().then(() => {
      passed = true;
    });
    await settle();
    expect([passed, it.turnsWanted]).toEqual([false, 1]);
    await it.turn();
    expect(passed).toBe(true);
  });
  it('lets one message a turn go on, the one that has had the least first', async () => {
    const it = byHand();
    const order: string[] = [];
    for (const [name, cost] of [
      ['dearest', 40],
      ['cheap', 10],
      ['dear', 20],
    ] as const) {
      const pass = it.turnstile.enter();
      it.work(cost);
      void pass.breathe().then(() => order.push(name));
      await settle();
    }
    for (let k = 1; k <= 3; k++) {
      await it.turn();
      expect(order).toHaveLength(k);
    }
    expect(order).toEqual(['cheap', 'dear', 'dearest']);
  });
  it('says once that the message has turned out to be dear', async () => {
    const it = byHand();
    let told = 0;
    const pass = it.turnstile.enter(() => told++);
    it.work(dear_ms - 1);
    void pass.breathe();
    await settle();
    expect([pass.dear, told]).toEqual([false, 0]);
    await it.turn();
    for (let k = 0; k < 2; k++) {
      it.work(2);
      void pass.breathe();
      await it.turn();
    }
    expect([pass.dear, told]).toEqual([true, 1]);
  });
  it('ends with OutOfTime past the most that one message may cost, and counts to each its own work alone', async () => {
    const it = byHand(100);
    const [a, b] = [it.turnstile.enter(), it.turnstile.enter()];
    // While a waits for something that is worked out apart, b works.
    for (let k = 0; k < 9; k++) {
      it.work(10);
      void b.breathe();
      await settle();
      await it.turn();
    }
    const passing = a.breathe();
    await settle();
    await it.turn();
    await expect(passing).resolves.toBeUndefined();
    it.work(11);
    await expect(b.breathe()).rejects.toThrow(OutOfTime);
  });
  it('ends with Stopped once the bot is being stopped, also where it is awaited already', async () => {
    const it = byHand();
    const { breathe } = it.turnstile.enter();
    it.work(20);
    const waiting = breathe();
    const ends = expect(waiting).rejects.toThrow(Stopped);
    await settle();
    it.turnstile.stop();
    await ends;
    await expect(breathe()).rejects.toThrow(Stopped);
  });
});
