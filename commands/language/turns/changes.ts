/** Changes, tried or told, in the words of people with a spanner in hand. */
import { joined, rule, type Turn } from './turn.js';

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
export const perches: readonly Turn[] = [
  {
    said: new RegExp(`^(?:try |what if )?(?:i turn )?${turned.source}(?:,? what happens)?\\W*$`, 'i'),
    means: (_, count = '', way, wheel) =>
      `try ${wheel} perch turns ${counts.get(count.toLowerCase()) ?? count} ${way?.toLowerCase() === 'up' ? 'more' : 'less'}`,
    line: 'half a turn up on the rf what happens',
    becomes: 'try rf perch turns 0.5 more',
  },
];

const upward = 'add|raise|increase|bump up|go up|put in|pump in|gain|put on';
const downward = 'drop|lower|reduce|cut|decrease|bleed(?: off| out)?|let out|take out|take off|remove|lose|go down|shed';
/** Amounts of which there is more or less of what is there; a length may as well be the spring's or the car's. */
const worth = String.raw`\d{0,6}[.,]?\d{1,6} ?(?:psi|bar|kpa|lbs?/in|lb-in|n/mm|kg/mm|lbs?|pounds?|kgs?|kilos?|%|percent|gal(?:lons?)?|hp)`;
const supposing = `(?:(?:what if|what happens if|what happens when|and if|if|say) )(?:i |we |you )?(?:were to |just )?`;
const little = `(?:the |my |by |of |some )*`;
const moreOrLess = (way: string | undefined): string => (new RegExp(`^(?:${upward})`, 'i').test(way ?? '') ? 'more' : 'less');
const onlyWhere =
  /^(?:(?:up|out|at|the|both|all|four|round|around|front|fronts|rear|rears|back|left|right|lf|rf|lr|rr|and|ends?|corners?) ?)*$/i;
