/** Why a database cannot be used, in words for whoever runs the bot. */
/** The file cannot be used; the message is one sentence for whoever runs the bot. */
export class DatabaseRefused extends Error {
  override readonly name = 'DatabaseRefused';
}
/** What whoever runs the bot can put right, in a sentence; undefined for what is our own mistake. */
export function refusal(problem: unknown, path: string): DatabaseRefused | undefined {
  if (!(problem instanceof Error) || !('code' in problem) || typeof problem.code !== 'string') return undefined;
  const said = { cause: problem };
  if (problem.code === 'SQLITE_NOTADB')
    return new DatabaseRefused(`${path} is not a SQLite database; give the bot another file, or restore a backup.`, said);
  if (problem.code.startsWith('SQLITE_CORRUPT')) return new DatabaseRefused(`${path} is damaged; restore a backup.`, said);
  const reach = ['EACCES', 'EPERM', 'EROFS', 'ENOTDIR', 'EEXIST', 'EISDIR', 'SQLITE_CANTOPEN', 'SQLITE_READONLY'];
  if (reach.some((code) => problem.code === code || String(problem.code).startsWith(`${code}_`)))
    return new DatabaseRefused(`${path} can't be opened for writing; check the folder and its permissions.`, said);
  return undefined;
}
