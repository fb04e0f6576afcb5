/**
 * Whether a line that has the bot's name in it calls the bot (`stubaxle, show everything`) or speaks of it (`stubaxle said my spring is 480`). A call is
 * a greeting or nothing before the name, and after it no verb whose subject the name is. Where it is not plain, the bot is spoken of: then nothing is changed.
 */
import { catalog } from '../../core/stubaxle.js';
import { meaningsOf } from '../units.js';
import { stem } from '../words.js';
import { vocabularyOf } from './vocabulary.js';

export interface Naming {
  /** The line begins with the name, greetings aside. */
  readonly leads: boolean;
  /** The bot is spoken of, or may be. */
  readonly spokenOf: boolean;
  /** The line without the name, and without what only calls. Empty: nothing was said but the name. */
  readonly text: string;
}
const list = (words: string): ReadonlySet<string> => new Set(words.split(/\s+/));

const greetings = list(
  'hey hi hello hiya heya howdy yo oi ok okay alright morning evening afternoon good day dear please pls plz so well now then um uh oh ah right again',
);
const mostGreetings = 3;
/** Stand between a name and its verb: `stubaxle just told me`. */
const adverbs = list(
  'just also always never once still already even often sometimes again ever now then first later earlier yesterday today recently bot itself',
);
const whoIs = list('is isnt was wasnt has hasnt had hadnt aint seems');
const helping = list(
  'does doesnt did didnt can cant cannot could couldnt will wont would wouldnt should shouldnt may might must shall ought are arent were',
);
/** After a helping verb they are its subject: `can you`, `does it`, `will the 245 fit`. Then the name is none. */
const subjects = list('i you we they he she it this that these those there');
const determiners = list('my your our their his her the a an any both');
/** What makes a noun of the name: `stubaxle and sam`, `thanks stubaxle`, `says stubaxle`. */
const joining = list('and or nor but than as with not');
const past = list(
  `said told thought gave made knew went came took saw found wrote ran sent kept meant felt heard lost paid sold spoke stood taught understood won broke
  chose drew drove fell forgot grew held hung led met rose slept threw woke wore spent built bought brought caught dealt fought flew froze stuck began became
  bent blew sank shook shot stole struck swore tore let`,
);
/** In front of the name it is their object. */
const governing = list(
  `of by to from with like about for at on in into than as and or the a an this that my our your thank thanks ask asks tell tells use uses using love hate trust
  blame let make call per via says say`,
);
/** Verbs by their ending, that are words for something else, or are said to the bot. */
const notVerbs = list(
  `yes us its this thus plus always thanks cheers whats vs versus commands words units cars parts spares pairs settings news perhaps lets hows wheres
  need speed feed red bed used measured minus bonus`,
);

const lettersOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .replace(/['’]/g, '')
    .match(/[\p{L}\p{N}]+/gu) ?? [];
const onlyMarks = (text: string): boolean => !/[\p{L}\p{N}]/u.test(text);
/** A call is set off from what follows: `stubaxle, ...`, `stubaxle: ...`, `stubaxle - ...`. */
const setOff = /^\s*(?:[,:;!?…]|\.(?!\d)|[-–—](?=\s))/u;
const endsOff = /[,:;!?.…\n–—]\s*$/u;

const isKnown = (word: string): boolean => notVerbs.has(word) || vocabularyOf(catalog).words.has(stem(word)) || meaningsOf(word).length > 0;
/** A verb of the third person or of the past: what is told of somebody. An order is neither. */
const isTold = (word: string): boolean =>
  past.has(word) || (word.length > 3 && /(?:[^s]s|[^e]ed)$/.test(word) && !isKnown(word) && !helping.has(word));

/** Whether what follows a name makes it the subject of a sentence. */
function isPredicate(text: string): boolean {
  const words = lettersOf(text);
  const at = words.findIndex((word) => !adverbs.has(word) && !/..ly$/.test(word));
  const [verb, next = ''] = [words[at], words[at + 1] ?? ''];
  if (verb === undefined) return false;
  if (joining.has(verb)) return true;
  if (whoIs.has(verb)) return !subjects.has(next);
  if (helping.has(verb)) return !subjects.has(next) && !determiners.has(next);
  return isTold(verb);
}
const isGreeting = (text: string): boolean => {
  const words = lettersOf(text);
  return words.length <= mostGreetings && words.every((word) => greetings.has(word));
};

/** @param name - the name as it stands there, with its `@` and a genitive's `'s` if it has them */
export function namingIn(before: string, name: string, after: string): Naming {
  const rest = after.replace(setOff, '').trim();
  const leads = isGreeting(before);
  const genitive = /['’]s$/iu.test(name);
  if (leads) {
    const called = !genitive && (setOff.test(after) || !isPredicate(after));
    return { leads, spokenOf: !called, text: onlyMarks(rest) ? '' : rest };
  }
  const text = `${before.trim()} ${rest}`.trim();
  return { leads, spokenOf: genitive || !isAside(before, after), text };
}
/** `show a, stubaxle`, `could you, stubaxle, show a`; at the end also without a comma, where no word before it takes it in. */
function isAside(before: string, after: string): boolean {
  if (endsOff.test(before)) return onlyMarks(after) || (setOff.test(after) && !isPredicate(after));
  const last = lettersOf(before).at(-1) ?? '';
  return onlyMarks(after) && !governing.has(last) && !isTold(last);
}
/** Whether a line asks for something, and does not only tell. */
export const asks = (text: string): boolean =>
  /[?？]/u.test(text) || /^\s*(?:what|whats|which|who|how|when|where|why)\b/iu.test(text.replace(/['’]/g, ''));
