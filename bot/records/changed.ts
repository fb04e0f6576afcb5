/** Which event has changed what: an event's changes are made once, and an edit learns what its event did. Holds no text and no names. */
import type { Change } from '../../commands/context.js';
import { prepared, type Store } from './store.js';

const on = prepared((db) => ({
  add: db.prepare<[string, string]>('INSERT INTO changed (cause, change) VALUES (?, ?) ON CONFLICT DO NOTHING'),
  by: db.prepare<[string], { change: Change['change'] }>('SELECT change FROM changed WHERE cause = ? ORDER BY change'),
}));
export const noteChange = (store: Store, cause: string, change: Change['change']): void => void on(store).add.run(cause, change);
/** The kinds of change that the event has made; empty when it changed nothing. */
export const changesMadeBy = (store: Store, cause: string): readonly Change['change'][] =>
  on(store)
    .by.all(cause)
    .map((row) => row.change);
