import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clean, columnsOf, defang, escapeHtml, wrapped } from '../../bot/render/clean.js';
import { answerJson, jsonLine, messageSchema } from '../../bot/render/json.js';
import { laidOut, phoneColumns, renderReply, screenLines } from '../../bot/render/reply.js';
import { tableLines as tableRows } from '../../bot/render/table.js';
import { terminalText, wantsColour } from '../../bot/render/terminal.js';
import { type Amount, type Answer, answer, type Row } from '../../commands/answer.js';

const tableLines = (...args: Parameters<typeof tableRows>): string[] => tableRows(...args).flat();
const amount = (text: string): Amount => ({ si: 1, dimension: 'rate', text });
const row = (label: string, ...cells: (string | Amount)[]): Row => ({ label, cells });
const choice = (label: string) => ({ label, line: `line of ${label}` });
const rows = (count: number): Row[] => Array.from({ length: count }, (_, at) => row(`figure ${at}`, amount(`${at} lb/in`)));
const bodyLines = (...answers: Answer[]): string[] => renderReply({ answers }).body.split('\n');

describe('one answer', () => {
  test('stands as LANGUAGE shows it: headline, rows, what it rests on, next', () => {
    const rendered = renderReply({
      answers: [
        answer('told', 'Rear ride frequency 1.93 Hz ± 0.11', {
          rows: [
            row('spring at this height', amount('576 lb/in')),
            row('wheel rate', amount('243 lb/in')),
            row('ride rate, with tire', amount('205 lb/in')),
          ],
          assumptions: ['Rests most on: tire rate, assumed 1,300 lb/in ± 250. Measuring it halves the ±: help measure tire rate'],
          next: [choice('why'), choice('compare front'), choice('draw')],
        }),
      ],
    });
    expect(rendered.body).toBe(
      [
        'Rear ride frequency 1.93 Hz ± 0.11',
        '  spring at this height  576 lb/in',
        '  wheel rate             243 lb/in',
        '  ride rate, with tire   205 lb/in',
        'Rests most on: tire rate, assumed',
        '1,300 lb/in ± 250. Measuring it halves the',
        '±: help measure tire rate',
        '1 why',
        '2 compare front',
      ].join('\n'),
    );
    expect(rendered.html).toBe(
      '<p><strong>Rear ride frequency 1.93\u00a0Hz\u00a0±\u00a00.11</strong></p>' +
        '<pre>  spring at this height  576 lb/in\n  wheel rate             243 lb/in\n  ride rate, with tire   205 lb/in</pre>' +
        '<p>Rests most on: tire rate, assumed 1,300\u00a0lb/in\u00a0±\u00a0250. Measuring it halves the ±: help measure tire rate<br>' +
        '1 why<br>2 compare front</p>',
    );
    expect(rendered.rest).toEqual([]);
    expect(rendered.choices.map((c) => c.line)).toEqual(['line of why', 'line of compare front']);
  });
  test('every part comes in the order of an Answer', () => {
    const body = bodyLines(
      answer('asked', 'headline', {
        rows: [row('row', 'cell')],
        notes: ['note'],
        echoes: ['echo'],
        assumptions: ['assumption'],
        cautions: ['Jack it on level ground.'],
        choices: [choice('choice')],
        next: [choice('next')],
        reference: 'K7Q2',
      }),
    );
    expect(body).toEqual([
      'headline',
      '  row  cell',
      'note',
      'echo',
      'assumption',
      'Jack it on level ground.',
      'Reference to quote: K7Q2',
      '1 choice',
      '2 next',
    ]);
  });
  test('what does not fit is kept for more, in order, and counted; one line of suggestions stays', () => {
    const rendered = renderReply({ answers: [answer('told', 'everything front', { rows: rows(20), next: [choice('why')] })] });
    const lines = rendered.body.split('\n');
    expect(lines).toHaveLength(screenLines);
    expect(lines.at(-1)).toBe('more: the other rows');
    expect([...lines.slice(1, -2), ...rendered.rest.slice(1)].map((l) => /figure (\d+)/.exec(l)?.[1])).toEqual(
      rows(20).map((_, at) => String(at)),
    );
    const second = renderReply({ answers: [answer('told', 'more', { continued: rendered.rest })] });
    expect(second.body.split('\n')).toHaveLength(screenLines);
    // The headline and eight of them, and the line of what is left.
    expect(second.rest).toEqual([rendered.rest[0], ...rendered.rest.slice(9)]);
  });
  test('cautions, what it rests on and choices stay in sight; suggestions give way first', () => {
    const rendered = renderReply({
      answers: [
        answer('asked', 'which?', {
          rows: rows(20),
          assumptions: ['Rests most on: tire rate.'],
          cautions: ['Jack it on level ground.'],
          choices: [choice('one'), choice('two')],
          next: [choice('why')],
        }),
      ],
    });
    const lines = rendered.body.split('\n');
    expect(lines).toHaveLength(screenLines);
    expect(lines.slice(-5)).toEqual(['Rests most on: tire rate.', 'Jack it on level ground.', '1 one', '2 two', 'more: the other rows']);
    expect(rendered.choices.map((c) => c.label)).toEqual(['one', 'two']);
  });
  test('a long caution is cut to what it warns of, and is whole in more', () => {
    const caution = 'A compressed spring can kill: use a rated compressor and stands, keep out of its line, and follow the maker.';
    const rendered = renderReply({ answers: [answer('told', 'ride', { rows: rows(20), cautions: [caution] })] });
    expect(rendered.body.split('\n').slice(-3)).toEqual([
      '  figure 6    6 lb/in',
      'A compressed spring can kill: more',
      'more: the other rows, take care',
    ]);
    expect(rendered.rest.slice(-2)).toEqual(['\u00a7 take care', `\u00b6 ${caution}`]);
    expect(renderReply({ answers: [answer('told', 'ride', { rows: rows(3), cautions: [caution] })] }).body).toContain('follow the');
  });
  test('a row of two lines is not cut in two', () => {
    const long = Array.from({ length: 10 }, (_, at) => row(`a label of figure ${at} that is rather long`, '1,205 lb/in ± 20'));
    const lines = bodyLines(answer('told', 'x', { rows: long }));
    expect(lines.at(-2)).toContain('1,205 lb/in ± 20');
    expect(lines.length).toBeLessThanOrEqual(screenLines);
  });
  test('a note that begins with two spaces keeps them, in a fixed-width type', () => {
    const rendered = renderReply({
      answers: [answer('told', 'why', { notes: ['  rate * ratio^2\n    = 243 lb/in', 'Barton & Fieldhouse'] })],
    });
    expect(rendered.html).toContain('<pre>  rate * ratio^2\n    = 243 lb/in</pre><p>Barton &amp; Fieldhouse</p>');
  });
  test('silence is empty', () => {
    expect(renderReply({ answers: [] })).toEqual({ body: '', html: '', rest: [], choices: [] });
  });
  test('a headline that quotes a novel is cut, visibly', () => {
    const [headline = ''] = bodyLines(answer('refused', 'x'.repeat(50_000)));
    expect(headline).toHaveLength(400);
    expect(headline.endsWith('…')).toBe(true);
  });
});

