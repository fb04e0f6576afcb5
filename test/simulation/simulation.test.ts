import { describe, expect, it } from 'vitest';
import { type Wire, WireFailure } from '../../bot/matrix/wire.js';
import { type Outcome, type Scenario, simulate } from './club.js';

const faults = { before: 0.05, after: 0.03, repeat: 0.05, cut: 0.2 };
const scenario = (seed: number, commands: number): Scenario => ({ seed, commands, deadly: 0.012, faults });

describe('a homeserver that fails and a process that dies between any two steps', () => {
  // Seeds are fixed and the counts stated, so that a script that says nothing cannot pass.
  const seeds = [
    { seed: 1, edits: 179, redactions: 72 },
    { seed: 20261125, edits: 160, redactions: 63 },
    { seed: 77, edits: 175, redactions: 68 },
  ];
  for (const { seed, edits, redactions } of seeds)
    it(`each line gets one reply, each change is made once, in order, and nothing is lost (seed ${seed})`, async () => {
      const { violations, said, happened } = await simulate(scenario(seed, 1500));
      expect(violations).toEqual([]);
      expect(said).toMatchObject({ question: 773, change: 659, poison: 16, broken: 16, big: 18, picture: 18, number: 111 });
      expect({ edits: said.edits, redactions: said.redactions }).toEqual({ edits, redactions });
      // What it has been through; floors, because they hang on the order in which things are done.
      expect(happened.deaths).toBeGreaterThan(150);
      expect(happened.faults).toBeGreaterThan(100);
      expect(happened.lost).toBeGreaterThan(50);
      expect(happened.limited).toBeGreaterThan(50);
      expect(happened.repeated).toBeGreaterThan(50);
      expect(happened.backwards).toBeGreaterThan(20);
      expect(happened.refused).toBeGreaterThan(50);
      expect(said.devices).toBeGreaterThan(10);
    });
});

describe('the simulation notices a bot that is wrong', { timeout: 90_000 }, () => {
  // Of several runs: in one alone it may be lucky.
  const wrong = async (between: NonNullable<Scenario['between']>, ...seeds: readonly number[]): Promise<Pick<Outcome, 'violations'>> => {
    const runs: Outcome[] = [];
    for (const seed of seeds.length > 0 ? seeds : [6, 7]) runs.push(await simulate({ ...scenario(seed, 600), deadly: 0.04, between }));
    return { violations: runs.flatMap(({ violations }) => violations) };
  };
  const passing = (wire: Wire, change: (...call: Parameters<Wire['request']>) => ReturnType<Wire['request']>): Wire => ({
    ...wire,
    request: change,
  });

  it('that makes up a new transaction id each time', async () => {
    const { violations } = await wrong((wire, random) =>
      passing(wire, (method, path, call) =>
        wire.request(method, method === 'PUT' && path.includes('/send/') ? path.replace(/[^/]+$/, `m${random()}`) : path, call),
      ),
    );
    expect(violations.some((v) => v.includes('replies instead of 1'))).toBe(true);
    expect(violations.some((v) => v.startsWith('something was sent twice'))).toBe(true);
  });
  it('that does not look up what it may have sent', async () => {
    // It takes a death at the wrong moment, which not each run has.
    let noticed = false;
    for (let seed = 7; seed < 12 && !noticed; seed++) {
      const { violations } = await wrong(
        (wire) =>
          passing(wire, async (method, path, call) =>
            path.endsWith('/messages') && call?.query?.from === undefined ? { chunk: [] } : wire.request(method, path, call),
          ),
        seed,
      );
      noticed = violations.some((v) => v.startsWith('something was sent twice'));
    }
    expect(noticed).toBe(true);
  });
  it('that moves its place in the timeline on before what it read is stored', async () => {
    let place: string | number | undefined;
    const { violations } = await wrong((wire) =>
      passing(wire, async (method, path, call) => {
        if (!path.endsWith('/sync') || call?.query?.since === undefined) return wire.request(method, path, call);
        const answer = await wire.request(method, path, { ...call, query: { ...call.query, since: place ?? call.query.since } });
        if (typeof answer === 'object' && answer !== null && 'next_batch' in answer) place = String(answer.next_batch);
        return answer;
      }),
    );
    expect(violations.some((v) => v.endsWith('was never taken in'))).toBe(true);
  });
  it('that does not fill the gaps of timelines cut short', async () => {
    const { violations } = await wrong((wire) =>
      passing(wire, async (method, path, call) =>
        path.endsWith('/messages') && call?.query?.from !== undefined ? { chunk: [] } : wire.request(method, path, call),
      ),
    );
    expect(violations.some((v) => v.endsWith('was never taken in'))).toBe(true);
  });
  it('that takes a passing failure for a refusal', async () => {
    const { violations } = await wrong((wire) =>
      passing(wire, (method, path, call) =>
        wire.request(method, path, call).catch((problem: unknown) => {
          if (method === 'PUT' && problem instanceof WireFailure && problem.status !== 413)
            throw new WireFailure(403, 'M_FORBIDDEN', undefined, '403');
          throw problem;
        }),
      ),
    );
    expect(violations.some((v) => v.includes('0 replies instead of 1'))).toBe(true);
  });
});
