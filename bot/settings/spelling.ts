/** Which setting is meant by a name that is none. */
import { names, type SettingName } from './table.js';

/** Other names that people may try. */
const foreseen: Readonly<Record<string, SettingName>> = {
  url: 'homeserver',
  server: 'homeserver',
  homeserverurl: 'homeserver',
  baseurl: 'homeserver',
  token: 'accessToken',
  tokenfile: 'accessTokenFile',
  db: 'database',
  databasefile: 'database',
  databasepath: 'database',
  storage: 'database',
  allowusers: 'inviteUsers',
  allowedusers: 'inviteUsers',
  users: 'inviteUsers',
  inviteuser: 'inviteUsers',
  allowservers: 'inviteServers',
  allowedservers: 'inviteServers',
  servers: 'inviteServers',
  inviteserver: 'inviteServers',
  commandprefix: 'prefix',
  port: 'healthPort',
  health: 'healthPort',
  log: 'logLevel',
  level: 'logLevel',
  loglevel: 'logLevel',
  chartfolder: 'files',
  chartsfolder: 'files',
  demos: 'demo',
  example: 'demo',
};
const plainName = (key: string): string => key.replace(/[^A-Za-z]/g, '').toLowerCase();
/** Edits that make one word of another: Levenshtein's distance. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length] ?? 0;
}
function meant(key: string): SettingName | undefined {
  const plain = plainName(key);
  const same = names.find((n) => n.toLowerCase() === plain) ?? (Object.hasOwn(foreseen, plain) ? foreseen[plain] : undefined);
  return same ?? names.find((n) => distance(n.toLowerCase(), plain) <= 2);
}
/** The sentence for a setting that there is not. */
export const unknown = (where: string, key: string, spelled: (name: SettingName) => string): string => {
  const name = meant(key);
  const asTyped = key.replace(/[^\x20-\x7e]/g, '?').slice(0, 40);
  return `${where}: there is no setting "${asTyped}"${name === undefined ? `; there are ${names.map(spelled).join(', ')}.` : `; "${spelled(name)}" is meant?`}`;
};
