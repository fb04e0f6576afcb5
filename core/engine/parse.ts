/** What a designation's text stands for. */
import type { Refusal } from '../catalog.js';
import type { Node } from './node.js';

/** Parsing a size is far dearer than a figure, and the same few texts come again and again. */
const parsed = new WeakMap<object, Map<string, object | Refusal>>();
const remembered = 500;
export function parse(node: Node, text: string): object | Refusal {
  const texts = parsed.get(node.entry) ?? new Map<string, object | Refusal>();
  parsed.set(node.entry, texts);
  let value = texts.get(text);
  if (!value) {
    if (!node.entry.parse) throw new Error(`${node.entry.path} cannot be parsed`);
    value = node.entry.parse(text);
    if (texts.size >= remembered) texts.clear();
    texts.set(text, value);
  }
  return value;
}