describe('several answers', () => {
  test('share the page, keep their numbers apart, and say which the kept lines belong to', () => {
    const ask = (name: string): Answer =>
      answer('asked', `which ${name}?`, { choices: [choice(`${name} a`), choice(`${name} b`)], next: [choice('x')] });
    const rendered = renderReply({ answers: [ask('spring'), answer('told', 'all front', { rows: rows(20) }), ask('tire')] });
    expect(rendered.choices.map((c) => c.label)).toEqual(['spring a', 'spring b', 'tire a', 'tire b']);
    expect(rendered.body).toContain('3 tire a\n4 tire b');
    expect(rendered.rest.slice(0, 3)).toEqual(['\u00a7 the other answers', '\u00b6 all front', '\u00a7 the other rows']);
    expect(rendered.rest.length).toBe(3 + 20 - 3);
    // Read on, it is prose where it was prose.
    const more = renderReply({ answers: [answer('told', 'The rest:', { continued: rendered.rest })] });
    expect(more.html).toContain('The other answers:<br>all front<br>The other rows:</p><pre>');
  });
  test('a message of forty long answers keeps under the size of an event, and nothing is lost', () => {
    const long = (at: number): Answer =>
      answer('told', `answer ${at} ${'<&>'.repeat(130)}`, { notes: [`note ${at} ${'<&> '.repeat(300)}`] });
    const rendered = renderReply({ answers: Array.from({ length: 40 }, (_, at) => long(at)) });
    expect(Buffer.byteLength(rendered.body) + Buffer.byteLength(rendered.html)).toBeLessThanOrEqual(40_000);
    const all = `${rendered.body}\n${rendered.rest.join('\n')}`;
    for (let at = 0; at < 40; at++) expect(all).toMatch(new RegExp(`note\\s+${at}\\b`));
  });
  test('one message carries one picture; of the others the values are said', () => {
    const chart = (words: string) => ({
      title: 't',
      x: { label: 'x', unit: '' },
      y: { label: 'y', unit: '' },
      series: [],
      marks: [],
      words,
    });
    const rendered = renderReply({
      answers: [answer('told', 'a', { chart: chart('first') }), answer('told', 'b', { chart: chart('second') })],
    });
    expect(rendered.chart?.words).toBe('first');
    expect(rendered.body).toBe('a\n\nb\nsecond');
  });
});

