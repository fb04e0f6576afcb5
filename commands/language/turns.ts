/**
 * Turns of phrase about corners and bars that no grammar of nouns and amounts covers, each put as the plainer line that it means: `how far does turnip
 * lean` is `roll angle turnip`. What is assumed on the way is echoed. Every pattern is looked for once, from left to right, in time linear in the line.
 */

export interface Turn {
  readonly said: RegExp;
  readonly means: string | ((...parts: readonly (string | undefined)[]) => string);
  readonly echo?: string;
  /** A line that has it, and what that becomes: the tests hold both to it. */
  readonly line: string;
  readonly becomes: string;
}
const amount = String.raw`\d{0,9}[.,]?\d{1,9}(?: \d{1,2}/\d{1,2}|/\d{1,2})? ?(?:mm|cm|inch(?:es)?|in|")?`;
const bar = '(?:anti-?roll ?bar|sway ?bar|roll bar|arb|bar)s?';
const link = '(?:end ?|drop ?|bar ?)?links?';
const rule = (text: string): RegExp => new RegExp(text, 'i');
const joined = (...parts: readonly (string | undefined)[]): string => parts.filter((part) => part !== undefined && part !== '').join(' ');
const minus = (value: string): string => `-${value.trim()}`;

const bars: readonly Turn[] = [
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
    said: rule(String.raw`\bhollow,? (?:with )?(?:an? )?(${amount}) (?:bore|hole|inside|id)\b`),
    means: (_, size) => `bore ${size}`,
    line: 'bar 1 in hollow 3/4 in bore',
    becomes: 'bar 1 in bore 3/4 in',
  },
];

