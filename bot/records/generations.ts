/** Numbers that only rise: what was lost and won again has another than before. */
import { prepared, type Store } from './store.js';

const on = prepared((db) => ({
  next: db.prepare<[], { value: string }>(
    `INSERT INTO meta (key, value) VALUES ('generation', '1')
     ON CONFLICT (key) DO UPDATE SET value = CAST(CAST(value AS INTEGER) + 1 AS TEXT) RETURNING value`,
  ),
}));
/** Never the same twice in a database. Inside the transaction that uses it. */
export function nextGeneration(store: Store): number {
  const value = Number(on(store).next.get()?.value);
  if (!Number.isSafeInteger(value)) throw new Error('The count of generations is not a number.');
  return value;
}
