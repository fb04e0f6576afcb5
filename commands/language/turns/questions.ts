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

const speed = String.raw`\d{1,3}(?: ?(?:mph|km/h|kph|kmh))?`;
/** What is asked of gears, speeds and turning in words of their own. */
export const asked: readonly Turn[] = [
  { said: /\bzero (?=(?:toe|camber|caster|preload|front|rear)\b)/i, means: '0 ', line: 'set zero toe rear', becomes: 'set 0 toe rear' },
  {
    said: /^(?=.*\bpsi\b)((?:(?:lf|rf|lr|rr|fl|fr|rl|fronts?|rears?|all|round|around|four|and|left|right|\d{1,2}(?:[.,]\d)?|psi|,) ?)+)\W*$/i,
    means: (all = '', rest = '') => (/[a-z]{2}.*\d|\d.*[a-z]{2}/i.test(rest.replace(/psi/gi, '')) ? `pressure ${rest}` : all),
    line: 'lf 30 rf 30 lr 28 rr 28 psi',
    becomes: 'pressure lf 30 rf 30 lr 28 rr 28 psi',
  },
  {
    said: /^cold (\d{2}(?:\.\d)?)( ?psi)?,? (?:and )?hot (\d{2}(?:\.\d)?)( ?psi)?(?: (?:on |in |at )?(?:the )?(fronts?|rears?|lf|rf|lr|rr))?\W*$/i,
    means: (_, cold, _one, hot, _two, where) => `${joined(where, 'pressure')} ${cold} psi, ${joined(where, 'hot pressure')} ${hot} psi`,
    line: 'cold 30 hot 36 rear',
    becomes: 'rear pressure 30 psi, rear hot pressure 36 psi',
  },
  {
    said: /^what hot(?: pressures?)? (?:do i get|will i (?:get|have|see)|would i (?:get|have)|is it|comes) (?:from|with|at) (\d{2}(?:\.\d)?)( ?psi)? cold(?: at (\d{2,3}) ?(?:°|deg)? ?([fc])?\b)?/i,
    means: (_, cold, unit, degrees, scale) =>
      `hot pressure with tire pressure ${cold}${unit ?? ''}${degrees === undefined ? '' : `, cold temperature ${degrees}${scale ?? ''}`}`,
    line: 'what hot do i get from 28 cold at 55f',
    becomes: 'hot pressure with tire pressure 28, cold temperature 55f',
  },
  {
    said: /^how much (?:air|pressure) (?:do i (?:need|want|put in|run)|should i (?:run|put in))?(?: in the (fronts?|rears?))? ?(?:for|to get|to see) (\d{2}(?:\.\d)?)( ?psi)? hot\W*$/i,
    means: (_, where, hot, unit) => `${joined(where, 'cold pressure')} with ${joined(where, 'hot pressure')} ${hot}${unit ?? ''}`,
    line: 'how much air do i need for 36 hot',
    becomes: 'cold pressure with hot pressure 36',
  },
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
    said: /^(?!.*\b(?:hot|cold)\b)(set |try )?(?:pressures? )?(\d{2}(?:\.\d)?)( ?psi)? (?:in |on |up )?(?:the )?fronts?,? (?:and )?(\d{2}(?:\.\d)?)( ?psi)? (?:in |on |out )?(?:the )?(?:rears?|back)(?: psi)?\W*$/i,
    means: (all = '', verb, front, one, rear, other) =>
      one === undefined && other === undefined && !/psi|pressure/i.test(all)
        ? all
        : `${verb ?? ''}front pressure ${front} psi, rear pressure ${rear} psi`,
    line: '34 psi fronts 32 rears',
    becomes: 'front pressure 34 psi, rear pressure 32 psi',
  },
  { said: /\bup (?=front\b)|\bout (?=back\b)/i, means: '', line: '425s up front', becomes: '425s front' },
  {
    said: /^(?!.*(?:\bin|\bto|=|\bcalc|pressure|\bhot|\bcold|\btires?|\bair|\bin the|[*^]).*)(?:(?:i(?:'m| am)?|we(?:'re)?|now|try|set|running|run|runs|at|on|got|using|with) ?)*?(\d{2}(?:\.\d)? ?psi\b)(?=.*\b(?:fronts?|rears?|all|lf|rf|lr|rr|round|around|everywhere|each|both|back)\b)/i,
    means: (all = '', amount) => `${/^(?:try|set)/i.exec(all)?.[0] ?? ''} pressure ${amount}`.trim(),
    line: 'running 30 psi all around',
    becomes: 'pressure 30 psi all around',
  },
  {
    said: /^(?=[^*^×]*\d[^*^×]{0,12}[*^×] ?[\d.(])(?!calc)((?:[\d\s.,()*/^+×-]|\b(?:lbf?|lbs|in|mm|cm|m|kgf?|n|nm|psi|bar|kpa|ft|deg|hz|g|s|k|mph|rpm|hp)\b){3,80})$/i,
    means: 'calc $1',
    line: '425 lb/in * .71^2',
    becomes: 'calc 425 lb/in * .71^2',
  },
  {
    said: /^(?:what|which|find)(?: me)?(?: (?:an?|the|size))? ((?:front |rear )?(?:springs?|(?:sway ?|anti-?roll ?)?bars?|pressures?|camber|spacers?|bar hole)) (?:for|makes? (?:it|me|the car)|to (?:make it|be|get)|gets? me(?: to)?|would be|is) (?:a )?neutral(?: balance)?\W*$/i,
    means: 'find $1 for balance 0%',
    line: 'what rear bar makes it neutral',
    becomes: 'find rear bar for balance 0%',
  },
  {
    said: /^(?:what|which) diameter (?:of )?((?:front |rear )?)((?:sway ?|anti-?roll ?)?bar)\b/i,
    means: 'what $1$2 diameter',
    line: 'what diameter bar for 300 lb/in',
    becomes: 'what bar diameter for 300 lb/in',
  },
  {
    said: /^(?:what|which) ((?:front|rear) )?(?:tire )?(?:cold )?pressures? (?:for|gives?|gets? me|to get) (\d{2}(?:\.\d)?)( ?psi)? hot\W*$/i,
    means: '$1cold pressure with $1hot pressure $2$3',
    line: 'what rear pressure for 30 psi hot',
    becomes: 'rear cold pressure with rear hot pressure 30 psi',
  },
  {
    said: /^is (\S+?)(?:'s)? (stiffer|softer|heavier|lighter|looser|tighter) than (\S+?)(?:'s)?(?: car)?\W*$/i,
    means: (_, one, what = '', two) => `compare ${one} with ${two}, ${figureFor(what)}`,
    line: 'is moth stiffer than mine',
    becomes: 'compare moth with mine, ride frequency',
  },
  { said: /^whose (?:car )?is (\S+?)\W*$/i, means: 'show $1', line: 'whose car is moth', becomes: 'show moth' },
  {
    said: /^(?:(?:what|which)(?: things?| parts?)? (?:matters?|changes?|moves?|affects?|helps?|does)(?: the)? ?(?:most)? ?(?:for|to|with|the|in)? ?(?:the |my )?(balance|rotation|roll|lean|grip)(?: the)? ?(?:most)?|(?:the )?biggest (?:effect|influence|change|impact) (?:on|in|for) (?:the |my )?(balance|rotation|roll|lean|grip))\W*$/i,
    means: (_, one, two) => {
      const what = (one ?? two ?? '').toLowerCase();
      return /roll|lean/.test(what) ? 'less roll' : what === 'grip' ? 'more grip' : 'more rotation mid corner';
    },
    echo: 'told of what is in the box, by its shift',
    line: 'what matters most for balance',
    becomes: 'more rotation mid corner',
  },
  { said: /^(?:are you|you|r u) sure\W*$|^is that (?:right|correct|true)\W*$/i, means: 'why', line: 'are you sure', becomes: 'why' },
  {
    said: /^(?:i )?(?:took|pulled|removed|unhooked|disconnected) (?:the |my )?(front|rear) ((?:sway ?|anti-?roll ?)?bar)(?: off| out)?\W*$/i,
    means: 'my $1 $2 is 0',
    line: 'took the rear bar off',
    becomes: 'my rear bar is 0',
  },
  {
    said: /^(?:i )?(?:swapped|switched|changed|went|moved) (?:up |down |over )?to (?=.*\d)/i,
    means: 'set ',
    line: 'swapped to 450 fronts',
    becomes: 'set 450 fronts',
  },
  {
    said: /^(?:the )?driver (?:is |weighs |weight is )?(?=\d{2,3}(?:\.\d)? ?(?:lb|lbs|kg|pounds?)\b)/i,
    means: 'driver weight ',
    line: 'driver 185 lb',
    becomes: 'driver weight 185 lb',
  },
  {
    said: /^i (?:weigh|am) (?:about |around )?(\d{2,3})\W*$/i,
    means: (all = '', weight) => (person(weight ?? '', 'lb') ? `driver weight ${weight}` : all),
    line: 'i weigh 190',
    becomes: 'driver weight 190',
  },
  {
    said: /\b(\d{2}(?:[.,]\d)?)( ?(?:psi|bar))? (hot|cold),? (?:what|whats|what's|how much)(?: is(?: it| that)?)?(?: that)? (cold|hot)\b/i,
    means: (all = '', size, unit, given, wanted) =>
      given?.toLowerCase() === wanted?.toLowerCase()
        ? all
        : `${wanted} pressure with ${given?.toLowerCase() === 'cold' ? 'tire' : 'hot'} pressure ${size}${unit ?? ''}`,
    line: 'gimme 36 hot what cold',
    becomes: 'gimme cold pressure with hot pressure 36',
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
    said: /^(.{2,40}?),? what (?:does|will|would|do) (?:it|the car|i) weigh\W*$/i,
    means: 'weight with $1',
    line: 'full tank what does it weigh',
    becomes: 'weight with full tank',
  },
  {
    said: /\b0 ?(?:-|to|–) ?(?:60|100)\b(?! ?(?:mm|in|psi|lb|n|%))(?: mph| km\/h)?/i,
    means: 'quarter mile',
    line: 'whats my 0-60',
    becomes: 'whats my quarter mile',
  },

  {
    said: /\b(\d{2,3}(?:\.\d)? ?(?:lbs?|kgs?|pounds?|kilos?)) driver\b/i,
    means: 'driver weight $1',
    line: 'corner weights with 180 lb driver',
    becomes: 'corner weights with driver weight 180 lb',
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
    said: /^(?:what|whats|what's|which|how many) g'?s? (?:does|do|will|would|can) (?:it|the car|my car|i|(\S+)) (?:start (?:to )?(?:sliding|slide|slipping|slip|letting go|let go)|slide|let go|break (?:loose|away)|lose grip|pull|hold|corner(?: at)?|do|take|manage)\W*$/i,
    means: (_, car) => joined('limit', car),
    line: 'what g does it start sliding',
    becomes: 'limit',
  },
  {
    said: /^(?:how much |when |at what g )?(?:does|do|will|would) (?:my |the )?(?:inside|inner) (?:front |rear )?(?:wheel |tire )?(?:lift|come off|pick up|get light|leave)\b.*$/i,
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
    said: /^(?:which|what) (?:end )?(?:is|one is|has) (?:the )?(stiffer|softer|more grip|less grip)(?: springs?)?,? (?:my |the )?(front|rear) or (?:my |the )?(?:front|rear)\W*$/i,
    means: (_, what, first) =>
      `${/grip/i.test(what ?? '') ? 'limit' : 'wheel rate'} ${first} vs ${/front/i.test(first ?? '') ? 'rear' : 'front'}`,
    line: 'which is stiffer my front or rear',
    becomes: 'wheel rate front vs rear',
  },
  {
    said: rule(
      String.raw`^(?:(?:tires?|they|it) (?:were|was|are|is) )?(?:set (?:at|to) )?(\d{2}(?:\.\d)?) ?(psi)?(?: cold)? (?:at|@) (\d{2,3}) ?(?:°|deg(?:rees)?)? ?([fc])?\b,? ?(?:(?:now|and|but|then|what|whats|how much|it's|its|whats it|what's it|what is it|it is|now it's|(?:will|would) (?:it|they) be) )*(?:at |@ )?(\d{2,3}) ?(?:°|deg(?:rees)?)? ?([fc])?(?: out| outside| today| now)?\W*$`,
    ),
    means: (_, pressure, unit, cold, coldUnit, hot, hotUnit) => {
      const degrees = coldUnit ?? hotUnit ?? '';
      return `hot pressure with tire pressure ${pressure}${unit ? ' psi' : ''}, cold temperature ${cold}${degrees}, hot temperature ${hot}${hotUnit ?? degrees}`;
    },
    line: '28 psi at 60f what at 100f',
    becomes: 'hot pressure with tire pressure 28 psi, cold temperature 60f, hot temperature 100f',
  },
  {
    said: /\b(?:the |a )?(hot|cold)(?: pressures?)? (?:for|from|at|if) (?:i want )?(\d{1,2}(?:[.,]\d{1,2})?)( ?(?:psi|bar|kpa))? (cold|hot)\b/i,
    means: (all = '', wanted, size, unit, given) =>
      wanted?.toLowerCase() === given?.toLowerCase()
        ? all
        : `${wanted} pressure with ${given?.toLowerCase() === 'cold' ? 'tire' : 'hot'} pressure ${size}${unit ?? ''}`,
    line: 'hot pressure for 26 cold',
    becomes: 'hot pressure with tire pressure 26',
  },
  {
    said: /^(?:how (?:many|much) )?psi (?:per|for each|every|for) (?:10|ten) ?(?:deg(?:rees?)?|°|f)?\W*$/i,
    means: 'pressure change per 10 degrees',
    line: 'psi per 10 degrees',
    becomes: 'pressure change per 10 degrees',
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
    said: /^(?:is (?:it|my car|the car|turnip) )?(?:neutral|understeer|oversteer|loose|tight|push|pushing|pushy)(?:ing)? or (?:neutral|understeer|oversteer|loose|tight|push|pushing|pushy)(?:ing)?\W*$/i,
    means: 'balance',
    line: 'is it understeer or oversteer',
    becomes: 'balance',
  },
  {
    said: /^(?:who|which car|which one|which|what car) (?:has |is |gets )?(leans?|rolls?|more grip|grips? more|sticks? better|stiffer|softer|heavier|lighter|pushes|understeers|rotates|more rotation|looser|tighter)(?: more| less| better)?,? (?:between )?(\S+) (?:or|and|vs) (\S+)\W*$/i,
    means: (_, what = '', one, two) => `compare ${one} with ${two}, ${figureFor(what)}`,
    line: 'who has more grip moth or turnip',
    becomes: 'compare moth with turnip, limit',
  },
  {
    said: /^(?:what(?:'?s| is| are)? (?:the )?(?:different|differences?)|how (?:is|are|do)|differences?)(?: between)? (\S+) (?:and|from|vs|to|differ from|different from) (\S+?)(?: different| differ)?\W*$/i,
    means: 'compare $1 with $2',
    line: 'whats different between turnip and moth',
    becomes: 'compare turnip with moth',
  },
  {
    said: /^(?:do|does|will|would) (?:the |my )?(front|rear|fronts|rears)(?: (?:wheels?|tires?|brakes?|axle|end))? locks?(?: up)? first\W*$/i,
    means: 'which end locks first',
    line: 'does the rear lock first',
    becomes: 'which end locks first',
  },
  {
    said: /^(?:how hard|how quick|how well|how much) (?:can|does|will) (?:it|the car|my car|(\S+)) (?:brake|stop)\W*$/i,
    means: (_, car) => joined('braking limit', car),
    line: 'how hard can it brake',
    becomes: 'braking limit',
  },
  {
    said: /^(?:do|does|will|when do|when does|where do) (?:i|it|the car|(\S+)) (?:hit|touch|get (?:on|to|into)|reach) (?:the |my )?(?:bump ?stops?|stops)\b/i,
    means: (_, car) => joined('stop contact', car),
    line: 'do i hit the bump stops at 1g',
    becomes: 'stop contact at 1g',
  },
  {
    said: /^how much (?:bump )?travel (?:is left |do i have |have i got )?(?:left )?(?:before|until|till) (?:it|i|the car) (?:bottoms?(?: out)?|binds?|hits?(?: the)?(?: bump)? ?stops?)\b/i,
    means: 'bump travel',
    line: 'how much travel before it bottoms',
    becomes: 'bump travel',
  },
  {
    said: /\b(?:how much )?grip (?:is |do i have )?left (?:(?:on|at|in) (?:the )?(front|rear) )?(?=(?:on|at|in) )/i,
    means: (_, end) => (end === undefined ? 'margin ' : `${end} grip use `),
    line: 'grip left on rear at .8g',
    becomes: 'rear grip use at .8g',
  },
  {
    said: /^what(?:'?s| is) on (?:the |my )?(lf|rf|lr|rr|left front|right front|left rear|right rear)(?: wheel| corner| tire)?\b/i,
    means: '$1 weight',
    line: 'whats on the lf',
    becomes: 'lf weight',
  },
  {
    said: rule(
      String.raw`^(?:what(?:'s| is)? (?:the )?(?:rate )?(?:is |of |for )?)?(?:(?:an?|two|2|3|three) )?(?:springs? )?(?:of )?(\d{2,4})((?: and | & | \+ )\d{2,4}(?:(?: and | & | \+ )\d{2,4})?)( ?(?:lbs?/in|lb|n/mm|kg/mm|k))?(?: springs?)? (?:in (series|parallel)|(stacked|on top of each other|nested|side by side))\W*$`,
    ),
    means: (_, first, others = '', unit, way, other) => {
      const u = unit === undefined || /^ ?lbs?$/i.test(unit) ? 'lb/in' : unit.trim() === 'k' ? 'kg/mm' : unit.trim();
      const rates = [first, ...(others.match(/\d+/g) ?? [])].map((rate) => `${rate} ${u}`);
      return /series|stacked|top/i.test(way ?? other ?? '')
        ? `calc 1/(${rates.map((rate) => `1/(${rate})`).join(' + ')})`
        : `calc ${rates.join(' + ')}`;
    },
    line: '400 and 600 in series',
    becomes: 'calc 1/(1/(400 lb/in) + 1/(600 lb/in))',
  },
  {
    said: rule(
      String.raw`^how (?:much|far) (?:does|do|will|would) (?:an? )?(\d{2,4}(?:\.\d)?)( ?(?:lbs?/in|n/mm|kg/mm|k))?(?: spring)? (?:compress|squash|squish|sag|deflect|give) (?:with|under|from) (\d{2,5})( ?(?:lbs?|lbf|kg|n))?(?: on (?:it|top))?\W*$`,
    ),
    means: (_, rate, unit, load, loadUnit) => {
      const force = loadUnit === undefined || /lb/i.test(loadUnit) ? 'lbf' : /kg/i.test(loadUnit) ? 'kgf' : 'N';
      return `calc ${load} ${force} / (${rate} ${unit === undefined || /^ ?lbs?\/in/i.test(unit) ? 'lb/in' : unit.trim() === 'k' ? 'kg/mm' : unit.trim()})`;
    },
    line: 'how much does a 450 compress with 800 lb',
    becomes: 'calc 800 lbf / (450 lb/in)',
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

/** The figure that a comparison of two cars is of. */
function figureFor(what: string): string {
  if (/lean|roll/i.test(what)) return 'roll angle';
  if (/grip|stick/i.test(what)) return 'limit';
  if (/stiff|soft/i.test(what)) return 'ride frequency';
  return /heav|light/i.test(what) ? 'weight' : 'balance';
}

/** What is asked of the bot itself, and of what it keeps. */
export const house: readonly Turn[] = [
  {
    said: /^(?:what (?:can|do) you do|how (?:does this|do you) work|who are you|what are you|how do i use (?:this|you)|what is this)\W*$/i,
    means: 'help',
    line: 'what can you do',
    becomes: 'help',
  },
  {
    said: /^what can i (?:change|do|swap|adjust|set|try)(?: (?:at|in|within|over|during|before|with|between) .{1,40})?\W*$/i,
    means: 'box',
    line: 'what can i change at lunch in 30 min',
    becomes: 'box',
  },
  {
    said: /^what(?:'?s| is) the (?:cheapest|quickest|easiest|fastest|simplest|least work) way to (?=\S)/i,
    means: '',
    echo: 'ranked by shift for the work; what has a price shows it',
    line: "what's the cheapest way to loosen it up",
    becomes: 'loosen it up',
  },
  {
    said: /^log (?:an? |my )?(?:runs?|laps?|times?)\b.*$/i,
    means: 'my run time',
    line: 'log a run 45.2',
    becomes: 'my run time',
  },
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
