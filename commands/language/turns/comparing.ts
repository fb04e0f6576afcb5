/** Which of two cars, sizes or ends has more of something. */
import type { Turn } from './turn.js';

export const comparing: readonly Turn[] = [
  {
    said: /^(.*\d ?(?:vs|to|or) .*\d),? (?:the )?diff(?:erence)?\W*$/i,
    means: '$1',
    line: '205/50/15 vs 195/55/15 diff',
    becomes: '205/50/15 vs 195/55/15',
  },
  {
    said: /^is (\S+?)(?:'s)? (stiffer|softer|heavier|lighter|looser|tighter) than (\S+?)(?:'s)?(?: car)?\W*$/i,
    means: (_, one, what = '', two) => `compare ${one} with ${two}, ${figureFor(what)}`,
    line: 'is moth stiffer than mine',
    becomes: 'compare moth with mine, ride frequency',
  },
  { said: /^whose (?:car )?is (\S+?)\W*$/i, means: 'show $1', line: 'whose car is moth', becomes: 'show moth' },
  {
    said: /^(?:which|what) (?:end )?(?:is|one is|has) (?:the )?(stiffer|softer|more grip|less grip)(?: springs?)?,? (?:my |the )?(front|rear) or (?:my |the )?(?:front|rear)\W*$/i,
    means: (_, what, first) =>
      `${/grip/i.test(what ?? '') ? 'limit' : 'wheel rate'} ${first} vs ${/front/i.test(first ?? '') ? 'rear' : 'front'}`,
    line: 'which is stiffer my front or rear',
    becomes: 'wheel rate front vs rear',
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
];

/** The figure that a comparison of two cars is of. */
function figureFor(what: string): string {
  if (/lean|roll/i.test(what)) return 'roll angle';
  if (/grip|stick/i.test(what)) return 'limit';
  if (/stiff|soft/i.test(what)) return 'ride frequency';
  return /heav|light/i.test(what) ? 'weight' : 'balance';
}
