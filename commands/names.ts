/** What a car or a setup may be called. A name is text: renderers escape it, and nobody can pose as another with marks that don't show. */

/** Marks that turn the reading direction, have no width, or are not for text at all. */
const unseen = /[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Cn}\u2028\u2029\u115f\u1160\u3164\uffa0\u2800]/u;
/** What would be a tag, a link, a mention or emphasis in some chat. */
const meaningful = /[<>&[\](){}|\\`*_#@!~^:/"]/;
const longest = 24;

/** Names that would be read as something else. */
const taken = new Set(
  'me my mine i you now it that this all everything car cars front rear left right lf rf lr rr fl fr rl with without for at vs versus against or and in on to from of the a an is us metric help undo yes no none ok today yesterday'.split(
    ' ',
  ),
);

/** The name tidied, or the sentence that refuses it. */
export function nameOf(text: string, what: 'car' | 'setup'): { readonly name: string } | { readonly refused: string } {
  const name = text.normalize('NFC').trim().replace(/\s+/g, ' ');
  if (name === '') return { refused: `A ${what} needs a name of 1 to ${longest} characters.` };
  if (unseen.test(name)) return { refused: `A ${what}'s name can't hold marks that don't show.` };
  if (meaningful.test(name))
    return { refused: `A ${what}'s name can hold letters, digits, spaces, - and ', and nothing that chats read as more than text.` };
  if ([...name].length > longest) return { refused: `A ${what}'s name has at most ${longest} characters.` };
  if (!/[\p{L}\p{N}]/u.test(name)) return { refused: `A ${what}'s name needs a letter or a digit.` };
  if (/^\p{M}/u.test(name)) return { refused: `A ${what}'s name starts with a letter or a digit.` };
  if (/^[\d.,]+$/.test(name)) return { refused: `A ${what}'s name needs a letter: "${name}" would be read as a number.` };
  if (taken.has(name.toLowerCase())) return { refused: `"${name}" already means something here; another name for the ${what}, please.` };
  return { name };
}
/** Whether two names are one to a reader. */
export const sameName = (a: string, b: string): boolean => nameKey(a) === nameKey(b);
/** What is the same for names that a reader takes for one. */
export const nameKey = (name: string): string => name.normalize('NFKC').toLowerCase().replace(/\s+/g, ' ').trim();
