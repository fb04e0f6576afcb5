/** Corners: which end, how far, which way round, on which pedal. */
import { joined, rule, type Turn } from './turn.js';

const turning = `(?:[- ]?hand(?:er|ed)?)?(?: turns?| corners?| bends?)?`;
/** Of a left turn, which is what is meant where no turn is told. */
const sideOf = (which: string | undefined): string => (/^(?:in|inn)/i.test(which ?? '') ? 'l' : 'r');
const insideEcho = 'inside and outside read of a left turn: inside is the left';
export const corners: readonly Turn[] = [
  {
    said: rule(String.raw`\b(left|right)${turning} at (\d?\.\d{1,3})(?! ?g)\b`),
    means: 'at $2 g turning $1',
    line: 'loads in a left turn at .9',
    becomes: 'loads in a at .9 g turning left',
  },
  {
    said: /\bat (0?\.\d{1,2}|1\.\d{1,2})(?= ?$|\?)(?=.*)/i,
    means: 'at $1 g',
    line: 'lf load in the turn at 0.9',
    becomes: 'lf load in the turn at 0.9 g',
  },
  {
    said: /^(?!.*\b(?:edge|clearance|rim|wheel well|fender|right)\b)(.*?)\b(inside|inner|outside|outer) (front|rear)\b(?= (?:load|weight|camber|travel|tire load)|(?: wheel| tire)? (?:load|weight|camber|travel))/i,
    means: (_, before = '', which, end = '') => `${before}${sideOf(which)}${end.charAt(0).toLowerCase()}`,
    echo: insideEcho,
    line: 'inside rear load at 0.9 g',
    becomes: 'lr load at 0.9 g',
  },

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
export const longitudinal: readonly Turn[] = [
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
