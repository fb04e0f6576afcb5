/** Questions and statements in words of their own: what it holds, where it lifts, what was taken off. */
import { person } from './people.js';
import { joined, rule, type Turn } from './turn.js';

export const asked: readonly Turn[] = [
  {
    said: /^how (?:stiff|rigid|strong) is (?:my |the )?(?:chassis|body|frame|shell)\b/i,
    means: 'chassis stiffness',
    line: 'how stiff is my chassis',
    becomes: 'chassis stiffness',
  },
  {
    said: /^(?:what|which) (?:(front|rear) )?(?:bar (?:diameter|size)|diameter (?:sway ?)?bar)(?: do i need)? (?:for|gives?) (?:an? )?(?:bar )?(?:rate (?:of )?)?(\d{2,4} ?(?:lbs?\/in|n\/mm|kg\/mm))\W*$/i,
    means: (_, end, rate) => `find ${joined(end, 'bar diameter')} for ${joined(end, 'rate of bar')} ${rate}`,
    line: 'what front bar diameter for 300 lb/in',
    becomes: 'find front bar diameter for front rate of bar 300 lb/in',
  },
  { said: /\bzero (?=(?:toe|camber|caster|preload|front|rear)\b)/i, means: '0 ', line: 'set zero toe rear', becomes: 'set 0 toe rear' },
  { said: /\bup (?=front\b)|\bout (?=back\b)/i, means: '', line: '425s up front', becomes: '425s front' },
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
    said: /^(.{2,40}?),? what (?:does|will|would|do) (?:it|the car|i) weigh\W*$/i,
    means: 'weight with $1',
    line: 'full tank what does it weigh',
    becomes: 'weight with full tank',
  },
  {
    said: /\b(\d{2,3}(?:\.\d)? ?(?:lbs?|kgs?|pounds?|kilos?)) driver\b/i,
    means: 'driver weight $1',
    line: 'corner weights with 180 lb driver',
    becomes: 'corner weights with driver weight 180 lb',
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
];