describe('nothing that people wrote becomes markup, a link or a mention', () => {
  const hostile = [
    '<img src=x onerror=alert(1)>',
    '[tobb](https://matrix.to/#/@tobb:example.org)',
    '@room',
    '@tobb:example.org',
    '#club:example.org',
    '&lt;b&gt;',
    '"><a href=x>',
  ];
  const everywhere = (text: string): Answer =>
    answer('told', text, {
      rows: [row(text, text), row('b', text)],
      columns: [text],
      notes: [text],
      echoes: [text],
      assumptions: [text],
      cautions: [text],
      choices: [choice(text)],
      next: [choice(text)],
      continued: [text],
    });
  test.each(hostile)('%s', (text) => {
    const { body, html } = renderReply({ answers: [everywhere(text), everywhere(text)] });
    expect([...html.matchAll(/<\/?([a-z]+)[^>]*>/g)].filter(([tag]) => !/^<\/?(p|br|strong|em|pre)>$/.test(tag))).toEqual([]);
    for (const shown of [body, html]) {
      expect(shown).not.toMatch(/https?:\/\//);
      expect(shown).not.toMatch(/matrix\.to/);
      expect(shown).not.toMatch(/[@#]\w+:\w/);
      expect(shown).not.toContain('@room');
    }
  });
  test('marks that are not seen are gone: a name cannot pose as another, nor steer a terminal', () => {
    expect(clean('\u202eelttek\u200b \u001b[31m\u0007a\u0000b\u2066\ufeff')).toBe('elttek [31mab');
    expect(clean('a\ud800b')).toBe('a\ufffdb');
    expect(clean(`z${'\u0301'.repeat(50)}`)).toHaveLength(4);
    expect(clean('½ ± 2 in² µm ñ é')).toBe('½ ± 2 in² µm ñ é');
  });
  test('ordinary lines are not touched', () => {
    for (const line of ['compare me @robin', 'front spring 450 lb/in', 'toe 1/8" out, -2.5°', '!tire 245/40R17', 'ride 1.93 Hz: why', '#2'])
      expect(defang(line)).toBe(line);
  });
  test('any text at all: only our tags, and the plain body without hidden marks but ours', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 80 }), (text) => {
        const { body, html } = renderReply({ answers: [everywhere(text)] });
        const bare = html.replace(/<\/?(?:p|br|strong|em|pre)>/g, '');
        return !/[<>"']/.test(bare) && !/&(?!amp;|lt;|gt;|quot;|#39;)/.test(bare) && !/(?!\n|\u2060)[\p{Cc}\p{Cf}]/u.test(body);
      }),
    );
  });
  test('escaping', () => {
    expect(escapeHtml(`<a href="x">&'</a>`)).toBe('&lt;a href=&quot;x&quot;&gt;&amp;&#39;&lt;/a&gt;');
  });
});

