/** Coils by their wire, as people read them off a spring on the bench; and what is cut off one. */
import { joined, rule, type Turn } from './turn.js';

const size = String.raw`(\d{0,3}[.,]?\d{1,3}(?: \d\/\d{1,2}|\/\d{1,2})?)( ?(?:mm|in|"))?`;
const counts: ReadonlyMap<string, string> = new Map([
  ['one', '1'],
  ['a', '1'],
  ['half a', '0.5'],
  ['a half', '0.5'],
  ['two', '2'],
]);
/** Only of lines that speak of wire: elsewhere a coil is a spring. */
const ofWire = String.raw`^(?=.*\bwire\b)(.*?)`;
export const coils: readonly Turn[] = [
  {
    said: rule(
      String.raw`^(?:what(?:'?s| is)? (?:the )?(?:rate|stiffness) (?:is|of|for) (?:an? )?)?(?:coil )?(?:spring,?|coil,?) (?!rate\b)(?:with |w\/? ?|of )?(?=.*\bwire\b)(?=.*\b(?:coils?|turns?|active)\b)(.{5,80}?)(?:,? how stiff)?\W*$`,
    ),
    means: 'coil $1 how stiff',
    line: 'what rate is a spring w 12.5 mm wire 100 mean dia 6 coils',
    becomes: 'coil 12.5 mm wire, mean coil diameter 100, active coils 6 how stiff',
  },
  {
    said: rule(String.raw`^wire (?=.*\b(?:coils?|turns?|active)\b)(.{5,80}?)(?:,? how stiff)?\W*$`),
    means: 'coil wire $1 how stiff',
    line: 'wire .5 in od 5 in coils 6',
    becomes: 'coil wire .5 in, coil outside diameter 5 in, active coils 6 how stiff',
  },
  {
    said: rule(
      String.raw`${ofWire}(\d{1,2}(?:[.,]\d{1,2})?) (?:active )?(?:coils?|winds|turns|active)\b(?! \d{1,2}(?:[.,]\d+)?(?! ?(?:mm|in|")))`,
    ),
    means: (_, before = '', count) => `${before.replace(/[ ,]+$/, '')}, active coils ${count}`,
    line: '12 mm wire 6 coils',
    becomes: '12 mm wire, active coils 6',
  },
  {
    said: rule(String.raw`${ofWire}(?<!active )\b(?:coils|winds|turns) (\d{1,2}(?:[.,]\d{1,2})?)\b(?! ?(?:mm|in|"))`),
    means: (_, before = '', count) => `${before.replace(/[ ,]+$/, '')}, active coils ${count}`,
    line: '12 mm wire coils 6',
    becomes: '12 mm wire, active coils 6',
  },
  {
    said: rule(String.raw`${ofWire}${size} (?:mean|center to center)(?: coil)?(?: dia(?:m(?:eter)?)?)?\b`),
    means: (_, before = '', across, unit) => `${before.replace(/[ ,]+$/, '')}, mean coil diameter ${joined(across, unit?.trim())}`,
    line: '12 mm wire 110 mm mean 6 active coils',
    becomes: '12 mm wire, mean coil diameter 110 mm, active coils 6',
  },
  {
    said: rule(String.raw`${ofWire}\b(?:od|outside(?: diameter)?) ${size}`),
    means: (_, before = '', across, unit) => `${before.replace(/[ ,]+$/, '')}, coil outside diameter ${joined(across, unit?.trim())}`,
    line: '.5 in wire od 5 in',
    becomes: '.5 in wire, coil outside diameter 5 in',
  },
  {
    said: rule(
      String.raw`^(?:if i |what if i )?cut (?:off )?(one|1|a|half a|a half|two|2|0?\.5|1\.5|½) (?:active )?coils? (?:off|from|out of) (?:an? |my )?(\d{1,2}(?:\.\d{1,2})?)[ -]coil,? (\d{2,4})( ?(?:lbs?/in|n/mm|kg/mm|k))?(?: spring)?\W*$`,
    ),
    means: (_, off = '', of, rate, unit) => {
      const gone = counts.get(off.toLowerCase()) ?? off.replace('½', '0.5');
      const u = unit === undefined || /lb/i.test(unit) ? 'lb/in' : unit.trim() === 'k' ? 'kg/mm' : unit.trim();
      return `calc ${rate} ${u} * ${of} / (${of} - ${gone})`;
    },
    echo: 'coils counted are active ones; heat or a torch ruins a spring, and a cut one must still seat as its maker made it',
    line: 'cut one coil off a 6 coil 400',
    becomes: 'calc 400 lb/in * 6 / (6 - 1)',
  },
];
