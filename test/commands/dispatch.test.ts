import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { OutOfTime } from '../../commands/breathing.js';
import { dispatch } from '../../commands/dispatch.js';
import { commands } from '../../commands/registry.js';
import { demoClub } from './demo.js';
import { ask, everything, say } from './say.js';

const rate = 175.12683524647636;
const spring = (facts: ReadonlyMap<string, { readonly value: unknown }>) => Number(facts.get('front.spring.rate')?.value) / rate;

describe('a message', () => {
  it('answers each of its lines, in order, and each sees what the lines before it did', async () => {
    const club = await demoClub();
    const { answers, changes } = await say(club, 'robin', 'front wheel rate\nset front spring rate 500\nfront wheel rate');
    // kw = ks MR^2 (REFERENCES R1): 450 and 500 lb/in at 0.71.
    expect(answers.map(({ headline }) => headline)).toEqual([
      expect.stringMatching(/^Front wheel rate 230 lb\/in ± 20/),
      expect.stringContaining('500 lb/in'),
      expect.stringMatching(/^Front wheel rate 250 lb\/in ± 20/),
    ]);
    expect(changes.map(({ change }) => change)).toEqual(['record']);
  });
  it('makes one revision of its change set', async () => {
    const club = await demoClub();
    const before = club.revisions.length;
    await say(club, 'robin', 'set front spring rate 500\nset rear spring rate 400\nset wheelbase 98 in');
    expect(club.revisions.length).toBe(before + 1);
    await say(club, 'robin', 'undo');
    expect(spring(club.head('turnip').facts)).toBeCloseTo(450, 9);
    expect(club.head('turnip').facts.get('wheelbase')?.value).toBeCloseTo(99 * 0.0254, 12);
  });
  it('is all or nothing by line: a refused line stops no other', async () => {
    const club = await demoClub();
    const { answers } = await say(club, 'robin', 'set front spring rate 500\nset front spring rate 450 lb\nset rear spring rate 400');
    expect(answers.map(({ kind }) => kind)).toEqual(['changed', 'refused', 'changed']);
    expect(spring(club.head('turnip').facts)).toBeCloseTo(500, 9);
    expect(club.head('turnip').facts.get('rear.spring.rate')?.value).toBeCloseTo(400 * rate, 6);
  });
  it('that is empty is silence in a room, and an example in a direct chat', async () => {
    const club = await demoClub();
    club.rooms.set('alone', { direct: true, members: new Set(['@lee:example.org']) });
    for (const text of ['', ' ', '\n\r\n\t']) {
      expect(await say(club, 'robin', text)).toEqual({ answers: [], changes: [], read: [], seen: [] });
      const { answers, changes } = await say(club, 'lee', text, 'alone');
      expect(answers).toHaveLength(1);
      expect(changes).toEqual([]);
    }
  });
  it('of more lines than a question has is refused whole', async () => {
    const club = await demoClub();
    const { answers, changes } = await say(
      club,
      'robin',
      Array.from({ length: 41 }, (_, n) => `set front spring rate ${400 + n}`).join('\n'),
    );
    expect(answers).toHaveLength(1);
    expect(answers[0]?.kind).toBe('refused');
    expect(changes).toEqual([]);
  });
  it('lets a mistake of ours be thrown, and changes nothing', async () => {
    const club = await demoClub();
    const more = commands.find(({ word }) => word === 'more')!;
    const broken = vi.spyOn(more, 'run').mockImplementation(() => {
      throw new TypeError('a mistake of ours');
    });
    const before = club.revisions.length;
    await expect(say(club, 'robin', 'set front spring rate 500\nmore')).rejects.toThrow('a mistake of ours');
    expect(club.revisions.length).toBe(before);
    broken.mockRestore();
  });
  it('tells the heads of the cars that it looked at', async () => {
    const club = await demoClub();
    const { read } = await dispatch('compare turnip with moth', club.context('robin'));
    expect([...read].sort((a, b) => a.car - b.car)).toEqual(
      ['turnip', 'moth'].map((name) => ({ car: club.car(name).id, head: club.car(name).head })),
    );
  });
  it('never breaks, whatever is typed', async () => {
    const club = await demoClub();
    const words = [
      'set',
      'try',
      'front',
      'rear',
      'spring',
      '450',
      'lb/in',
      '245/40R17',
      'vs',
      'turnip',
      'moth',
      'undo',
      'keep as',
      'find',
      'for',
      '2 Hz',
      'with',
      '@sam',
      '-2',
      'camber',
      '\n',
      '?',
      'draw',
      'against',
      'help',
      'ride frequency',
    ];
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...words) }, { weight: 1, arbitrary: fc.string() }), { maxLength: 9 }),
        async (parts) => {
          const { answers } = await dispatch(parts.join(' '), club.context('robin'));
          for (const one of answers) expect(everything(one)).not.toMatch(/NaN|undefined|\[object|Infinity/);
        },
      ),
      { numRuns: 400 },
    );
  }, 60_000);
});

