/** Questions that no grammar of nouns and amounts covers. */
import { person } from './people.js';
import type { Turn } from './turn.js';

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
    said: /(\d{1,2}(?:[.,]\d{1,2})?)( ?(?:degrees?|deg|°))? (?:of )?neg(?:ative)? camber\b/i,
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
    said: /^(?!.*\bwheel spacer)(.*?)\bspacers?\b(.*?),? (?:the |my )?track(?: change| width)?\W*$/i,
    means: (_, before = '', after = '') => `${before}wheel spacer${after}, track change`,
    line: 'try 15mm spacer, track',
    becomes: 'try 15mm wheel spacer, track change',
  },
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