describe('tables on a phone', () => {
  test('plain numbers of one unit end under one another', () => {
    expect(tableLines([row('a', '9 lb/in'), row('b', '1,205 lb/in')], undefined, phoneColumns)).toEqual([
      '  a      9 lb/in',
      '  b  1,205 lb/in',
    ]);
  });
  test('a row that is too long has its value on the next line; the others keep their column', () => {
    expect(
      tableLines([row('wheel rate', '243 lb/in'), row('ride rate, with the tire in series', '1,205 lb/in ± 20')], undefined, phoneColumns),
    ).toEqual(['  wheel rate  243 lb/in', 'ride rate, with the tire in series', '              1,205 lb/in ± 20']);
  });
  test('two cars: units move to the labels when that saves lines', () => {
    expect(
      tableLines([row('front', '54.2 %', '48.0 %'), row('ride', '1.93 Hz ± 0.11', '1.75 Hz ± 0.09')], ['turnip', 'moth'], phoneColumns),
    ).toEqual(['          turnip      moth', 'front, %  54.2        48.0', 'ride, Hz  1.93 ±0.11  1.75 ±0.09']);
  });
  test('long labels get a line of their own', () => {
    const two = ['front', 'rear'].map((end) => row(`${end} ride frequency`, '1.93 Hz ± 0.11', '1.75 Hz ± 0.09'));
    expect(tableLines(two, ['turnip', 'moth'], phoneColumns)).toEqual([
      '  turnip          moth',
      'front ride frequency',
      '  1.93 Hz ± 0.11  1.75 Hz ± 0.09',
      'rear ride frequency',
      '  1.93 Hz ± 0.11  1.75 Hz ± 0.09',
    ]);
    expect(tableLines(two.slice(0, 1), ['turnip', 'moth'], phoneColumns)).toEqual([
      'front ride frequency',
      '  turnip  1.93 Hz ± 0.11',
      '  moth    1.75 Hz ± 0.09',
    ]);
  });
  test('a row with fewer cells than the one before it takes none of them away', () => {
    const lines = tableLines(
      [
        { label: '', cells: ['a', 'b'] },
        { label: '', cells: ['c'] },
      ],
      [],
      phoneColumns,
    );
    expect(lines.flat().join(' ')).toMatch(/a\s+b\s+c/);
  });
  test('any rows fit the width, and no word of them is lost', () => {
    const word = fc.string({ unit: 'grapheme-ascii', minLength: 1, maxLength: 50 });
    const text = fc.array(word, { maxLength: 6 }).map((words) => words.join(' '));
    const anyRow = fc.record({ label: text, cells: fc.array(text, { maxLength: 4 }) });
    fc.assert(
      fc.property(fc.array(anyRow, { maxLength: 6 }), fc.array(text, { maxLength: 4 }), (some, heads) => {
        const lines = tableLines(some, heads, phoneColumns);
        const shown = lines.join('').replace(/\s/g, '');
        const letters = (t: string): number => [...t].filter((c) => /\S/.test(c)).length;
        const wanted = some.reduce((sum, r) => sum + letters(r.label) + r.cells.reduce((s, c) => s + letters(c), 0), 0);
        return lines.every((l) => columnsOf(l) <= phoneColumns) && letters(shown) >= wanted;
      }),
    );
  });
});

