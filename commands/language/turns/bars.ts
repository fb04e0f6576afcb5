/** Bars and their links, as people speak of them. */
import { amount, bar, joined, link, minus, rule, type Turn } from './turn.js';

export const bars: readonly Turn[] = [
  {
    said: rule(
      String.raw`^(?:(?:what if|is) )?(?:i go )?(?:from )?(?:an? )?(${amount}) (?:to|vs|or) (?:an? )?(${amount}) (front |rear )?${bar},? how much (?:stiffer|softer)\W*$`,
    ),
    means: (_, from, to, end) => `bar ${joined(end?.trim(), from)} vs ${joined(end?.trim(), to)}`,
    line: '22mm to 25 mm bar how much stiffer',
    becomes: 'bar 22mm vs 25 mm',
  },
  {
    said: rule(
      String.raw`^(?:if i )?move (?:the |my )?(front |rear |lf |rf |lr |rr )?${link} (?:from |on )(?:the )?(${amount})(?: holes?)? to (?:the )?(${amount})(?: holes?)?( front| rear)?\W*$`,
    ),
    means: (_, before, from, to, after) => {
      const end = (before ?? after)?.trim();
      return `bar ${joined(end, 'hole', from)} vs ${joined(end, 'hole', to)}`;
    },
    line: 'move the endlink from the 9 1/2 in hole to the 8 in hole',
    becomes: 'bar hole 9 1/2 in vs hole 8 in',
  },
  {
    said: rule(String.raw`\bhow (?:do|can|should|would) i (?:set|get|make|adjust) (?:the |my )?(front |rear )?${link} neutral`),
    means: (_, end) => `bar ${joined(end?.trim(), 'neutral endlinks')}`,
    line: 'how do i set the endlinks neutral',
    becomes: 'bar neutral endlinks',
  },
  {
    said: rule(
      String.raw`\b(front |rear )?(left|right) (front |rear )?${link}(?: is| was)? (?:by )?(${amount}) (?:too )?(longer|shorter|long|short)\b( front| rear)?`,
    ),
    // Told of the left one: a right link that is longer is a left one that is shorter.
    means: (_, before, side, between, by = '', way, after) => {
      const end = (before ?? between ?? after)?.trim();
      const longer = /^long/i.test(way ?? '') === (side?.toLowerCase() === 'left');
      return joined(end, 'link mismatch', longer ? by.trim() : minus(by));
    },
    line: 'try right rear endlink 5 mm longer',
    becomes: 'try rear link mismatch -5 mm',
  },
  {
    said: rule(String.raw`\b(?:with no|without|with out|no) (?:an? |the |my |any )?(front|rear) ${bar}\b`),
    means: (all, end) => `${/^no/i.test(all ?? '') ? '' : 'with '}${end} bar 0`,
    line: 'try no rear bar',
    becomes: 'try rear bar 0',
  },
  {
    said: rule(String.raw`\bhow (?:much does|heavy is) (?:an? |my |the )?(front |rear )?(${amount}) ${bar}(?: weigh)?`),
    means: (_, end, size) => `bar weight with ${joined(end?.trim(), 'bar', size)}`,
    line: 'how much does a 22 mm bar weigh',
    becomes: 'bar weight with bar 22 mm',
  },
  {
    said: rule(String.raw`(${amount})( ${bar})?,? (?:with|w/?) (?:an? )?(${amount}) (walls?|bore)\b`),
    means: (_, size, noun, thick, part) =>
      `${noun === undefined ? 'bar ' : ''}${size?.trim()}${noun ?? ''} ${part?.toLowerCase() === 'bore' ? 'bore' : 'wall'} ${thick?.trim()}`,
    line: 'is 22mm bar stiffer than a 24mm w 4mm wall',
    becomes: 'is 22mm bar stiffer than a bar 24mm wall 4mm',
  },
  {
    said: /\bhollow,? (?=.*\bwall\b)/i,
    means: '',
    line: '25.4mm hollow bar 3.2 wall',
    becomes: '25.4mm bar 3.2 wall',
  },
  {
    said: rule(String.raw`^(?=.*\b(?:hollow|walls?|bore|bars?|arb)\b)(.*?)(${amount}) solid(?: ${bar})?(?=\W|$)`),
    means: (_, before = '', size) => `${before}bar ${size?.trim()} bore 0`,
    line: 'bar 24 mm wall 4 mm vs 22 solid',
    becomes: 'bar 24 mm wall 4 mm vs bar 22 bore 0',
  },
  {
    said: rule(String.raw`\bhollow,? (?:with )?(?:an? )?(${amount}) (?:bore|hole|inside|id)\b`),
    means: (_, size) => `bore ${size}`,
    line: 'bar 1 in hollow 3/4 in bore',
    becomes: 'bar 1 in bore 3/4 in',
  },
  {
    said: rule(
      String.raw`^how much (?:stiffer|softer) (?:is|would) (?:an? |the |my )?(${amount}) (?:(front |rear )?${bar} )?(?:be )?than (?:an? |the |my )?(${amount})(?: (front |rear )?${bar})?\W*$`,
    ),
    means: (_, to, one, from, other) => {
      const end = (one ?? other)?.trim();
      return `bar ${joined(end, from)} vs ${joined(end, to)}`;
    },
    line: 'how much stiffer is a 24 mm bar than 22 mm',
    becomes: 'bar 22 mm vs 24 mm',
  },
  {
    said: rule(
      String.raw`^how much (?:stiffer|softer) (?:is|would) (?:an? |the |my )?(${amount}) (front |rear )${bar} (?:be )?than (?:what i have|what i(?:'ve| have) got|mine|the one i have|now|it is now)\W*$`,
    ),
    means: (_, size, end) => `bar now vs ${end}bar ${size}`,
    line: 'how much stiffer is a 24mm front bar than what i have',
    becomes: 'bar now vs front bar 24mm',
  },
  {
    said: rule(
      String.raw`^(?:my |the )?(front|rear) ${bar}(?: has| comes with| with| got)?(?: \d| two| three| four| five)? holes?,?(?: at| of| are|:)? (?=\d.*[\d ,]\d)(?=.*\d\D+\d)(.{3,80})$`,
    ),
    means: 'i have $1 bar holes $2',
    line: 'my rear bar has holes at 200 220 240 mm',
    becomes: 'i have rear bar holes 200 220 240 mm',
  },
  {
    said: /\b(\d\/\d{1,2}) ?bar\b(?! of)/i,
    means: 'bar $1 in',
    line: '7/8 bar 36 in length',
    becomes: 'bar 7/8 in 36 in length',
  },
  {
    said: rule(String.raw`^(?=.*\b${bar}\b)(.*?)(\d+(?:[.,]\d+)?) ?(mm|in|")? long\b`),
    means: (_, before = '', size, unit) => `${before.replace(/[ ,]+$/, '')}, bar length ${joined(size, unit)}`,
    line: 'bar 22 mm 900 mm long',
    becomes: 'bar 22 mm, bar length 900 mm',
  },
  {
    said: rule(String.raw`^(?=.*\b${bar}\b)(.*?)(\d+(?:[.,]\d+)?) ?(mm|in|")? arms?\b(?! \d)`),
    means: (_, before = '', size, unit) => `${before.replace(/[ ,]+$/, '')}, bar arm ${joined(size, unit)}`,
    line: 'bar 22 mm 200 mm arm',
    becomes: 'bar 22 mm, bar arm 200 mm',
  },
  {
    said: rule(
      String.raw`^(?:try )?(?:what if i |if i )?(?:disconnect|unhook|unbolt|take off|remove|pull|drop) (?:the |my )?(front|rear) ${bar}\W*$`,
    ),
    means: 'try $1 bar 0',
    line: 'disconnect the rear bar',
    becomes: 'try rear bar 0',
  },
  {
    said: rule(String.raw`\b(front|rear) ${bar} (?:off|disconnected|unhooked|removed|out)\b`),
    means: 'with $1 bar 0',
    line: 'balance rear bar off',
    becomes: 'balance with rear bar 0',
  },
  {
    said: rule(
      String.raw`^(?:try |does |would |what does )?(?:an? )?(${amount}) (longer|shorter) (left|right) (front|rear) ${link}(?: do| matter| help)?\W*$`,
    ),
    means: (_, by = '', way, side, end) =>
      `try ${end} link mismatch ${/^long/i.test(way ?? '') === (side === 'left') ? by.trim() : minus(by)}`,
    line: 'does 5mm longer left front link matter',
    becomes: 'try front link mismatch 5mm',
  },
  {
    said: rule(
      String.raw`^(?:try |what (?:does|would|will) |how about |what about )?(?:an? |the |my )?(stiffer|bigger|thicker|softer|smaller|thinner) (front|rear) (springs?|${bar})(?: (?:do|does what|does|effect|what does (?:it|that) do))?(?: (?:to|on) (?:the |my )?(.{2,40}?))?\W*$`,
    ),
    means: (_, way, end, part, figure) => {
      const more = /stiff|big|thick/i.test(way ?? '');
      const by = /^spring/i.test(part ?? '') ? `10% ${more ? 'more' : 'less'}` : `1 mm ${more ? 'more' : 'less'}`;
      return `try ${end} ${/^spring/i.test(part ?? '') ? 'spring' : 'bar'} ${by}${figure === undefined ? '' : `, ${figure}`}`;
    },
    echo: 'stiffer and softer read as 10 % of a spring, 1 mm of a bar; say how much: try rear bar 3 mm more',
    line: 'stiffer front bar does what',
    becomes: 'try front bar 1 mm more',
  },
  {
    said: rule(`^(front |rear )?bar rate (?:of |for |with )?(?:an? )?(${amount})`),
    means: (_, end, size) => joined('bar rate with', end?.trim(), 'bar', size?.trim()),
    line: 'bar rate 22mm, bar length 900',
    becomes: 'bar rate with bar 22mm, bar length 900',
  },
  {
    said: rule(`^(?:(?:sway ?|anti-?roll ?)?bars?) off,? `),
    means: 'with front and rear bar 0, ',
    echo: 'bar off read of both ends; say which: rear bar off',
    line: 'bar off whats my balance',
    becomes: 'with front and rear bar 0, whats my balance',
  },
];
