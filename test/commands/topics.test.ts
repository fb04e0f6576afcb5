import { describe, expect, it } from 'vitest';
import type { Answer } from '../../commands/answer.js';
import { demoClub } from './demo.js';
import { ask, everything, say } from './say.js';

const inch = 0.0254;
const si = (answer: Answer): number => {
  if (!answer.amount) throw new Error(`no amount: ${everything(answer)}`);
  return answer.amount.si;
};
const cells = (answer: Answer, label: RegExp): string[] => {
  const row = answer.rows.find((one) => label.test(one.label));
  if (!row) throw new Error(`no row ${label}: ${everything(answer)}`);
  return row.cells.map((cell) => (typeof cell === 'string' ? cell : cell.text));
};

describe('topics without a saved car', () => {
  it('two tires side by side', async () => {
    const club = await demoClub();
    const told = await ask(club, 'lee', 'tire 245/40R17 vs 255/40r17');
    // By what is printed: 17 in and twice 98 mm, and twice 102 mm.
    expect(told.headline).toMatch(/: 24\.72 in vs 25\.03 in, \+0\.31/);
    expect(17 + (2 * 98) / 25.4).toBeCloseTo(24.72, 2);
    expect(told.columns).toEqual(['first', 'second', 'change']);
    expect(told.notes).toContain('First 245/40R17, second 255/40R17.');
    // 63360 / (3.05 * D), Q1 of REFERENCES.
    expect(Number.parseFloat(cells(told, /^turns$/)[0]!)).toBeCloseTo(1609344 / (3.05 * 627.8), 0);
  });
  it('two sizes without a verb, also of another form', async () => {
    const told = await ask(await demoClub(), 'lee', '31x10.5r15 or 265/75-15?');
    expect(told.headline).toMatch(/vs 30\.650 ?in/);
    expect(told.notes).toContain('First 31x10.50R15, second 265/75R15.');
  });
  it('a speedometer, right on the first size', async () => {
    const told = await ask(await demoClub(), 'lee', '225 45 16 vs 205 50 15 what does my speedo say at 60');
    // 16 in and twice 101.25 mm against 15 in and twice 102.5 mm.
    expect(told.headline).toMatch(/60\.0 mph vs 62\.3 mph/);
    expect((60 * (406.4 + 202.5)) / (381 + 205)).toBeCloseTo(62.3, 1);
    expect(everything(told)).toContain('taken to be right on 225/45R16');
  });
  it('road speed in a gear, the rolling factor named', async () => {
    const told = await ask(await demoClub(), 'lee', 'gear 6500rpm 2nd 1.93 final 3.73 245/40R17');
    // E1 of REFERENCES with turns per mile of 63360 / (3.05 * 627.8 mm).
    const turns = 1609344 / (3.05 * 627.8);
    expect(si(told) / 0.44704).toBeCloseTo((6500 * 60) / (1.93 * 3.73 * turns), 6);
    expect(told.assumptions.join()).toContain('rolling factor');
    expect(told.cautions).toHaveLength(1);
  });
  it('a coil from its measures', async () => {
    const told = await ask(await demoClub(), 'lee', 'coil 12.5mm wire 100mm mean dia 6 turns how stiff');
    // k = G d^4 / (8 D^3 n), REFERENCES section 2, with the assumed modulus of 79.3 GPa.
    expect(si(told)).toBeCloseTo((79.3e9 * 0.0125 ** 4) / (8 * 0.1 ** 3 * 6), -2);
    expect(told.headline).toMatch(/230\.\d lb\/in ± /);
  });
  it('a progressive spring under a load', async () => {
    const told = await ask(await demoClub(), 'lee', 'progressive 280-430 over 4" whats the rate at 900 lb');
    // F = 280 x + 18.75 x^2 in lb and in: the rate where F is 900 is sqrt(280^2 + 75 * 900).
    expect(si(told) / 175.12683524647636).toBeCloseTo(Math.sqrt(280 ** 2 + 75 * 900), 2);
  });
  it('hot pressure from cold, in absolute terms', async () => {
    const told = await ask(await demoClub(), 'lee', 'pressure 30 psi cold 32 f hot 122 f');
    // REFERENCES Q5: 38.2 psig.
    expect(si(told) / 6894.757293168361).toBeCloseTo(38.18, 2);
  });
  it('whether wheels stick out more', async () => {
    const told = await ask(await demoClub(), 'lee', 'will 17x8 et35 stick out more than 15x7 +38');
    // Half the widths of the rims and half an inch of flange, less the offsets.
    const out = (width: number, offset: number) => (width + 1) / 2 - offset / 25.4;
    expect(told.headline).toMatch(/: 3\.12 in vs 2\.50 in/);
    expect(out(8, 35)).toBeCloseTo(3.12, 2);
    expect(out(7, 38)).toBeCloseTo(2.5, 2);
  });
  it('whether a tire on a wheel fits instead: edges, and the honest word on room', async () => {
    const told = await ask(await demoClub(), 'lee', 'will 275/35 R18 on an 18x9.5 et 35 fit instead of 245/40R17 on 17x8 et30');
    expect(told.headline).toMatch(/^Only measured room can say whether it fits: it sticks out 0\.\d+ in more, reaches in 0\.\d+ in more$/);
    expect(everything(told)).toMatch(/inner tire edge/i);
    // What is there now first, what would take its place second.
    expect(told.notes).toContain('First 245/40R17, 17x8 ET30, second 275/35R18, 18x9.5 ET35.');
    expect(cells(told, /^widest rim/)[1]).toMatch(/^11/);
  });
  it('a wheel told with its offset stands for itself, whatever offset the car was told apart', async () => {
    const club = await demoClub();
    const before = (await ask(club, 'robin', 'show front wheel offset')).amount?.si ?? Number.NaN;
    const told = await ask(club, 'robin', 'will 205/50R15 on 15x7 et25 fit instead of 195/50R15 on 15x6.5 et40');
    const [, out, less] = /sticks out ([\d.]+) in more, reaches in ([\d.]+) in less$/.exec(told.headline) ?? [];
    // Both edges move by half of what it is wider, and apart from that by the offset: the two together differ by twice 15 mm.
    expect(Number(out) + Number(less)).toBeCloseTo((2 * 15) / 25.4, 2);
    expect((await ask(club, 'robin', 'set wheel 15x7 et30')).kind).toBe('changed');
    expect((await ask(club, 'robin', 'show front wheel offset')).amount?.si).toBeCloseTo(0.03, 9);
    await ask(club, 'robin', 'undo');
    expect((await ask(club, 'robin', 'show front wheel offset')).amount?.si).toBeCloseTo(before, 12);
    expect((await ask(club, 'robin', 'set wheel 15x7 et30, offset 20 mm')).headline).toMatch(/say the same thing; tell it once/);
  });
  it('says what is missing, with a line that works, and saves nothing', async () => {
    const club = await demoClub();
    for (const line of ['tire', 'wheel', 'gear', 'spring', 'ride', 'pressure']) {
      const { answers, changes } = await say(club, 'lee', line);
      expect(changes).toEqual([]);
      expect(['told', 'refused'], line).toContain(answers[0]?.kind);
      if (answers[0]?.kind === 'refused') expect((await ask(club, 'lee', answers[0].next[0]!.line)).kind, line).not.toBe('refused');
    }
  });
});

