/** What the bot must remember of itself from one start to the next. */
import { prepared, type Store } from './store.js';

/** `account`: whose timeline the token and the rooms belong to. `sync`: up to where that timeline is in the inbox. (`generation`: see generations.ts.) */
export type MetaKey = 'account' | 'sync';
const on = prepared((db) => ({
  get: db.prepare<[string], { value: string }>('SELECT value FROM meta WHERE key = ?'),
  set: db.prepare<[string, string]>('INSERT INTO meta (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value'),
}));
export const recall = (store: Store, key: MetaKey): string | undefined => on(store).get.get(key)?.value;
export const remember = (store: Store, key: MetaKey, value: string): void => void on(store).set.run(key, value);