describe('lines', () => {
  test('wide characters count two, marks none', () => {
    expect(columnsOf('蕪 e\u0301')).toBe(4);
  });
  test('any text is broken within the width, and all of it is there', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), fc.integer({ min: 4, max: 40 }), (text, width) => {
        const lines = wrapped(clean(text).replace(/\s+/g, ' '), width);
        return lines.every((l) => columnsOf(l) <= width) && lines.join('').replace(/ /g, '') === clean(text).replace(/\s/g, '');
      }),
    );
  });
  test('a number stays with its unit and its plus-or-minus', () => {
    expect(wrapped('a spring of some 1,300 lb/in ± 250 is it', 26)).toEqual(['a spring of some', '1,300 lb/in ± 250 is it']);
  });
});

describe('a terminal', () => {
  const laid = laidOut({
    answers: [answer('changed', 'front spring 450 lb/in', { rows: rows(20), cautions: ['Jack it on level ground.'] })],
  });
  test('gets the same lines, with no escape when colour is not wanted', () => {
    const text = terminalText(laid, { colour: false, columns: 80 });
    expect(text).not.toContain('\u001b');
    expect(text.split('\n').slice(0, 2)).toEqual(['front spring 450 lb/in', '  figure 0    0 lb/in']);
    expect(text.endsWith('more: the other rows\n')).toBe(true);
  });
  test('gets colour that leaves the same text behind', () => {
    const text = terminalText(laid, { colour: true, columns: 80 });
    expect(text).toContain('\u001b[');
    expect(text.replace(/\u001b\[\d+m/g, '')).toBe(terminalText(laid, { colour: false, columns: 80 }));
  });
  test('wants colour only where there is one, and NO_COLOR is heeded', () => {
    expect(wantsColour({ isTTY: true }, {})).toBe(true);
    expect(wantsColour({}, {})).toBe(false);
    expect(wantsColour({ isTTY: true }, { NO_COLOR: '1' })).toBe(false);
    expect(wantsColour({ isTTY: true }, { NO_COLOR: '' })).toBe(true);
    expect(wantsColour({ isTTY: true }, { TERM: 'dumb' })).toBe(false);
  });
});

describe('JSON', () => {
  const message = (answers: Answer[]) => ({
    as: 'robin',
    room: 'club',
    said: 'x',
    silent: answers.length === 0,
    answers: answers.map(answerJson),
    text: 'x',
    more: 0,
    files: [],
  });
  test('is one line, of the schema, with every part of an answer', () => {
    const whole = answer('told', 'head\nline', {
      amount: { si: 78_807, dimension: 'rate', within: 100, text: '450 lb/in ± 0.6' },
      columns: ['a'],
      rows: [row('r', amount('1'), 's')],
      notes: ['n'],
      echoes: ['e'],
      assumptions: ['a'],
      cautions: ['c'],
      choices: [choice('d')],
      next: [choice('f')],
      continued: ['g'],
      reference: 'h',
      chart: {
        title: 't',
        x: { label: 'x', unit: 'u' },
        y: { label: 'y', unit: 'v' },
        series: [{ name: 's', points: [[1, 2]], band: [[1, 0, 3]] }],
        marks: [{ x: 1, y: 2, label: 'm' }],
        words: 'w',
      },
    });
    const line = jsonLine(message([whole]));
    expect(line).not.toContain('\n');
    const { answers } = messageSchema.parse(JSON.parse(line));
    expect(answers[0]).toEqual({
      ...whole,
      amount: { ...whole.amount, unit: 'N/m' },
      rows: [{ label: 'r', cells: [{ ...amount('1'), unit: 'N/m' }, 's'] }],
    });
  });
  test('a number that is not finite is never written', () => {
    expect(() => jsonLine(message([answer('told', 'x', { amount: { si: Number.NaN, dimension: 'rate', text: 'x' } })]))).toThrow();
  });
});