describe('topics on the saved car', () => {
  it('fill what is missing from it', async () => {
    const club = await demoClub();
    const told = await ask(club, 'robin', 'how fast in 2nd at 6500');
    const turns = 1609344 / (3.05 * 586);
    expect(si(told) / 0.44704).toBeCloseTo((6500 * 60) / (1.888 * 4.1 * turns), 6);
    const gears = await ask(club, 'robin', 'gear at 6500 rpm');
    expect(gears.headline).toMatch(/^Road speed in 1st/);
    expect(cells(gears, /^2nd road speed/)[0]).toMatch(/^56\.0 mph/);
  });
  it('show both ends of the ride, and the tires', async () => {
    const club = await demoClub();
    const ride = await ask(club, 'robin', 'ride');
    expect(ride.headline).toMatch(/^Front ride frequency/);
    expect(ride.rows.some(({ label }) => label === 'rear ride frequency')).toBe(true);
    const tires = await ask(club, 'robin', 'tire');
    expect(si(tires) / inch).toBeCloseTo(586 / 25.4, 6);
  });
  it('put two tires side by side with what they do to this car', async () => {
    const told = await ask(await demoClub(), 'robin', 'tire 245/40R17 vs 255/40R17');
    expect(told.rows.some(({ label }) => /top speed/.test(label))).toBe(true);
    expect(told.rows.some(({ label }) => /height/.test(label))).toBe(true);
  });
});

describe('sums and conversions', () => {
  const lines: readonly (readonly [line: string, headline: RegExp, why: string])[] = [
    ['3/8 in in mm', /= 9\.525 mm$/, 'exact'],
    ['8kg/mm springs in lb/in?', /= 447\.98 lb\/in$/, 'REFERENCES U8'],
    ['337 kg 317 259 271 same thing in lbs', /^742\.96 lb, 698\.87 lb, 571 lb, 597\.45 lb$/, 'REFERENCES U2'],
    ['100 f in c', /= 37\.778 °C$/, 'REFERENCES U12'],
    ['32 psi to bar', /= 2\.2063 bar$/, 'REFERENCES U5 and U6'],
    ['calc 2 * 450 lb/in * 0.65^2', /= 380\.25 lb\/in$/, 'by hand'],
    ['calc 12 in + 3 mm', /= 12\.118 in$/, 'exact'],
    ['calc rear spring * 0.65^2', /= 147\.88 lb\/in$/, "the demo car's 350 lb/in"],
  ];
  for (const [line, headline, why] of lines)
    it(`${line} (${why})`, async () => {
      const club = await demoClub();
      const { answers, changes } = await say(club, 'robin', line);
      expect(answers[0]?.headline).toMatch(headline);
      expect(changes).toEqual([]);
    });
  it('refuses a unit of another kind', async () => {
    const told = await ask(await demoClub(), 'robin', '3/8 in in psi');
    expect(['asked', 'refused']).toContain(told.kind);
    expect(told.amount).toBeUndefined();
  });
});
