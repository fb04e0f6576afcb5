/** Names that told numbers had in earlier releases: what was stored under them is read under their present ones. */
const renamed: ReadonlyMap<string, string> = new Map([['bar.rollStiffness', 'roll.bar']]);

/** The present name of an entry without its place. */
export const entryNow = (entry: string): string => renamed.get(entry) ?? entry;

/** The present path of a fact with its place in front: `rear.bar.rollStiffness` is `rear.roll.bar` now. */
export function pathNow(path: string): string {
  for (const [was, is] of renamed) {
    if (path === was) return is;
    if (path.endsWith(`.${was}`)) return `${path.slice(0, -was.length)}${is}`;
  }
  return path;
}
