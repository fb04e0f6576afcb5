/** The topic of corners: which end first, and the four wheels. */
import { describe, expect, it } from 'vitest';
import { wheelsPicture } from '../../commands/show/wheels.js';
import { demoClub } from './demo.js';
import { ask, everything } from './say.js';

const club = await demoClub();

describe('corner', () => {
  it('tells which end, at what g, by how much, with the doubt of each', async () => {
    const told = await ask(club, 'robin', 'which end lets go first');
    expect(told.headline).toMatch(/^A toss-up, the front lets go at 0\.\d\d g, the rear would at [\d.]+ g\.$/);
    expect(told.notes[0]).toMatch(/^That's a push of [\d.]+ % ± [\d.]+/);
    expect(
      told.further?.find(({ name }) => name === 'the other numbers')?.rows?.find(({ label }) => label === 'front roll share')?.cells[0],
    ).toMatchObject({
      si: expect.closeTo(0.674, 3),
    });
    expect(told.further?.at(-1)?.notes?.join('\n')).toMatch(/A steady turn/);
    // Nobody is about to do it: a question needs no caution.
    expect(told.cautions).toHaveLength(0);
  });
  it('rear first where the balance is below 0, of a clubmate too', async () => {
    const told = await ask(club, 'robin', 'corner moth');
    expect(told.headline).toMatch(/^moth \(sam\): (the rear lets go first|a toss-up, the rear lets go)/);
    expect(told.amount?.si).toBeLessThan(0);
  });
  it('is mirrored in a turn the other way, for a car alike on both sides', async () => {
    const pictures = await Promise.all(
      ['left', 'right'].map(async (way) => {
        const picture =
          (await ask(club, 'robin', `corner at 0.9 g ${way}`)).further?.find(({ name }) => name === 'the four loads')?.notes?.[0] ?? '';
        return picture
          .split('\n')
          .filter((line) => /[┌└]/.test(line))
          .map((line) => line.match(/[\d,]+/g));
      }),
    );
    const [left, right] = pictures;
    expect(left?.map((line) => line?.length)).toEqual([2, 2]);
    expect(left).toEqual(right?.map((line) => [...(line ?? [])].reverse()));
  });
  it('beyond the limit there is no steady state, and it is said first', async () => {
    const told = await ask(club, 'robin', 'corner at 1.4 g');
    expect(told.headline).toMatch(/^It won't hold 1\.4 g: the front lets go at /);
    expect(everything(told)).toContain('tires that would hold');
    expect(everything(await ask(club, 'robin', 'roll at 1.4 g'))).toContain("It won't hold 1.4 g");
    expect(everything(await ask(club, 'robin', 'roll at 0.7 g'))).not.toContain("won't hold");
  });
  it('the limit of the end that holds longer is called hypothetical, that of the other is not', async () => {
    expect(everything(await ask(club, 'robin', 'rear limit'))).toContain('It never gets there: the front lets go first');
    expect(everything(await ask(club, 'robin', 'front limit'))).not.toContain('never gets there');
  });
  it('braking moves load forward: the four loads add up to the car all the same', async () => {
    const loads = async (line: string) => {
      const notes = (await ask(club, 'robin', line)).further?.[0]?.notes ?? [];
      return (notes.join('\n').match(/[\d,]+(?= [▁-█] ┌| [▁-█] └)|(?<=[┐┘] [▁-█] +)[\d,]+/g) ?? []).map((text) =>
        Number(text.replace(',', '')),
      );
    };
    const [plain, braked] = [await loads('corner at 0.6 g'), await loads('corner at 0.6 g braking 0.3 g')];
    const sum = (all: readonly number[]) => all.reduce((a, b) => a + b, 0);
    // Each is shown to 10 lb.
    expect(plain).toHaveLength(4);
    expect(Math.abs(sum(plain) - 2640)).toBeLessThan(21);
    expect(Math.abs(sum(braked) - 2640)).toBeLessThan(21);
    // W h a_x/L = 2640 * 19/99 * 0.3 = 152 lb, CORNERING equation 7; the body's roll adds a little.
    expect(Math.abs(sum(braked.slice(0, 2)) - sum(plain.slice(0, 2)) - 152)).toBeLessThan(24);
  });
  it('needs a car, and says what is missing of one', async () => {
    expect(await ask(club, 'lee', 'corner')).toMatchObject({ kind: 'refused' });
    expect(await ask(club, 'robin', 'corner pickle')).toMatchObject({
      kind: 'refused',
      next: [{ line: expect.stringMatching(/^help measure/) }],
    });
  });
  it('answers what is named, under the conditions of the line', async () => {
    expect((await ask(club, 'robin', 'how far does turnip lean at .9g')).headline).toMatch(/^Lean 3\.\d+° ± [\d.]+ at 0\.9 g\.$/);
    expect((await ask(club, 'robin', 'front share of roll stiffness')).headline).toMatch(/67 % ±|67\.4 %/);
    expect(everything(await ask(club, 'robin', 'four loads at 0.9 g'))).toMatch(/ {2}turning left, 0\.9 g, lb\n {2}/);
    expect((await ask(club, 'robin', 'can 118 whp spin 225s in 2nd at 40')).kind).toBe('told');
    expect(await ask(club, 'robin', 'braking .9 g cg 19 wheelbase 0')).toMatchObject({
      kind: 'refused',
      headline: expect.stringContaining('above 0'),
    });
  });
});

describe('drawn', () => {
  it('four loads, a line each', async () => {
    const { chart } = await ask(club, 'robin', 'draw loads against g 0.2 to 1.1');
    expect(chart?.series).toHaveLength(4);
  });
  it.each(['draw roll against g', 'draw use of grip against g', 'draw balance against rear bar 15 to 28 mm'])('%s', async (line) => {
    const { chart, kind } = await ask(club, 'robin', line);
    expect(kind).toBe('told');
    expect(chart?.series.length).toBeGreaterThan(0);
  });
});

describe('the picture of four wheels', () => {
  it('is at most 34 columns wide, every line of it kept as it is', () => {
    for (const texts of [
      ['1,151 lb', '235 lb', '905 lb', '349 lb'],
      ['577.7 kg', '80.2 kg', '446.0 kg', '186.1 kg'],
      ['1,151 lb', '1,235 lb', '1,905 lb', '1,349 lb'],
    ] as const)
      for (const shares of [
        [0.5, 0, 0.5, 0],
        [0.25, 0.25, 0.25, 0.25],
        [0.9, 0.1, 0, 0],
      ] as const)
        for (const turn of ['left', 'right'] as const) {
          const lines = wheelsPicture({ texts, shares, head: `turning ${turn}, 0.9 g, lb` }).split('\n');
          expect(lines).toHaveLength(6);
          for (const line of lines) {
            expect([...line].length).toBeLessThanOrEqual(34);
            expect(line.startsWith('  ')).toBe(true);
          }
        }
  });
  it('says that a wheel is up', () => {
    expect(wheelsPicture({ texts: ['up', '9', '9', '9'], shares: [0, 0.3, 0.3, 0.4], head: 'turning left, 0.9 g, lb' })).toContain(
      '     up   ┌',
    );
  });
});
