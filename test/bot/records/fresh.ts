/** A database file of its own for each test. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import { type Opening, openDatabase, type Store } from '../../../bot/records/database.js';

const folders: string[] = [];
const open: Store[] = [];
afterEach(() => {
  for (const store of open.splice(0)) store.close();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});
export function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'stubaxle-'));
  folders.push(folder);
  return folder;
}
export const freshFile = (): string => join(freshFolder(), 'club.db');
export function opened(file: string = freshFile(), opening: Opening = {}): Store {
  const store = openDatabase(file, opening);
  open.push(store);
  return store;
}
