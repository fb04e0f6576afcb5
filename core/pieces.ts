/** Long work that is done in pieces: between two of them whoever asked for it may let others have their turn. */
export type InPieces<T> = Generator<undefined, T, undefined>;

/** All of it at once. */
export function whole<T>(work: InPieces<T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}
