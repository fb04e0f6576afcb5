/** Gears, speeds, tires and wheels, as people ask about them. */
import { joined, rule, type Turn } from './turn.js';

const speed = String.raw`\d{1,3}(?: ?(?:mph|km/h|kph|kmh))?`;
export const gearing: readonly Turn[] = [
  {
    said: /\b(\d[.,]\d{1,2}) (?:gears|gearing|rear gears|ring and pinion)\b/i,
    means: 'final drive $1',
    line: '3.73 gears at 6500 rpm in 3rd',
    becomes: 'final drive 3.73 at 6500 rpm in 3rd',
  },
  {
    said: /\b(\d{2}(?:\.\d{1,2})?) ?(?:inch|in|") (?:tall )?tires?\b/i,
    means: 'measured tire diameter $1 in',
    line: '26 inch tires 6500 rpm',
    becomes: 'measured tire diameter 26 in 6500 rpm',
  },
  {
    said: /^(final(?: drive)?) (\d[.,]\d{1,3})s? to (\d[.,]\d{1,3})s?\b/i,
    means: '$1 $2 vs $3',
    line: 'final drive 4.1 to 4.56',
    becomes: 'final drive 4.1 vs 4.56',
  },
  {
    said: /^(?:what(?:'s| is) the )?ratio of (\d{1,3}(?:\.\d{1,3})?) (?:to|over|and) (\d{1,3}(?:\.\d{1,3})?)\W*$/i,
    means: 'calc $1/$2',
    line: 'ratio of 4.56 to 4.10',
    becomes: 'calc 4.56/4.10',
  },
  {
    said: /\b(?:wheel )?offset (?:of |is )?et ?(-?\d{1,2})\b/i,
    means: 'wheel offset $1 mm',
    line: 'wheel offset et25',
    becomes: 'wheel offset 25 mm',
  },
  {
    said: /\b(1st|2nd|3rd|4th|5th|6th) gear (?=top speed|speed|rpm|thrust|pull)/i,
    means: '$1 ',
    line: '3rd gear top speed',
    becomes: '3rd top speed',
  },
  {
    said: /\bin top(?: gear)?(?= |\W*$)/i,
    means: 'in 5th',
    echo: 'top gear read as 5th; if yours is another, say it: in 6th',
    line: 'rpm at 60mph in top gear',
    becomes: 'rpm at 60mph in 5th',
  },
  {
    said: /\b0 ?(?:-|to|–) ?(?:60|100)\b(?! ?(?:mm|in|psi|lb|n|%))(?: mph| km\/h)?/i,
    means: 'quarter mile',
    line: 'whats my 0-60',
    becomes: 'whats my quarter mile',
  },
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
    said: /^how much more (?:torque|thrust|pull|push|force|drive|acceleration)\b.{0,30}? (?:with|w\/?|from|going to) (?:an? )?(\d[.,]\d{1,3})s? (?:instead of|vs|versus|than|over|compared (?:to|with)|from) (?:an? )?(\d[.,]\d{1,3})s?\W*$/i,
    means: 'thrust per torque final drive $2 vs $1',
    line: 'how much more torque to the wheels w 4.30 instead of 3.91',
    becomes: 'thrust per torque final drive 3.91 vs 4.30',
  },
  {
    said: /^(?:shift(?:ing)?|if i shift) at (\d{4,5})(?: ?rpm)?,? (?:from )?(1st|2nd|3rd|4th|5th) to (?:2nd|3rd|4th|5th|6th)\b.*$/i,
    means: 'rpm after shift in $2 at $1 rpm',
    line: 'shift at 7000 1st to 2nd what does it drop to',
    becomes: 'rpm after shift in 1st at 7000 rpm',
  },
  {
    said: /^how fast (?:is it |am i |does it go )?(?:at|to) (?:the )?red ?line\b/i,
    means: 'top speed',
    line: 'how fast at redline in 4th',
    becomes: 'top speed in 4th',
  },
  {
    said: /^(\d[.,]\d{1,3})s? (?:vs|to|or|instead of) (\d[.,]\d{1,3})s? (?:rear ends?|ring and pinion|final drives?|finals?|diffs?|gears|rear gears)\b,?(?: what (?:does|do|will|would) (?:it|that|they) do (?:to|for))?(?: (.{2,60}?))?\W*$/i,
    means: (_, one, two, figure) => joined(figure, 'final drive', one, 'vs', two),
    line: '4.3 vs 3.9 rear end what does it do to my 3rd top speed',
    becomes: 'my 3rd top speed final drive 4.3 vs 3.9',
  },
  {
    said: rule(String.raw`^(?!.*\d ?x ?\d)(.*?)\bet ?(-?\d{1,2}) (to|vs|or) (?:et ?)?(-?\d{1,2})\b,?`),
    means: (_, before = '', one, _word, two) => `${before}wheel offset ${one} mm vs wheel offset ${two} mm `,
    line: 'et35 to et20',
    becomes: 'wheel offset 35 mm vs wheel offset 20 mm',
  },
  {
    said: /\bhow (?:much )?(?:wider|narrower) (?:is|gets|will be|would be) (?:my |the )?track\b/i,
    means: 'track change',
    line: 'wheel offset 35 mm how much wider is my track',
    becomes: 'wheel offset 35 mm track change',
  },
  {
    said: /^(.*?(?:p|lt)?\d{3}[\s/]\d{2}[\s/]?z?r?[\s-]?(\d{2})\b.{0,30}?) on (?:an? )?(\d{1,2}(?:\.\d)?) ?(?:in(?:ch(?:es)?)?|")? ?(?:wide|wides|rims?|wheels?)(?: rims?| wheels?)?\b/i,
    means: (_, tire, code, width) => `${tire} on ${code}x${width}`,
    line: '225/45/17 on an 8 wide ok?',
    becomes: '225/45/17 on 17x8 ok?',
  },
  {
    said: /^(?:taller|shorter|wider|bigger|smaller|lower|fatter|skinnier) tires?,? (?=(?:p|lt)?\d)/i,
    means: 'tire ',
    line: 'taller tires 205/60r15 instead of 205/50r15',
    becomes: 'tire 205/60r15 instead of 205/50r15',
  },
];