describe('the work that one message may ask for', () => {
  /** Ends at the breath of this number. */
  const endingAt = (last: number) => {
    let taken = 0;
    return () => (++taken < last ? Promise.resolve() : Promise.reject(new OutOfTime()));
  };
  it('used up: what is answered stands with its changes, the rest is named, and nothing of it is done', async () => {
    const club = await demoClub();
    club.breathe = endingAt(20);
    const { answers, changes } = await say(
      club,
      'robin',
      'set front spring rate 500\nshow everything\nset rear spring rate 400\nfront wheel rate',
    );
    expect(answers.map(({ kind }) => kind)).toEqual(['changed', 'refused']);
    expect(answers[1]?.headline).toBe(
      'That is all the work that one message may ask for: line 1 of 4 is answered, and nothing of lines 2 to 4 was done; send the rest again, from: show everything',
    );
    expect(answers[1]?.next.map(({ line }) => line)).toEqual(['show everything']);
    expect(changes.map(({ change }) => change)).toEqual(['record']);
    expect(spring(club.head('turnip').facts)).toBeCloseTo(500, 9);
    expect(club.head('turnip').facts.get('rear.spring.rate')?.value).toBeCloseTo(350 * rate, 6);
  });
  it('used up by its first line: nothing was done, and a line that works is shown', async () => {
    const club = await demoClub();
    for (const [text, begins] of [
      ['compare turnip with pickle', 'That is more work than one message may ask for'],
      ['compare turnip with pickle\nset front spring rate 500', 'The first of these 2 lines is more work than one message may ask for'],
    ] as const) {
      club.breathe = endingAt(5);
      const { answers, changes } = await say(club, 'robin', text);
      expect(answers.map(({ kind }) => kind)).toEqual(['refused']);
      expect(answers[0]?.headline).toMatch(new RegExp(`^${begins}, so it was stopped and nothing was done;`));
      expect(changes).toEqual([]);
      club.breathe = () => Promise.resolve();
      expect((await ask(club, 'robin', answers[0]?.next[0]?.line ?? '')).kind).toBe('told');
    }
  });
  it.each([
    ['compare turnip with moth', 100],
    ['compare turnip with pickle', 100],
    ['show everything', 200],
    ['doubt', 100],
    ['try rear spring 650', 100],
    ['find rear bar for balance 0', 100],
    ['find rear spring for roll angle 2', 100],
    ['find for balance 2%', 1000],
    ['split balance between turnip and moth', 100],
    ['why does moth rotate more', 100],
    ['try rear axle beam', 50],
    ['draw balance against rear bar', 40],
    ['draw balance', 50],
    ['more rotation mid corner', 20],
    ['pairs more rotation mid corner', 40],
    ['front bar 22 mm vs 25 mm', 50],
  ])('is done in pieces: %s takes a breath between them', async (line, least) => {
    const club = await demoClub();
    let breaths = 0;
    club.breathe = async () => void breaths++;
    expect((await ask(club, 'robin', line)).kind).toMatch(/told|asked/);
    expect(breaths).toBeGreaterThan(least);
  });
});

describe('a line without a verb', () => {
  it('that tells a fact of a saved car asks once whether to record or only try it', async () => {
    const club = await demoClub();
    const asked = await ask(club, 'robin', 'wheelbase 98');
    expect(asked.kind).toBe('asked');
    expect(asked.choices.map(({ line }) => line)).toEqual(['set wheelbase 98 in', 'try wheelbase 98 in']);
    const done = await ask(club, 'robin', '1');
    expect(done.kind).toBe('changed');
    expect(club.head('turnip').facts.get('wheelbase')?.value).toBeCloseTo(98 * 0.0254, 12);
  });
  it('that tries it changes nothing', async () => {
    const club = await demoClub();
    const before = club.head('turnip').id;
    await ask(club, 'robin', 'wheelbase 98');
    expect((await say(club, 'robin', '2')).changes).toEqual([]);
    expect(club.head('turnip').id).toBe(before);
  });
  it('that tells a fact without a saved car offers to save it', async () => {
    const club = await demoClub();
    const asked = await ask(club, 'lee', 'wheelbase 98');
    expect([...asked.choices, ...asked.next].some(({ line }) => line.startsWith('save my car'))).toBe(true);
  });
  it('that is a name shows what it names', async () => {
    const club = await demoClub();
    expect((await ask(club, 'robin', 'moth')).headline).toContain('moth (sam)');
    expect((await ask(club, 'robin', 'wheelbase')).headline).toMatch(/^Wheelbase 99/);
  });
});

describe('a change whose words were mended', () => {
  it('is offered, never run', async () => {
    const club = await demoClub();
    const { answers, changes } = await say(club, 'robin', 'set wheelbas 98 in');
    expect(changes).toEqual([]);
    expect(answers[0]?.kind).toBe('asked');
    expect(answers[0]?.choices[0]?.line).toBe('set wheelbase 98 in');
    expect((await ask(club, 'robin', '1')).kind).toBe('changed');
  });
  it('is answered when it is a question', async () => {
    const club = await demoClub();
    const told = await ask(club, 'robin', 'rear ride freqency');
    expect(told.headline).toMatch(/^Rear ride frequency 1\.5/);
    expect(told.echoes.length).toBeGreaterThan(0);
  });
});
