/** Small pieces of Markdown. */

/** Text inside a table's cell. */
export const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('<', '&lt;').replaceAll('\n', ' ');
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map((row) => line(row.map(cell)))].join('\n');
}
/** Replaces what stands between `<!-- name -->` and `<!-- /name -->`. */
export function between(page: string, name: string, text: string): string {
  const [open, close] = [`<!-- ${name} -->`, `<!-- /${name} -->`];
  const from = page.indexOf(open);
  const to = page.indexOf(close);
  if (from < 0 || to < from) throw new Error(`the page has no ${open} ... ${close}`);
  return `${page.slice(0, from + open.length)}\n${text}\n${page.slice(to)}`;
}
