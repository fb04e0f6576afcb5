/**
 * Ends the process once all that was written has gone out. It does not leave the end to Node: from 24.17 on, Node aborts as it takes its engine
 * apart when objects of a native module (a statement of the database) are still to be collected.
 */
export function finish(code: number): void {
  process.stdout.write('', () => process.stderr.write('', () => process.exit(code)));
}