const turning = `(?:[- ]?hand(?:er|ed)?)?(?: turns?| corners?| bends?)?`;
const corners: readonly Turn[] = [
  {
    said: /\b(?:which|what) (?:end )?(?:of (?:my |the )?(\S+) )?(?:lets? go|gives? up|goes|slides|breaks away|washes out) ?(?:first)?(?: on)?/i,
    means: (_, car) => joined('corner', car),
    line: 'which end of moth lets go first at 0.9 g',
    becomes: 'corner moth at 0.9 g',
  },
  { said: /^which end first/i, means: 'corner', line: 'which end first', becomes: 'corner' },
  {
    said: /\bhow (?:far|much) (?:does|do|will|would|is) (\S+(?: \S+)?) (?:lean|leaning|roll|rolling)\b/i,
    means: 'show roll angle $1',
    line: 'how far does turnip lean at .9g',
    becomes: 'show roll angle turnip at .9g',
  },
  { said: /\broll(?:s|ed|ing)? over\b/i, means: 'rollover', line: 'does it roll over', becomes: 'does it rollover' },
  {
    said: rule(String.raw`\b(?:in|on|through|around) an? (\d{0,3}\.?\d{1,3} ?g) (?:(left|right)${turning}|corner|turn|bend)`),
    means: (_, g, way) => (way ? `at ${g}, turning ${way}` : `at ${g}`),
    line: 'loads in a 0.9 g right turn',
    becomes: 'loads at 0.9 g, turning right',
  },
  {
    said: rule(String.raw`(\d ?g),? (?:in an? )?(left|right)(?! front| rear)${turning}\b`),
    means: '$1, turning $2',
    line: 'corner at .9g left',
    becomes: 'corner at .9g, turning left',
  },
  {
    said: rule(String.raw`\b(?:in|on|for) an? (left|right)${turning}`),
    means: 'turning $1',
    line: 'limit in a right hander',
    becomes: 'limit turning right',
  },
  {
    said: rule(`^corner(?:ing)? (left|right)${turning}$`),
    means: 'corner turning $1',
    line: 'corner right',
    becomes: 'corner turning right',
  },
  {
    said: /\bagainst (?:lateral )?g'?s?(?: from)? (\d{0,2}\.?\d{1,4})(?: ?g)? ?(?:to|-) ?(\d{0,2}\.?\d{1,4})(?: ?g)?(?= |$)/i,
    means: 'against lateral $1 g to $2 g',
    line: 'draw roll against g 0.2 to 1',
    becomes: 'draw roll against lateral 0.2 g to 1 g',
  },
  {
    said: /\bagainst (?:the )?(?:lateral )?g'?s?(?= |$)/i,
    means: 'against lateral',
    line: 'draw roll against g',
    becomes: 'draw roll against lateral',
  },
  { said: /\bat what g'?s?(?: does| do| will| would)?\b/i, means: '', line: 'at what g does it lift', becomes: 'it lift' },
  {
    said: /\b(camber|travel)(?! in the turn)(?=.* at \d?\.?\d{1,3} ?g\b)/i,
    means: '$1 in the turn',
    line: 'lf camber at 0.9 g',
    becomes: 'lf camber in the turn at 0.9 g',
  },
  {
    said: /\b(?:all )?(?:four|4|wheel) (?:wheel )?loads\b/i,
    means: 'load in the turn',
    line: 'four loads at 0.9 g',
    becomes: 'load in the turn at 0.9 g',
  },
];

/** How hard, where nobody said: enough to see which way it goes, and said so. */
const longitudinal: readonly Turn[] = [
  {
    said: /\b(?:on|with|under) (?:the )?(?:throttle|power|gas)\b(?! ?\d| ?\.)/i,
    means: 'accelerating 0.1 g',
    echo: 'on throttle read as 0.1 g of acceleration; say how hard: accelerating 0.2 g',
    line: 'corner at 0.7 g on throttle',
    becomes: 'corner at 0.7 g accelerating 0.1 g',
  },
  {
    said: /\b(?:on|with|under) (?:the )?(?:throttle|power|gas) (?=\d|\.)/i,
    means: 'accelerating ',
    line: 'corner on throttle 0.2 g',
    becomes: 'corner accelerating 0.2 g',
  },
  {
    said: /\b(?:while |when |under )?(?:trail[- ]?braking|on the brakes)\b(?! ?\d| ?\.| limit)/i,
    means: 'braking 0.3 g',
    echo: 'braking read as 0.3 g; say how hard: braking 0.2 g',
    line: 'balance trail braking',
    becomes: 'balance braking 0.3 g',
  },
  {
    said: /\bspin (?:the |my |a set of )?(\d{3})s\b/i,
    means: 'spin the tire',
    echo: 'the tires of the car are meant; their width alone says nothing of grip',
    line: 'can it spin 225s in 2nd at 40 mph',
    becomes: 'can it spin the tire in 2nd at 40 mph',
  },
  {
    said: /(\d) ?w(?:heel )?hp\b/i,
    means: '$1 hp wheel power',
    line: 'spin in 2nd with 118 whp',
    becomes: 'spin in 2nd with 118 hp wheel power',
  },
];

const car = String.raw`(?:the )?(\S+?)(?:'s?|s)?(?: car)?`;
const splits: readonly Turn[] = [
  {
    said: rule(
      String.raw`^why (?:does|do|is) ${car} (?:rotates?|rotating|turns?|turns? in|oversteers?|understeers?|push(?:es)?)(?: so much)?(?: more| less| better| worse)?(?: than (\S+?)(?:'s?|s)?(?: does| car)?)?\W*$`,
    ),
    means: (_, to, from) => `split balance ${from === undefined || /^(?:mine|me|my|i)$/i.test(from) ? to : `${from} vs ${to}`}`,
    line: 'why does moth rotate more than pickle',
    becomes: 'split balance pickle vs moth',
  },
  {
    said: rule(
      String.raw`^why (?:does|do|is) ${car} (?:leans?|leaning|rolls?|rolling)(?: so much)?(?: more| less)?(?: than (\S+?)(?:'s?|s)?(?: does| car)?)?\W*$`,
    ),
    means: (_, to, from) => `split roll angle ${from === undefined || /^(?:mine|me|my|i)$/i.test(from) ? to : `${from} vs ${to}`}`,
    line: 'why does moth lean less',
    becomes: 'split roll angle moth',
  },
  {
    said: /^why (?:is|are) ((?:\S+ ){1,8})(?:so much )?(?:higher|lower|more|less|bigger|smaller|greater|stiffer|softer|different)(?: (?:than|from) (\S+?)(?:'s)?)?\W*$/i,
    means: (_, what = '', from) => {
      const [first = '', ...rest] = what.trim().split(' ');
      const to = first.replace(/'s$|(?<=[a-z])s$/i, '');
      return `split ${rest.join(' ')} ${from === undefined || /^(?:mine|me|my|i)$/i.test(from) ? to : `${from} vs ${to}`}`;
    },
    line: "why is moth's front share higher than mine",
    becomes: 'split front share moth',
  },
  {
    said: /^split (.{1,80}?) between (\S+) and (\S+)/i,
    means: 'split $1 $2 vs $3',
    line: 'split balance between dry and wet',
    becomes: 'split balance dry vs wet',
  },
];

const turned =
  /\b(half a|a half|a quarter|an eighth|a full|a|one|two|three|\d{1,2}(?:\.\d{1,3})?(?: \d\/\d)?|\d\/\d) turns? (up|down)(?: on| at| of)?(?: the)? (lf|rf|lr|rr|left front|right front|left rear|right rear)\b/i;
const counts: ReadonlyMap<string, string> = new Map([
  ['half a', '0.5'],
  ['a half', '0.5'],
  ['a quarter', '0.25'],
  ['an eighth', '0.125'],
  ['a full', '1'],
  ['a', '1'],
  ['one', '1'],
  ['two', '2'],
  ['three', '3'],
]);
const perches: readonly Turn[] = [
  {
    said: new RegExp(`^(?:try |what if )?(?:i turn )?${turned.source}(?:,? what happens)?W*$`, 'i'),
    means: (_, count = '', way, wheel) =>
      `try ${wheel} perch turns ${counts.get(count.toLowerCase()) ?? count} ${way?.toLowerCase() === 'up' ? 'more' : 'less'}`,
    line: 'half a turn up on the rf what happens',
    becomes: 'try rf perch turns 0.5 more',
  },
];
/** `180 lb` is nobody's car: limits of what a person weighs, lb and kg. */
const person = (amount: string, unit: string): boolean => {
  const [least, most] = /^k/i.test(unit) ? [30, 200] : [66, 440];
  return Number(amount) >= least && Number(amount) <= most;
};
const plain: readonly Turn[] = [
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
    said: /^((?:front |rear )?(?:springs?|coils?|sway ?bars?|bars?|final(?: drive)?|spacers?|camber|tire pressure|pressure)) (?:for|to get) (?=.{0,60}\d)/i,
    means: 'find $1 for ',
    line: 'front spring for 2 Hz',
    becomes: 'find front spring for 2 Hz',
  },
  {
    said: /\bstatic (?=(?:front |rear |left |right |lf |rf |lr |rr ){0,2}(?:camber|toe|caster)\b)/i,
    means: '',
    line: 'my static front camber',
    becomes: 'my front camber',
  },
  {
    said: /\bbump travel left (?=front\b|rear\b)/i,
    means: 'bump travel ',
    line: 'bump travel left front',
    becomes: 'bump travel front',
  },
  {
    said: /^(?:where|when) (?:does|do|will) (?:the |my )?(?:inside |inner )?(?:front |rear )?(?:wheels? |tires? )?(?:lift|come off the ground)\b(?: off)?/i,
    means: 'first lift',
    line: 'where does the inside front lift',
    becomes: 'first lift',
  },
  {
    said: /\bskid ?pad,? (?:radius )?(\d.{0,15}?),? (?:in |lap |time ){1,2}(?=\d)/i,
    means: 'skidpad with radius $1, circle time ',
    line: 'skidpad radius 50 ft time 8.1 s',
    becomes: 'skidpad with radius 50 ft, circle time 8.1 s',
  },
  {
    said: /(\d{1,2}(?:[.,]\d{1,2})?)( ?(?:degrees?|deg|°))? (?:of )?negative camber\b/i,
    means: (_, size = '', unit = '') => `camber -${size}${unit}`,
    line: 'set front 2.5 deg of negative camber',
    becomes: 'set front camber -2.5 deg',
  },
  {
    said: /\b(?:negative|neg) camber\b(?! ?-?\d)/i,
    means: 'camber',
    line: 'how much negative camber do i have in front',
    becomes: 'how much camber do i have in front',
  },
  {
    said: /^(?:what|which) (?:rim|wheel)s?(?: width| size)? (?:do i need |fits? |goes |works )?(?:for|with|under|on) (?:an? )?(?=(?:p|lt)?\d{3}[\s/])/i,
    means: 'narrowest rim and widest rim with ',
    line: 'what rim do i need for a 225/45r17',
    becomes: 'narrowest rim and widest rim with 225/45r17',
  },
  {
    said: /^my weight is (\d{2,3}(?:\.\d)?) ?(lbs?|kg|kgs|pounds?|kilos?)\b/i,
    means: (all = '', size = '', unit = '') => (person(size, unit) ? `driver weight ${size} ${unit}` : all),
    line: 'my weight is 180 lb',
    becomes: 'driver weight 180 lb',
  },
];

/** What a thing would do, asked without the word `try`. */
const questions: readonly Turn[] = [
  {
    said: /^how (?:much |far )?(?:does|do|would|will) (?:an? |the |my )?(.{1,60}?\d.{0,40}?) (?:change|affect|move|do to) (?:the |my )?(.{1,60}?)\W*$/i,
    means: 'try $1, $2',
    line: 'how much does 25mm front bar change balance',
    becomes: 'try 25mm front bar, balance',
  },
  {
    said: /^(?:what|whats|what's) (?:happens|happen|changes) (?:with|if i (?:fit|use|run|put on)) (?:an? |the )?(?=.*\d)/i,
    means: 'try ',
    line: 'what happens with a 25mm front bar',
    becomes: 'try 25mm front bar',
  },
  {
    said: /^i(?:'m| am| weigh)(?: in at)? (?=\d{2,3}(?:\.\d)? ?(?:lb|lbs|kg|pounds?)\b)/i,
    means: 'driver weight ',
    line: 'i weigh 190 lb',
    becomes: 'driver weight 190 lb',
  },
  {
    said: /^(?:can|could|will|does|do|would|is) (?!it )(?:\D{0,50})\bspin\b\D{0,30}\bin (\d(?:st|nd|rd|th))\b/i,
    means: 'spin in $1',
    line: 'does my car have enough power to spin the rears in 2nd at 40 mph',
    becomes: 'spin in 2nd at 40 mph',
  },
];
export const turns: readonly Turn[] = [...bars, ...corners, ...longitudinal, ...splits, ...perches, ...plain, ...questions];

export interface Plainer {
  readonly text: string;
  readonly echoes: readonly string[];
}
/** The line in plainer words, each turn of phrase replaced where it stands first. */
export function plainer(text: string): Plainer {
  let out = text;
  const echoes: string[] = [];
  for (const { said, means, echo } of turns) {
    const before = out;
    out = typeof means === 'string' ? out.replace(said, means) : out.replace(said, (...parts: (string | undefined)[]) => means(...parts));
    if (out === before) continue;
    out = out.replace(/\s+/g, ' ').trim();
    if (echo !== undefined) echoes.push(echo);
  }
  return { text: out, echoes };
}
