/** What a reply says first, and what it leaves out: the kinds of TALK, one line of each, on invented cars. Numbers are checked where they are worked out. */
import { describe, expect, it } from 'vitest';
import { demoClub } from './demo.js';
import { ask, everything } from './say.js';

describe("a sum of the line's own data is a sentence and its basis", () => {
  it.each([
    // 450 * 0.68^2 = 208.08.
    ['wheel rate with spring 450 motion ratio 0.68', 'Wheel rate 208 lb/in.', ['Spring rate times motion ratio squared.']],
    // (22/19)^4 = 1.797.
    ['bar 19 mm vs 22 mm', '22 mm is 80 % stiffer than 19 mm.', ['Twist of the bar alone, by its diameter.']],
  ])('%s', async (line, headline, notes) => {
    const told = await ask(await demoClub(), 'lee', line);
    expect(told).toMatchObject({ headline, notes, rows: [], cautions: [], assumptions: [] });
  });
  it('a part is told in the unit it is sold in', async () => {
    expect((await ask(await demoClub(), 'robin', 'set rear bar 19 mm')).headline).toMatch(/rear bar 19 mm/i);
  });
});
describe('recording', () => {
  it("says old and new in the member's own unit, with no caution", async () => {
    const told = await ask(await demoClub(), 'robin', 'set front spring 80 N/mm');
    expect(told.headline).toMatch(/front spring 80 N\/mm, was 78\.8\.$/i);
    expect(told).toMatchObject({ cautions: [], next: [{ line: 'undo' }] });
  });
  it('a new car says what was told and what to tell next', async () => {
    const told = await ask(await demoClub(), 'lee', 'save my car thimble 1040 kg, 61% front, wb 95.5');
    expect(told.headline).toBe('thimble is saved: weight 1,040 kg, front share 61 %, wheelbase 95.5 in.');
    expect(everything(told)).toMatch(/Next: .+\./);
  });
  it('undo says what is there again', async () => {
    const club = await demoClub();
    await ask(club, 'robin', 'set front spring 500');
    expect((await ask(club, 'robin', 'undo')).headline).toBe('Front spring 450 lb/in again.');
  });
});
describe('a number of a car', () => {
  it('is said on its basis, with the other end, and why as the one next line where it is sure enough', async () => {
    const told = await ask(await demoClub(), 'robin', 'show rear ride frequency');
    expect(told.headline).toMatch(/^Rear ride frequency 1\.\d\d Hz ± 0\.\d+, tire in it\.$/);
    expect(told.notes[0]).toMatch(/^Front 1\.\d\d Hz\.$/);
    expect(told.next.map(({ label }) => label)).toEqual(['why']);
    expect(told.further?.map(({ name }) => name)).toEqual(['steps', 'what it rests on']);
  });
  it('the balance is a push, or loose, by how much', async () => {
    const told = await ask(await demoClub(), 'robin', 'balance');
    expect(told.headline).toMatch(/^(?:The front lets go first|A toss-up)/);
    expect(told.notes[0]).toMatch(/^That's (?:a push of|loose by) /);
  });
  it('a loaded car is drawn as it stands, the heaviest wheel first', async () => {
    const told = await ask(await demoClub(), 'robin', 'loads at 0.9 g');
    expect(told.headline).toMatch(/^The (?:left|right) (?:front|rear) carries most: [\d,]+ lb ± \d+ at 0\.9 g\.$/);
  });
});
it('no answer has the words of a form', async () => {
  const club = await demoClub();
  for (const line of [
    'corner',
    'balance',
    'show rear ride frequency',
    'show turnip',
    'ride',
    'bar',
    'set rear spring 300',
    'keep as june',
    'cg height',
  ])
    expect(everything(await ask(club, 'robin', line)), line).not.toMatch(
      /as it stands|told twice|worked out, not told|of what\?|could be:|Rests most on/,
    );
});
