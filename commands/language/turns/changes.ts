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
  const where = (what ?? '')
    .replace(/^(?:up|out) (?=front|back|rear)/i, '')
    .replace(/\bnose\b/i, 'front')
    .replace(/\btail\b/i, 'rear')
    .trim();
  if (!onlyWhere.test(where)) return where;
  const unit = size?.trim().toLowerCase() ?? '';
  const thing = /psi|bar|kpa/.test(unit) ? 'pressure' : /\//.test(unit) ? 'spring' : /lb|pound|kg|kilo/.test(unit) ? 'weight' : '';
  return joined(where, thing);
};
const preposition = `(?:of |in |on |to |from |at |out of |off |for |into |the |my )*`;
export const changes: readonly Turn[] = [
  {
    said: /^(?:what if i |if i |can i )?(?:convert|swap|change) (?:the |my )?(front|rear)(?: axle| suspension| end)? (?:to|for|into|over to) (?:an? )?(irs|independent|live axle|solid axle|beam axle|beam|stick axle)\b.*$/i,
    means: (_, end, kind = '') => `try ${end} axle ${/irs|indep/i.test(kind) ? 'independent' : 'beam'}`,
    line: 'convert rear to irs',
    becomes: 'try rear axle independent',
  },
  {
    said: /^(?:what if i |if i |what if it |what if )?(?:put|fit|swap in|swapped in|had|have|with) an? (independent|irs|live|solid|beam) (rear|front)(?: axle| suspension| end)?(?: in| under it| in it)?\W*$/i,
    means: (_, kind = '', end) => `try ${end} axle ${/irs|indep/i.test(kind) ? 'independent' : 'beam'}`,
    line: 'what if i put an independent rear in',
    becomes: 'try rear axle independent',
  },
  {
    said: /^(?:try |what about |how about |what does )?(more|less) (?:neg(?:ative)? )?camber (?:in |on |at |up )?(?:the )?(front|rear)(?: do| does what)?(?:,? what (?:does it|happens).*)?\W*$/i,
    means: (_, way, end) => `try ${end} camber 0.5° ${/more/i.test(way ?? '') ? 'less' : 'more'}`,
    echo: 'read as half a degree, more of it meaning more negative; say how much: try front camber -3',
    line: 'more neg camber front',
    becomes: 'try front camber 0.5° less',
  },
  {
    said: /\bcamber (?:to |at |of )?(\d{1,2}(?:[.,]\d{1,2})?)( ?(?:deg(?:rees?)?|°))? neg(?:ative)?\b/i,
    means: (_, size, unit) => `camber -${size}${unit ?? ''}`,
    line: 'camber 2 deg neg front',
    becomes: 'camber -2 deg front',
  },
  {
    said: /\bcamber (?:to |at |of )?neg(?:ative)? (\d{1,2}(?:[.,]\d{1,2})?)/i,
    means: 'camber -$1',
    line: 'front camber neg 2',
    becomes: 'front camber -2',
  },
  {
    said: /^(\d{1,3}(?:\.\d)? ?(?:lbs?|kgs?|pounds?|kilos?)) (off|out of|onto|on|more on|less on) (?:the |my )?(front|nose|rear|back|tail)\W*$/i,
    means: (_, size, way, end) =>
      `${/front|nose/i.test(end ?? '') ? 'front' : 'rear'} weight ${size} ${/off|out|less/i.test(way ?? '') ? 'less' : 'more'}`,
    line: '50 lb off the front',
    becomes: 'front weight 50 lb less',
  },
  {
    said: /\b(?:(?:if )?(?:i |we )?(?:cut|take|leave|pull|throw) (?:the |my |both )?(front |rear )?isolators? (?:out|off|away)|(?:without|with no|no) (?:the |my |an? |any )?(front |rear )?isolators?)\b/i,
    means: (all = '', one, two) => `${/^with/i.test(all) ? 'with ' : ''}${joined((one ?? two)?.trim(), 'isolator 0 in')}`,
    line: 'if i cut the rear isolator out how much does it drop',
    becomes: 'try rear isolator 0 in, ride height',
  },
  {
    said: /\b(?:if |when )?(?:i |we )?(?:put|add|throw|stick|load|carry) (\d{1,3}(?:\.\d)? ?(?:lbs?|kgs?|pounds?|kilos?))(?: of (?:stuff|tools|ballast|weight|gear|sand|lead))? (?:in|into|on|to) (?:the |my )?(?:trunk|boot|hatch|back seat|frunk|roof)\b/i,
    means: 'with ballast $1',
    echo: 'where it sits is not told: say how far back, ballast 100 lb, ballast behind front axle 110 in',
    line: 'how much cross if i put 100 lb in the trunk',
    becomes: 'how much cross with ballast 100 lb',
  },
  {
    said: /\b((?:ballast|luggage|tools|cargo)[^,]{0,20}?) (?:in|into) (?:the |my )?(?:trunk|boot|hatch|back seat|frunk)\b/i,
    means: '$1',
    echo: 'where it sits is not told: say how far back, ballast behind front axle 110 in',
    line: 'add 40 lb ballast in the trunk',
    becomes: 'ballast 40 lb more',
  },
  {
    said: /^(?:what if |if )?(?:i |we )?(?:go|went|move|moved) (?:up |down )?(?:one|1|a) hole (stiffer|softer)(?: (?:on|at|in|for) (?:the )?)? ?(front|rear)(?: bar)?\W*$/i,
    means: (_, way, end) => `try ${end} bar hole 1 in ${/stiff/i.test(way ?? '') ? 'less' : 'more'}`,
    echo: 'one hole read as 1 in of lever; tell yours: i have rear bar holes 7.5, 8.5 and 9.5 in',
    line: 'what if i go one hole stiffer rear',
    becomes: 'try rear bar hole 1 in less',
  },
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
    becomes: 'try rears pressure 2 psi less',
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
  {
    said: rule(
      String.raw`\b(?:with|if i|after i|when i) (?:raise|crank up|wind up|lower|wind down|drop|raising|lowering) (?:the |my )?(lf|rf|lr|rr|left front|right front|left rear|right rear) (?:by )?(half a|a half|a quarter|a|one|two|three|\d{1,2}(?:\.\d{1,3})?(?: \d/\d)?|\d/\d) turns?\b`,
    ),
    means: (all = '', wheel, count = '') =>
      `with ${wheel} perch turns ${counts.get(count.toLowerCase()) ?? count} ${/lower|down|drop/i.test(all) ? 'less' : 'more'}`,
    line: 'cross weight if i raise the rr half a turn',
    becomes: 'cross weight with rr perch turns 0.5 more',
  },
  {
    said: /^(?:what|how much) (?:does|do|would|will) (?:an? |the |my )?(.{2,60}?) (?:do|mean) (?:to|for) (?:the |my )?(.{2,60}?)\W*$/i,
    means: 'try $1, $2',
    line: 'what does full tank do to rear height',
    becomes: 'try full tank, rear height',
  },
  {
    said: /^what (?:happens|would happen) to (?:the |my )?(.{2,60}?) (?:with|if i (?:use|run|fit|put in|put on|add|go to)) (?:an? |the )?(.{2,60}?)\W*$/i,
    means: 'try $2, $1',
    line: 'what happens to balance with 25 rear bar',
    becomes: 'try 25 rear bar, balance',
  },
  {
    said: /^(?=.*\d)(.{3,60}?),? what (?:does|would|will) (?:it|that) do to (?:the |my )?(.{2,60}?)\W*$/i,
    means: 'try $1, $2',
    line: '24 mm rear bar what does it do to balance',
    becomes: 'try 24 mm rear bar, balance',
  },
  {
    said: /^how (?:do|can|would|could) i (?:get|make|reach|hit) (?:to )?(?:an? )?(\d{2}(?:\.\d{1,2})?) ?(?:%|percent)? ?cross(?: ?weight)?\W*$/i,
    means: 'find lf perch turns for cross weight $1%',
    echo: 'sought with the left front perch; any other does too: find rr perch turns for cross weight 50%',
    line: 'how do i get 50% cross',
    becomes: 'find lf perch turns for cross weight 50%',
  },
  {
    said: /^how many (?:perch )?turns(?: on (?:the )?(lf|rf|lr|rr))? (?:for|to get|do i need for|gets me|to) (?:an? )?(\d{2}(?:\.\d{1,2})?) ?(?:%|percent)? ?cross(?: ?weight)?\W*$/i,
    means: (_, wheel, share) => `find ${wheel ?? 'lf'} perch turns for cross weight ${share}%`,
    line: 'how many turns for 50 percent cross',
    becomes: 'find lf perch turns for cross weight 50%',
  },
];
