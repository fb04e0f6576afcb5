/** What a designation's text stands for. */
import type { Entry, Refusal } from '../catalog.js';

/** Reads the text of a designation. */
export type Parse = (entry: Entry, text: string) => object | Refusal;

/** So many texts of an entry are remembered. */
const remembered = 500;
/** Parsing a size is far dearer than a figure, and the same few texts come again and again. */
export function remembering(): Parse {
  const parsed = new Map<Entry, Map<string, object | Refusal>>();
  return (entry, text) => {
    const texts = parsed.get(entry) ?? new Map<string, object | Refusal>();
    parsed.set(entry, texts);
    const known = texts.get(text);
    if (known) return known;
    if (!entry.parse) throw new Error(`${entry.path} cannot be parsed`);
    const value = entry.parse(text);
    if (texts.size >= remembered) texts.clear();
    texts.set(text, value);
    return value;
  };
}
