/** Undo takes back whatever was changed, in the order in which it was changed. */
import { describe, expect, it } from 'vitest';
import { demoClub } from './demo.js';
import type { Club } from './garage.js';
import { ask, everything, say } from './say.js';

const boxed = async (club: Club): Promise<string> => everything(await ask(club, 'robin', 'box'));
const rate = 175.12683524637913;
const spring = (club: Club): number => Math.round(Number(club.head('turnip').facts.get('front.spring.rate')?.value) / rate);

describe('undo', () => {
  it.each([
    ['units metric', /^Units: us again.$/, async (club: Club) => club.member('robin').preferences.units, 'us'],
    ['units comma', /^Decimal mark: point again.$/, async (club: Club) => club.member('robin').preferences.decimalMark, '.'],
    ['rename turnip to parsnip', /^Name: turnip again.$/, async (club: Club) => club.garage('robin').chosen?.name, 'turnip'],
    ['car pickle', /^Car in use: turnip again.$/, async (club: Club) => club.garage('robin').chosen?.name, 'turnip'],
    ['keep as dry', /^Setup dry: not kept again.$/, async (club: Club) => club.garage('robin').setups(2), []],
    ['share', /^Turnip here: private again.$/, async (club: Club) => club.garage('robin').chosen?.shared, false],
    ['i have 25 mm rear bars, 40 min', /^In the box: nothing again.$/, async (club: Club) => /25 mm/.test(await boxed(club)), false],
    [
      'box forget 1',
      /^In the box: rear anti-roll bar 19 mm and 22 mm again.$/,
      async (club: Club) => /19 mm, 22 mm/.test(await boxed(club)),
      true,
    ],
    ['set front spring 500', /^Front spring 450 lb\/in again\.$/, async (club: Club) => spring(club), 450],
    ['forget front spring', /^Front spring 450 lb\/in again\.$/, async (club: Club) => spring(club), 450],
  ])('of %s', async (line, headline, look, wanted) => {
    const club = await demoClub();
    expect((await ask(club, 'robin', line)).kind).toBe('changed');
    expect(await look(club)).not.toEqual(wanted);
    const answer = await ask(club, 'robin', 'undo');
    expect(answer.headline).toMatch(headline);
    expect(await look(club)).toEqual(wanted);
  });
  it('goes back in the order of changing, whatever was changed on whichever car', async () => {
    const club = await demoClub();
    for (const line of ['set front spring 500', 'units metric', 'car pickle', 'set wheelbase 100 in', 'keep as dry'])
      await ask(club, 'robin', line);
    const taken = [];
    for (let n = 0; n < 5; n++) taken.push((await ask(club, 'robin', 'undo')).headline);
    expect(taken).toEqual([
      'Setup dry: not kept again.',
      'Wheelbase 2,573 mm again.',
      'Car in use: turnip again.',
      'Units: us again.',
      'Front spring 450 lb/in again.',
    ]);
  });
  it('counts over all of them, and takes a message back whole', async () => {
    const club = await demoClub();
    await ask(club, 'robin', 'set front spring 500');
    await say(club, 'robin', 'units metric\nset rear spring 60 N/mm\nbox forget 2');
    await ask(club, 'robin', 'rename turnip to parsnip');
    const answer = await ask(club, 'robin', 'undo 3');
    expect(answer.headline).toBe('Three taken back.');
    expect(answer.rows.map(({ label }) => label)).toEqual(
      ['name', 'in the box', 'front spring', 'rear spring', 'units'].map((label) => expect.stringContaining(label)),
    );
    expect([spring(club), club.member('robin').preferences.units]).toEqual([450, 'us']);
    // A later one goes on before them.
    expect((await ask(club, 'robin', 'undo')).headline).toMatch(/^Taken back: i have 19 and 22 mm rear bars, 40 min; rear bar holes/);
  });
  it('in the same message takes back what the message did, as if it had not been', async () => {
    const club = await demoClub();
    const before = club.revisions.length;
    const { answers, changes } = await say(club, 'robin', 'units metric\nset front spring 500 lb/in\nundo\nshow front spring rate');
    expect(answers.map(({ kind }) => kind)).toEqual(['changed', 'changed', 'changed', 'told']);
    expect(answers[3]?.headline).toMatch(/450 lb\/in/);
    expect(changes).toEqual([]);
    expect(club.revisions).toHaveLength(before);
  });
  it('says of another car whose it was', async () => {
    const club = await demoClub();
    await ask(club, 'robin', 'set front spring 500');
    await say(club, 'robin', 'undo\ncar pickle');
    await ask(club, 'robin', 'car turnip');
    await ask(club, 'robin', 'set front spring 500');
    await ask(club, 'robin', 'car pickle');
    expect(everything(await ask(club, 'robin', 'undo 2'))).toContain('Of turnip.');
  });
  it.each([
    ['export my data', "The export of your data can't be taken back.", 'chat'],
    ['leave now', "Leaving a room can't be taken back.", 'paddock'],
    ['prefix %', "Setting the prefix of a room can't be taken back.", 'paddock'],
    ['erase car pickle', "Erasing a car can't be taken back.", 'paddock'],
  ])('of %s is refused, and what was before it is offered', async (line, sentence, room) => {
    const club = await demoClub();
    await ask(club, 'robin', 'set front spring 500');
    // The export is given only there.
    club.rooms.set('chat', { direct: true, members: new Set([club.member('robin').id]) });
    await ask(club, 'robin', line, room);
    const refused = await say(club, 'robin', 'undo');
    expect(refused.answers).toMatchObject([{ kind: 'refused', headline: sentence, next: [{ line: 'undo 2' }] }]);
    expect(refused.changes).toEqual([]);
    expect(spring(club)).toBe(500);
    const both = await ask(club, 'robin', 'undo 2');
    expect(both.headline).toMatch(/450 lb\/in.* again/);
    expect(both.notes).toContain(sentence);
    expect(spring(club)).toBe(450);
  });
  it('leaves nothing to take back after forget me', async () => {
    const club = await demoClub();
    await say(club, 'robin', 'erase me');
    expect((await ask(club, 'robin', 'undo')).kind).toBe('refused');
  });
  it('never takes a car away: what was before its making is reached by counting over it', async () => {
    const club = await demoClub();
    await ask(club, 'robin', 'units metric');
    await ask(club, 'robin', 'new car parsnip');
    const refused = await ask(club, 'robin', 'undo');
    expect(refused).toMatchObject({ kind: 'refused', headline: "Making a car can't be taken back.", next: [{ line: 'undo 2' }] });
    expect((await ask(club, 'robin', 'undo 2')).headline).toBe('Units: us again.');
    expect(club.garage('robin').mine.map(({ name }) => name)).toContain('parsnip');
    expect(club.garage('robin').chosen?.name).toBe('parsnip');
  });
  it('repeats no words of what it took back: the history finds them while they are there', async () => {
    const club = await demoClub();
    await ask(club, 'robin', 'set front spring 500');
    await ask(club, 'robin', 'undo');
    expect(club.head('turnip').why).toBe('undo');
    expect((await ask(club, 'robin', 'history')).rows[0]?.cells).toEqual([expect.stringMatching(/^undo set front spring 500/)]);
  });
});
