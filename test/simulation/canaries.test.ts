/** Whatever members say and do, in whatever order, nobody is told what they may not see. */
import { describe, expect, it } from 'vitest';
import { commands } from '../../commands/registry.js';
import { canaries, type Outcome } from './canaries.js';
import { owners } from './canary.js';
import { realSpeech } from './speech.js';

/** `STUBAXLE_TEST_TIMES=40` looks so many times as far, each time elsewhere. */
const times = Number(process.env.STUBAXLE_TEST_TIMES ?? 1);
const first = times === 1 ? 1 : Math.floor(Date.now() / 1000) % 1_000_000;
const sequences = 50 * times;

describe('random sequences of members who share, stop sharing, come and go, and say anything', () => {
  it(
    'tell nobody of a car that they may not see',
    async () => {
      const counts = new Map<string, number>();
      for (let seed = first; seed < first + sequences; seed++) {
        const run = await canaries({ seed, bursts: 60 });
        for (const [what, n] of run.counts) counts.set(what, (counts.get(what) ?? 0) + n);
        expect(run.violations.map((violation) => `seed ${seed}: ${violation}`)).toEqual([]);
      }
      // The bait was good, and what should happen did.
      const often = (what: string): number => (counts.get(what) ?? 0) / times;
      expect(often('seen')).toBeGreaterThan(60);
      expect(often('after a loss')).toBeGreaterThan(80);
      expect(often('told')).toBeGreaterThan(2500);
      expect(often('file')).toBeGreaterThan(60);
      for (const what of [
        'sharing',
        'unsharing',
        'edit',
        'redaction',
        'join',
        'leave',
        'pointed',
        'going on',
        'undo',
        'renaming',
        'erasing',
      ])
        expect([what, often(what) > 30]).toEqual([what, true]);
      for (const what of ['kick', 'ban', 'invite', 'bot out', 'bot invited', 'tidying'])
        expect([what, often(what) > 8]).toEqual([what, true]);
      expect(commands.map(({ word }) => word).filter((word) => !counts.has(word))).toEqual([]);
    },
    600_000 * times,
  );
  it.each([
    [
      'forgets what its answers rest on',
      3,
      { ...realSpeech, dispatch: async (...asked) => ({ ...(await realSpeech.dispatch(...asked)), seen: [] }) },
    ],
    ['answers everybody from what anybody was told last', 3, { ...realSpeech, render: remembering() }],
  ] satisfies readonly (readonly [string, number, typeof realSpeech])[])(
    'find out a bot that %s',
    async (_, least, services) => {
      const runs: Outcome[] = [];
      for (let seed = 1; seed <= 20; seed++) runs.push(await canaries({ seed, bursts: 60, services }));
      expect(runs.filter(({ violations }) => violations.length > 0).length).toBeGreaterThanOrEqual(least);
    },
    120_000,
  );
  it('know a canary in every form in which it is shown, and nothing else', () => {
    const [{ canary, secret }] = owners;
    for (const shown of ['437.200 lb/in ± 0.010', '437 lb/in', '76.5655 N/mm', '2,613.200 lb ± 0.010', '1,185.33 kg', '[76565.5,0.02]'])
      expect([shown, canary.test(shown)]).toEqual([shown, true]);
    for (const other of ['437', '1437 lb/in', '437.5', '76.5%', '2613', '4,437.2', '442.2 lb/in'])
      expect([other, canary.test(other)]).toEqual([other, false]);
    expect(['442.2 lb/in', '77.4411 N/mm'].map((shown) => secret.test(shown))).toEqual([true, true]);
  });
});
/** Says beside each answer what the one before it said. */
function remembering(): typeof realSpeech.render {
  let last = '';
  return async (...asked) => {
    const rendered = await realSpeech.render(...asked);
    const before = last;
    last = rendered.body;
    return rendered.body === '' ? rendered : { ...rendered, body: `${rendered.body}\n${before}` };
  };
}
