/** Questions that no grammar of nouns and amounts covers. */
import { joined, rule, type Turn } from './turn.js';

/** `180 lb` is nobody's car: limits of what a person weighs, lb and kg. */
const person = (amount: string, unit: string): boolean => {
  const [least, most] = /^k/i.test(unit) ? [30, 200] : [66, 440];
  return Number(amount) >= least && Number(amount) <= most;
};
export const plain: readonly Turn[] = [
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
export const questions: readonly Turn[] = [
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

const speed = String.raw`\d{1,3}(?: ?(?:mph|km/h|kph|kmh))?`;
/** What is asked of gears, speeds and turning in words of their own. */
export const asked: readonly Turn[] = [
  {
    said: rule(
      String.raw`^what(?:'s| is| are)? (?:the |my )?(?:rpms?|revs) (?:is|at|am i at at|do i (?:turn|pull) at|does it (?:turn|pull) at|will it be at) (${speed})(?= |\W*$)`,
    ),
    means: 'engine speed at $1',
    line: 'what rpm is 60 in 3rd',
    becomes: 'engine speed at 60 in 3rd',
  },
  {
    said: rule(
      String.raw`^(?:what|which) gear (?:am i in |should i be in |should i use |do i need |do i want |will i be in |is it )?(?:at|for) (${speed})(?: (?:and|at|with) \d{3,5} ?rpm)?\W*$`,
    ),
    means: 'engine speed at $1',
    line: 'what gear at 45',
    becomes: 'engine speed at 45',
  },
  {
    said: /^(?:what|whats|what's|which|how many) g'?s? (?:does|do|will|would|can) (?:it|the car|my car|i|(\S+)) (?:start (?:to )?(?:sliding|slide|slipping|slip|letting go|let go)|slide|let go|break (?:loose|away)|lose grip|pull|hold|corner(?: at)?|do|take|manage)\W*$/i,
    means: (_, car) => joined('limit', car),
    line: 'what g does it start sliding',
    becomes: 'limit',
  },
  {
    said: /^how much (?:does|do|will|would) (?:my |the )?(?:inside|inner) (?:front |rear )?(?:wheel |tire )?lift\b.*$/i,
    means: 'first lift',
    line: 'how much does my inside rear lift',
    becomes: 'first lift',
  },
  {
    said: /^why (?:is|are) (?:my |the )?(.{3,60}?) (?:only |just |at |about |so )*(?:-?\d[\d.,]{0,6} ?\S{0,8}|high|low)\W*$/i,
    means: 'why $1',
    line: 'why is the front share 54',
    becomes: 'why front share',
  },
  {
    said: /\b(?:how many )?degrees? of (?=roll|lean|camber|toe)/i,
    means: '',
    line: 'degrees of roll at 1g',
    becomes: 'roll at 1g',
  },
  {
    said: /^how (?:far|close) (?:from|to|off) neutral (?:am i|is it|is (?:my car|(\S+)))\W*$/i,
    means: (_, car) => joined('balance', car),
    line: 'how far from neutral am i',
    becomes: 'balance',
  },
  {
    said: /^how much more (?:torque|thrust|pull|push|force|drive|acceleration)\b.{0,30}? (?:with|w\/?|from|going to) (?:an? )?(\d[.,]\d{1,3})s? (?:instead of|vs|versus|than|over|compared (?:to|with)|from) (?:an? )?(\d[.,]\d{1,3})s?\W*$/i,
    means: 'thrust final drive $2 vs $1',
    line: 'how much more torque to the wheels w 4.30 instead of 3.91',
    becomes: 'thrust final drive 3.91 vs 4.30',
  },
  {
    said: /^(?:shift(?:ing)?|if i shift) at (\d{4,5})(?: ?rpm)?,? (?:from )?(1st|2nd|3rd|4th|5th) to (?:2nd|3rd|4th|5th|6th)\b.*$/i,
    means: 'rpm after shift in $2 at $1 rpm',
    line: 'shift at 7000 1st to 2nd what does it drop to',
    becomes: 'rpm after shift in 1st at 7000 rpm',
  },
  {
    said: /^(?:which|what) (?:end )?(?:is|one is|has) (?:the )?(stiffer|softer|more grip|less grip)(?: springs?)?,? (?:my |the )?(front|rear) or (?:my |the )?(?:front|rear)\W*$/i,
    means: (_, what, first) =>
      `${/grip/i.test(what ?? '') ? 'limit' : 'wheel rate'} ${first} vs ${/front/i.test(first ?? '') ? 'rear' : 'front'}`,
    line: 'which is stiffer my front or rear',
    becomes: 'wheel rate front vs rear',
  },
  {
    said: rule(
      String.raw`^(?:(?:tires?|they|it) (?:were|was|are|is) )?(?:set (?:at|to) )?(\d{2}(?:\.\d)?) ?(psi)?(?: cold)? (?:at|@) (\d{2,3}) ?(?:°|deg(?:rees)?)? ?([fc])?\b,? ?(?:(?:now|and|but|then|what|whats|how much|it's|its|it is|now it's|(?:will|would) (?:it|they) be) )*(?:at |@ )?(\d{2,3}) ?(?:°|deg(?:rees)?)? ?([fc])?(?: out| outside| today| now)?\W*$`,
    ),
    means: (_, pressure, unit, cold, coldUnit, hot, hotUnit) => {
      const degrees = coldUnit ?? hotUnit ?? '';
      return `hot pressure with tire pressure ${pressure}${unit ? ' psi' : ''}, cold temperature ${cold}${degrees}, hot temperature ${hot}${hotUnit ?? degrees}`;
    },
    line: '28 psi at 60f what at 100f',
    becomes: 'hot pressure with tire pressure 28 psi, cold temperature 60f, hot temperature 100f',
  },
];

/** What is asked of the bot itself, and of what it keeps. */
export const house: readonly Turn[] = [
  {
    said: /^(?:please )?(?:use |switch to |change to |go |in |i want |i use |give me |set )?(?:my )?(?:units? )?(?:to )?(metric|imperial|us|american)(?: units?)?(?: please| pls)?\W*$/i,
    means: (all = '', system) => (/^(?:us|go us|in us)\W*$/i.test(all) ? all : `units ${/metric/i.test(system ?? '') ? 'metric' : 'us'}`),
    line: 'metric please',
    becomes: 'units metric',
  },
  {
    said: /^(?:use (?:an? )?|i use (?:an? )?|with (?:an? )?)?(?:decimal (comma|point)|(comma|point) as (?:the )?decimal(?: mark)?)s?(?: please)?\W*$/i,
    means: (_, one, other) => `units ${(one ?? other)?.toLowerCase()}`,
    line: 'decimal comma',
    becomes: 'units comma',
  },
  {
    said: /^(?:what|which) units? (?:am i|are (?:these|those|you)|do (?:i|you))\b.*$/i,
    means: 'units',
    line: 'what units am i in',
    becomes: 'units',
  },
  {
    said: /^(?:what do you (?:know|have)|tell me|what have you got|what's|whats|info) (?:about|on|for|of) (?:my car |my )?(\S+)\W*$/i,
    means: 'show $1',
    line: 'what do you know about turnip',
    becomes: 'show turnip',
  },
  {
    said: /^what(?:'s| is)?(?: (?:do|dont|don't) you)?(?: (?:not know|still missing|missing|still need|need to know|don't know|dont know|else do you need))+\W*$/i,
    means: 'doubt',
    line: "what's missing",
    becomes: 'doubt',
  },
  {
    said: /^(?:how (?:do|did) you (?:figure|get|know|work (?:that|it) out|come up with)(?: that| this| it| there)?|show (?:me )?(?:the|your) (?:math|maths|work|working|sums)|(?:where|how) (?:does|did) (?:that|this|it) come from|says who|prove it|why(?: is)? that|how so|explain(?: that| it)?)\W*$/i,
    means: 'why',
    line: 'how do you figure that',
    becomes: 'why',
  },
  {
    said: /^(?:what (?:did i change|have i changed|changed|has changed|have i done)|(?:show (?:me )?)?(?:the |my )?(?:last )?changes)(?: lately| last| today| so far)?\W*$/i,
    means: 'history',
    line: 'what did i change',
    becomes: 'history',
  },
];
