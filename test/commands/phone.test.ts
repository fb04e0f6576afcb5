/** Lines of people who did not write the parser, answered: by somebody with a car, and by somebody without. The readings are tested where they are made. */
import { describe, expect, it } from 'vitest';
import { demoClub } from './demo.js';
import { hostileLines, phoneLines } from './lines/phone.js';
import { everything, say } from './say.js';

const expanded = (line: string): string =>
  line
    .replace(/\{\{repeat:(.+?):(\d+)\}\}/g, (_, text: string, times: string) => text.repeat(Number(times)))
    .replace(/\{\{u\+([0-9a-f]{4})\}\}/gi, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)))
    .replace('{{empty}}', '');
/** What may change a car; everything else changes nothing. */
const changing = /^(save my car turnip|turnips cg is|forget turnips rear bar|rename turnip to|undo$|save \{\{u\+202e\}\}elttek)/;
const lines = [...phoneLines.map(([line]) => line), ...hostileLines.map(([line]) => line)];
const clubs = await Promise.all(lines.map(() => demoClub()));

describe('lines typed on a phone', () => {
  it('are all here', () => expect([phoneLines.length, hostileLines.length]).toEqual([35, 18]));
  lines.forEach((line, at) => {
    for (const member of ['lee', 'robin'])
      it(`${member}: ${line.slice(0, 80)}`, async () => {
        const { answers, changes } = await say(clubs[at]!, member, expanded(line));
        if (!changing.test(line)) expect(changes).toEqual([]);
        expect(answers).toHaveLength(line === '{{empty}}' ? 0 : 1);
        for (const one of answers) {
          expect(one.headline.length).toBeGreaterThan(0);
          expect(everything(one)).not.toMatch(/NaN|undefined|\[object|Infinity|[\u202e\u200b]/);
          if (one.kind === 'refused' || one.kind === 'beyond') expect(one.next.length, everything(one)).toBeGreaterThan(0);
        }
      });
  });
});

describe('answers that are facts', () => {
  const told: readonly (readonly [line: string, headline: RegExp, why: string])[] = [
    ['whats the wheel rate w 375 lb/in n motion ratio .71', /^Wheel rate 189 lb\/in/, '375 * 0.71^2, REFERENCES R1'],
    [
      'hz if i go from 350s to 450s in the rear',
      /0\.18 Hz lower: 1\.54 Hz, .*1\.72 Hz\. The 0\.18 between is sure/,
      'R1 to R3 with the demo car, by hand',
    ],
    ['top speed in 2nd 1.89, 4.10s, 205/50r15, 7200 rpm', /^Top speed in 2nd 61\.9 mph|2nd 61\.91 mph/, 'E1 with 900.4 turns per mile'],
    ['scales 742 699 571 598 cross?', /48\.7 %/, '(699 + 571) / 2610'],
    ['came in hot 37.2 37 34.1 34.4 whats that cold', /^Left front cold pressure/, 'Q9 of REFERENCES has the law'],
    ['moth v pickle, front share', /4 % lower: 50\.0 %, pickle 54\.0 %/, 'as they were told'],
  ];
  for (const [line, headline, why] of told)
    it(`${line} (${why})`, async () => {
      const { answers } = await say(await demoClub(), 'robin', line);
      expect(answers[0]?.headline).toMatch(headline);
    });
});
