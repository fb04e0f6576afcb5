/** Whose doing a difference is, in words. */
import { describe, expect, it } from 'vitest';
import { demoClub } from './demo.js';
import { ask, everything, say } from './say.js';

const club = await demoClub();
const numberIn = (text: string): number => Number(text.replace(/[^-\d.]/g, ''));
/** What each cause makes: the last cell of its row. */
const partsOf = ({ rows }: Awaited<ReturnType<typeof ask>>): number[] =>
  rows.map(({ cells }) => {
    const cell = cells.at(-1);
    return typeof cell === 'object' ? cell.si : numberIn(cell ?? '');
  });

describe('split', () => {
  it('one change of one car is the whole of it', async () => {
    const told = await ask(club, 'robin', 'split roll angle with rear bar 25 mm');
    expect(told.headline).toMatch(/^With rear anti-roll bar 25 mm it leans less: lean at 0\.8 g 2\.24°, was 2\.72\.$/);
    expect(told.rows.map(({ label, cells }) => [label, ...cells.slice(0, 2)])).toEqual([['rear bar diameter', '16 mm', '25 mm']]);
    expect(partsOf(told)).toEqual([expect.closeTo(told.amount?.si ?? Number.NaN, 9)]);
  });
  it('of two setups: each input that differs, and nothing of what does not lead there', async () => {
    await say(club, 'robin', 'keep as dry\nset rear bar 22 mm, front pressure 26 psi, front spring 500 lb/in\nkeep as wet\nback to dry');
    const told = await ask(club, 'robin', 'split balance between dry and wet');
    expect(told.rows.map(({ label }) => label).sort()).toEqual(['cold tire pressure, fronts', 'front spring rate', 'rear bar diameter']);
    expect(partsOf(told).reduce((a, b) => a + b, 0)).toBeCloseTo(told.amount?.si ?? Number.NaN, 9);
    expect(everything(told)).toContain('every order');
  });
  it('of two cars, from the asker to the clubmate, in plain words', async () => {
    const told = await ask(club, 'robin', 'why does moth rotate more');
    expect(told.headline).toMatch(/^Moth is loose 0\.7 %, your car pushes 3\.4 %\. The 4\.0 between has ± 5: likely, not certain\.$/);
    expect(told.columns?.at(-1)).toBe('push, %');
    expect(told.amount?.si).toBeLessThan(0);
    const other = await ask(club, 'robin', 'split balance moth vs turnip');
    expect(other.headline).toMatch(/^Turnip pushes 4\.3 %, moth is loose 1\.0 %/);
    expect(other.amount?.si).toBeCloseTo(-(told.amount?.si ?? Number.NaN), 9);
  });
  it('asked again, it says the same', async () => {
    const [a, b] = [await ask(club, 'robin', 'split balance with moth'), await ask(club, 'robin', 'split balance with moth')];
    expect([a.headline, a.rows.map(({ label }) => label), a.notes]).toEqual([b.headline, b.rows.map(({ label }) => label), b.notes]);
  });
  it('of a figure that reads something else: why a share is higher', async () => {
    const told = await ask(club, 'robin', "why is moth's front share of roll stiffness higher than mine");
    expect(told.headline).toMatch(/^Moth's front roll share is 21 % lower: 46\.6 %, your car 67\.4 %/);
  });
  it('no difference, no such figure, and one car alone', async () => {
    expect((await ask(club, 'robin', 'split wheelbase turnip vs moth')).kind).not.toBe('changed');
    expect(await ask(club, 'robin', 'split balance turnip vs pickle')).toMatchObject({ kind: 'refused' });
    expect(await ask(club, 'robin', 'split balance')).toMatchObject({ kind: 'refused' });
    expect(await ask(club, 'lee', 'split balance')).toMatchObject({ kind: 'refused' });
  });
});

describe('a conversion, tried', () => {
  it('is told cause by cause, springs and bar at their new places apart from the roll center', async () => {
    const told = await ask(club, 'robin', 'try rear axle beam, spring base 40 in');
    const causes = told.further?.find(({ name }) => name === 'by cause')?.notes?.find((note) => note.startsWith('Balance')) ?? '';
    expect(causes).toMatch(/^Balance at the limit by cause, in push, %:\n {2}/);
    const part = (name: string) => {
      const line = causes.split('\n').find((one) => one.includes(name)) ?? '';
      return numberIn(/([\d.]+) (?:more|less)$/.exec(line)?.[1] ?? '') * (line.endsWith('more') ? 1 : -1);
    };
    // Springs closer together resist roll less at that end, a higher roll center moves more load there (CORNERING, equations 5 and 6).
    expect(part('spring spacing')).toBeGreaterThan(0);
    expect(part('roll center')).toBeLessThan(0);
  });
  it('another change is not', async () => {
    expect(everything(await ask(club, 'robin', 'try rear bar 22 mm'))).not.toContain('by cause');
  });
});

describe('a clubmate’s figure', () => {
  it('asks what to change, in lines that work', async () => {
    const asked = await ask(club, 'robin', 'what would mine need to have moths balance');
    expect(asked.kind).toBe('asked');
    const bar = asked.choices.find(({ line }) => line.includes('anti-roll bar'));
    const told = await ask(club, 'robin', bar?.line ?? '');
    expect(told.kind).toBe('told');
    expect(told.headline).toMatch(/^31\.8 mm\. Nearest to buy: 32 mm gives loose 0\.7 %, 31 gives loose 0\.4 %\.$/);
    expect(everything(told)).toContain('of moth');
  });
  it('or is told what to change', async () => {
    expect((await ask(club, 'robin', 'what rear bar would i need to have moths roll angle')).headline).toMatch(
      /^30\.1 mm\. Nearest to buy: 30 mm gives 1\.912°, 31 gives 1\.851\.$/,
    );
  });
});
