/** Why one car does more of something than another. */
import { rule, type Turn } from './turn.js';

const car = String.raw`(?:the )?(\S+?)(?:'s?|s)?(?: car)?`;
export const splits: readonly Turn[] = [
  {
    said: rule(
      String.raw`^why (?:does|do|is) ${car} (?:rotates?|rotating|turns?|turns? in|oversteers?|understeers?|push(?:es)?)(?: so much)?(?: more| less| better| worse)?(?: than (\S+?)(?:'s?|s)?(?: does| car)?)?\W*$`,
    ),
    means: (_, to, from) => `split balance ${from === undefined || /^(?:mine|me|my|i)$/i.test(from) ? to : `${from} vs ${to}`}`,
    line: 'why does moth rotate more than pickle',
    becomes: 'split balance pickle vs moth',
  },
  {
    said: rule(
      String.raw`^why (?:does|do|is) ${car} (?:leans?|leaning|rolls?|rolling)(?: so much)?(?: more| less)?(?: than (\S+?)(?:'s?|s)?(?: does| car)?)?\W*$`,
    ),
    means: (_, to, from) => `split roll angle ${from === undefined || /^(?:mine|me|my|i)$/i.test(from) ? to : `${from} vs ${to}`}`,
    line: 'why does moth lean less',
    becomes: 'split roll angle moth',
  },
  {
    said: /^why (?:is|are) ((?:\S+ ){1,8})(?:so much )?(?:higher|lower|more|less|bigger|smaller|greater|stiffer|softer|different)(?: (?:than|from) (\S+?)(?:'s)?)?\W*$/i,
    means: (_, what = '', from) => {
      const [first = '', ...rest] = what.trim().split(' ');
      const to = first.replace(/'s$|(?<=[a-z])s$/i, '');
      return `split ${rest.join(' ')} ${from === undefined || /^(?:mine|me|my|i)$/i.test(from) ? to : `${from} vs ${to}`}`;
    },
    line: "why is moth's front share higher than mine",
    becomes: 'split front share moth',
  },
  {
    said: /^split (.{1,80}?) between (\S+) and (\S+)/i,
    means: 'split $1 $2 vs $3',
    line: 'split balance between dry and wet',
    becomes: 'split balance dry vs wet',
  },
];
