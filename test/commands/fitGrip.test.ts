import { describe, expect, it } from 'vitest';
import { demoClub } from './demo.js';
import { ask, say } from './say.js';

describe('fit grip', () => {
  it('finds the two parameters again that pairs were made with (exact: mu 1.05 at 3000 N, falling by load^-0.2)', async () => {
    const pairs = [1500, 3000, 5000].map((load) => `${load} N ${(1.05 * load * (load / 3000) ** -0.2).toFixed(3)} N`);
    const told = await ask(await demoClub(), 'lee', `fit grip ${pairs.join(', ')}`);
    expect(told.headline).toMatch(/^Grip coefficient 1\.0(?:50|4999)/);
    expect(told.notes[0]).toMatch(/mu = 1\.05 .*\^-0\.2,/);
  });
  it("reads REFERENCES L10's pairs in pounds, and says how sure it is", async () => {
    const told = await ask(await demoClub(), 'robin', 'fit grip 400 460, 800 760, 1200 900');
    // At 800 lbf the law that L10 was made with gives 760/800 = 0.95; a power law through all three runs close by.
    const [, mu = '', n = ''] = /mu = ([\d.]+) \(N\/.*\)\^-([\d.]+),/.exec(told.notes[0] ?? '') ?? [];
    const reference = 3000 / 4.4482216152605;
    expect(Number(mu) * (800 / reference) ** -Number(n)).toBeCloseTo(0.95, 1);
    expect(told.amount?.within).toBeGreaterThan(0);
    // Its next line records what was found.
    const club = await demoClub();
    const { changes } = await say(club, 'robin', told.next[0]?.line ?? '');
    expect(changes.some(({ change }) => change === 'record')).toBe(true);
  });
  it('finds the coefficient at which the car has its limit where the laps were', async () => {
    const club = await demoClub();
    // 4 pi^2 R/T^2: 50 ft in 7.9 s is 0.983 g (REFERENCES C3's kinematics).
    const lateral = (4 * Math.PI ** 2 * 15.24) / 7.9 ** 2 / 9.80665;
    const told = await ask(club, 'robin', 'fit grip skidpad 50 ft 7.9 s');
    expect(told.headline).toMatch(/^Grip coefficient [\d.]+ ± [\d.]+ at both ends, from one lap\.$/);
    const again = await ask(club, 'robin', `cornering limit of turnip with grip ${told.amount?.si.toPrecision(7)}`);
    expect((again.amount?.si ?? 0) / 9.80665).toBeCloseTo(lateral, 3);
    // Two laps tell it more surely than one, by the root of two.
    const two = await ask(club, 'robin', 'fit grip skidpad 50 ft 7.9 s, 7.9 s');
    expect((told.amount?.within ?? 0) / (two.amount?.within ?? 1)).toBeCloseTo(Math.SQRT2, 2);
    expect(told.next[0]?.line).toMatch(/^set grip /);
  });
  it.each([
    ['fit grip skidpad 50 ft', /time of a lap/],
    ['fit grip skidpad 8 s', /neither the radius/],
    ['fit grip skidpad 50 ft 0 s', /above zero/],
  ])('refuses %s', async (line, why) => {
    const told = await ask(await demoClub(), 'robin', line);
    expect(told.kind).toBe('refused');
    expect(told.headline).toMatch(why);
  });
  it.each([
    ['fit grip 400 lb 460 lb', /Two pairs/],
    ['fit grip 400 lb 460 lb 800 lb', /stands alone/],
    ['fit grip 400 lb 460 lb, 401 lb 470 lb', /loads must differ/],
    ['fit grip 400 psi 460 psi', /no load and no force/],
    ['fit grip', /Two pairs/],
  ])('refuses %s in a sentence, with a line that works', async (line, why) => {
    const told = await ask(await demoClub(), 'robin', line);
    expect(told.kind).toBe('refused');
    expect(told.headline).toMatch(why);
    expect(told.next[0]?.line).toMatch(/^fit grip /);
  });
});