/** What an amount of that unit is more or less of, where only its place was said: what people let air out of is a tire. */
const noun = (size: string | undefined, what: string | undefined): string => {
  const where = (what ?? '').replace(/^(?:up|out) (?=front|back|rear)/i, '').trim();
  if (!onlyWhere.test(where)) return where;
  const unit = size?.trim().toLowerCase() ?? '';
  const thing = /psi|bar|kpa/.test(unit) ? 'tire pressure' : /\//.test(unit) ? 'spring' : /lb|pound|kg|kilo/.test(unit) ? 'weight' : '';
  return joined(where, thing);
};
const preposition = `(?:of |in |on |to |from |at |out of |off |for |into |the |my )*`;
export const changes: readonly Turn[] = [
  {
    said: rule(
      String.raw`^(${supposing})?(${upward}|${downward}) ${little}(\d\S{0,6}) ?(?:deg(?:rees?)?|°)? (?:of )?(?:negative|neg) camber ?${preposition}(.{0,40}?)\W*$`,
    ),
    means: (_, supposed, way, size, where) =>
      joined(
        supposed === undefined ? '' : 'try',
        where?.trim().replace(/^up (?=front)/i, ''),
        'camber',
        `${size}°`,
        moreOrLess(way) === 'more' ? 'less' : 'more',
      ),
    line: 'what if i add 0.5 deg of negative camber up front',
    becomes: 'try front camber 0.5° less',
  },
  {
    said: rule(String.raw`^(${supposing})?(${upward}|${downward}) ${little}(${worth}) ${preposition}(?=\S)(.{1,60}?)\W*$`),
    means: (_, supposed, way, size, what) => joined(supposed === undefined ? '' : 'try', noun(size, what), size?.trim(), moreOrLess(way)),
    line: 'what if i drop 2 psi in the rears',
    becomes: 'try rears tire pressure 2 psi less',
  },
  {
    said: rule(String.raw`^(${supposing})?(${upward}|${downward}) ${little}(${worth})\W*$`),
    means: (_, supposed, way, size) => joined(supposed === undefined ? '' : 'try', noun(size, ''), size?.trim(), moreOrLess(way)),
    line: 'if i lose 100 lb',
    becomes: 'try weight 100 lb less',
  },
  {
    said: rule(String.raw`^(${supposing})?(${upward}|${downward}) (?:the |my )?([a-z ]{2,40}?)(?: by)? (${worth})(,.{1,60})?\W*$`),
    means: (_, supposed, way, what, size, more) =>
      joined(supposed === undefined ? '' : 'try', noun(size, what), size?.trim(), moreOrLess(way)) + (more ?? ''),
    line: 'what if i lower the rear pressure by 2 psi',
    becomes: 'try rear pressure 2 psi less',
  },
  {
    said: rule(
      String.raw`^(${supposing})?(raise|lower|drop|crank(?: up)?|wind(?: up| down)?) (?:the |my )?(lf|rf|lr|rr|left front|right front|left rear|right rear|front|rear|fronts|rears)(?: up| down)?(?: by)? (\d{1,2}(?:\.\d{1,3})?(?: \d/\d)?|\d/\d|one|two|three|half a|a half|a quarter|a) turns?\W*$`,
    ),
    means: (_, _supposed, way, wheel, count = '') =>
      `try ${wheel} perch turns ${counts.get(count.toLowerCase()) ?? count} ${/lower|drop|down/i.test(way ?? '') ? 'less' : 'more'}`,
    line: 'raise lf 2 turns',
    becomes: 'try lf perch turns 2 more',
  },
  {
    said: /^(?:what if i |if i |can i |lets |let's )?(?:put|fit|bolt|stick|run) (?:an? |the |some )?(?!it\b|that\b|them\b|those\b)(.{2,60}?) (?:in|on|into|onto|under) (?:the |my )?(?!box\b)(\S+)\W*$/i,
    means: 'try $1 on $2',
    line: 'put a lsd in turnip',
    becomes: 'try lsd on turnip',
  },
  {
    said: /^(?:would|will|does|do|could|should) (?:an? |the |my |i (?:try|run|get|fit|use) (?:an? |the )?)?(.{2,60}?) (?:help|be better|be worth it|matter|make (?:a|any|much) difference)(?: on (\S+))?\W*$/i,
    means: (_, what, car) => joined('try', what, car === undefined ? '' : `on ${car}`),
    line: 'would a locked diff help',
    becomes: 'try locked diff',
  },
  {
    said: /^(?:if i (?:use|put in|put on|add|fit|run) )?(?:with )?(?:an? )?(?=.{0,80}\d)(.{3,80}?),? how (?:much|far) (?:higher|lower|taller|(?:does|will|would) (?:it|the car|that) (?:sit|rise|drop|lower|lift|raise)(?: it| the car)?)\W*$/i,
    means: 'try $1, ride height',
    line: '10mm spacer on the rear how much higher',
    becomes: 'try 10mm spacer on the rear, ride height',
  },
  {
    said: /^how (?:much |far )?(?:low|high|lower|higher|down|up) (?:does|will|would|do) (?:it|the car|my car|that|i|(\S+)) (?:sit|be|go|end up|get) (?:with|on) (?:an? )?(.{3,100}?)\W*$/i,
    means: (_, car, what) => `try ${what}${car === undefined ? '' : ` on ${car}`}, ride height`,
    line: 'how low will it sit with 1.5" drop springs and a 1/4" isolator',
    becomes: 'try 1.5" drop springs and a 1/4" isolator, ride height',
  },
  {
    said: /^(?:put|add|keep|stick|throw) (?:an? |the |my )?(.{3,80}?) (?:in|into|to) (?:the |my )?(?:parts? )?box\W*$/i,
    means: 'i have $1',
    line: 'put 22mm rear bar in the box',
    becomes: 'i have 22mm rear bar',
  },
];
