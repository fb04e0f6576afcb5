/** The topic of bars, text in and answer out. */
import { describe, expect, it } from 'vitest';
import { demoClub } from './demo.js';
import { ask, everything } from './say.js';

const club = await demoClub();

describe('one bar against another, with no car', () => {
  it.each([
    // (25/22)^4, REFERENCES A3: polar second moments go with the fourth power of the diameter.
    ['22mm to 25 mm bar how much stiffer', 1.6675, /^25 mm is 67 % stiffer than 22 ?mm\.$/],
    // REFERENCES A4: bore over diameter 0.75 leaves 0.68359375 of the stiffness.
    ['bar 1 in vs bar 1 in, bore 0.75 in', 0.68359375, /32 % softer/],
    // The lever squared, at the wheel, by virtual work: (9.5/8)^2.
    ['move the endlink from the 9½ in hole to the 8 in hole', 1.41016, /^8 in is 41 % stiffer than 9 1\/2 in, at the wheel\.$/],
  ])('%s', async (line, ratio, headline) => {
    const told = await ask(club, 'lee', line);
    expect(told.amount?.si).toBeCloseTo(ratio, 4);
    expect(told.headline).toMatch(headline);
    expect(told.rows).toEqual([]);
  });
  it('says which bar, when it has none', async () => {
    expect(await ask(club, 'lee', 'bar')).toMatchObject({ kind: 'refused', next: [{ line: 'bar 22 mm vs 25 mm' }] });
  });
});

describe('on a car', () => {
  it('holds a size that is asked about against the bar that is fitted, and takes it for no change of it', async () => {
    const fitted = (await ask(club, 'robin', 'show front bar diameter')).amount?.si ?? 0;
    const told = await ask(club, 'robin', 'how much stiffer is a 30mm front bar than what i have');
    expect(told.headline).toMatch(/^30 ?mm is \d+ % stiffer than the one fitted\.$/);
    // Both solid: the fourth power of the diameter (REFERENCES A3).
    expect(told.amount?.si).toBeCloseTo((0.03 / fitted) ** 4, 6);
  });
  it('puts what is there first, and what is supposed second', async () => {
    const told = await ask(club, 'robin', 'compare now with front bar 30 mm');
    expect(told.columns).toEqual(['now', '30 mm', 'push, %']);
  });
  it('shows what the car makes of it, and at which end', async () => {
    const told = await ask(club, 'robin', 'bar rear 16 mm vs 22 mm');
    expect(told.amount?.si).toBeCloseTo((22 / 16) ** 4, 9);
    const labels = told.further?.[0]?.rows?.map(({ label }) => label);
    expect(labels).toEqual(expect.arrayContaining(['rear bar rate', 'front roll share', 'roll angle', 'balance at the limit']));
    expect(everything(told)).not.toContain('front bar rate');
  });
  it('a stiffer rear bar takes roll away and adds rotation (common practice, no source)', async () => {
    const told = await ask(club, 'robin', 'bar rear 16 mm vs 22 mm');
    const change = (label: string) => told.further?.[0]?.rows?.find((row) => row.label === label)?.cells.at(-1);
    for (const label of ['front roll share', 'roll angle', 'balance at the limit']) expect(change(label), label).toMatch(/^-/);
  });
  it('shows the bars that are there, and none of what links do while none differs', async () => {
    const told = await ask(club, 'robin', 'bar');
    expect(told.headline).toMatch(/^Front bar rate /);
    expect(everything(told)).not.toContain('hooked up');
  });
});

describe('links', () => {
  it('neutral: how, and what a millimeter does', async () => {
    const told = await ask(club, 'robin', 'how do i set the endlinks neutral');
    expect(told.headline).toMatch(/bolt slips in by hand/);
    // A longer left link in front loads lf and rr, so the cross weight, of rf and lr, falls; in the rear it is the other way round (CORNERING M9).
    expect(told.rows.map(({ cells: [cell] }) => (typeof cell === 'object' ? cell.text : (cell ?? '')).charAt(0))).toEqual(['5', '-', '+']);
    expect(told.cautions.join()).toMatch(/springs when a link comes off/);
  });
  it('a mismatch that is told is named, with the way out', async () => {
    await ask(club, 'sam', 'set left rear endlink 5 mm longer');
    expect((await ask(club, 'sam', 'how do i set the endlinks neutral')).headline).toMatch(/^Shorten the left rear link by 0\.19685 in/);
    expect(everything(await ask(club, 'sam', 'bar'))).toMatch(/cross weight with the bars hooked up/i);
    await ask(club, 'sam', 'undo');
  });
});

describe('a share of roll stiffness by a bar alone', () => {
  it('refuses a bar below zero, and says what does it', async () => {
    const told = await ask(club, 'lee', 'springs alone are 60% front, what rear bar gets 80% front');
    expect(told.kind).toBe('refused');
    // 0.6/(1 + x) = 0.8 gives x = -0.25; (0.6 + x)/(1 + x) = 0.8 gives x = 1.
    expect(told.headline).toMatch(/below zero \(-25 % of the springs\)\. A front bar of 100 %/);
    const other = await ask(club, 'lee', told.next[0]?.line ?? '');
    expect(other).toMatchObject({ kind: 'told', amount: { si: expect.closeTo(1, 9) } });
  });
  it('takes no share that is none', async () => {
    expect(await ask(club, 'lee', 'springs alone are 60% front, what rear bar gets 100% front')).toMatchObject({ kind: 'refused' });
  });
});
