/** Tire pressures, hot and cold, as people read them off a gauge. */
import { joined, rule, type Turn } from './turn.js';

export const pressures: readonly Turn[] = [
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
    said: /^(?!.*\b(?:hot|cold)\b)(set |try )?(?:pressures? )?(\d{2}(?:\.\d)?)( ?psi)? (?:in |on |up )?(?:the )?fronts?,? (?:and )?(\d{2}(?:\.\d)?)( ?psi)? (?:in |on |out )?(?:the )?(?:rears?|back)(?: psi)?\W*$/i,
    means: (all = '', verb, front, one, rear, other) =>
      one === undefined && other === undefined && !/psi|pressure/i.test(all)
        ? all
        : `${verb ?? ''}front pressure ${front} psi, rear pressure ${rear} psi`,
    line: '34 psi fronts 32 rears',
    becomes: 'front pressure 34 psi, rear pressure 32 psi',
  },
  {
    said: /^(?!.*(?:\bin|\bto|=|\bcalc|pressure|\bhot|\bcold|\btires?|\bair|\bin the|[*^]).*)(?:(?:i(?:'m| am)?|we(?:'re)?|now|try|set|running|run|runs|at|on|got|using|with) ?)*?(\d{2}(?:\.\d)? ?psi\b)(?=.*\b(?:fronts?|rears?|all|lf|rf|lr|rr|round|around|everywhere|each|both|back)\b)/i,
    means: (all = '', amount) => `${/^(?:try|set)/i.exec(all)?.[0] ?? ''} pressure ${amount}`.trim(),
    line: 'running 30 psi all around',
    becomes: 'pressure 30 psi all around',
  },
  {
    said: /^(?:what|which) ((?:front|rear) )?(?:tire )?(?:cold )?pressures? (?:for|gives?|gets? me|to get) (\d{2}(?:\.\d)?)( ?psi)? hot\W*$/i,
    means: '$1cold pressure with $1hot pressure $2$3',
    line: 'what rear pressure for 30 psi hot',
    becomes: 'rear cold pressure with rear hot pressure 30 psi',
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
    means: 'pressure change',
    line: 'psi per 10 degrees',
    becomes: 'pressure change',
  },
  {
    said: /\b(\d{2}(?:\.\d)?)( ?psi)? cold at (\d{2,3}) ?(?:°|deg)? ?([fc])\b/i,
    means: (_, cold, unit, degrees, scale) => `tire pressure ${cold}${unit ?? ''}, cold temperature ${degrees}${scale}`,
    line: '30 psi cold at 60f',
    becomes: 'tire pressure 30 psi, cold temperature 60f',
  },
];
