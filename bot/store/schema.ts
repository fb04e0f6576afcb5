/** The schema's history, one migration a version. A released migration is never edited; a change of the schema is a new one at the end. */
import { ddl as cars } from './cars.js';
import { ddl as changed } from './changed.js';
import { ddl as conversations } from './conversation.js';
import { ddl as inbox } from './inbox.js';
import { ddl as members } from './members.js';
import { ddl as memberships } from './memberships.js';
import { ddl as meta } from './meta.js';
import { ddl as outbox } from './outbox.js';
import { ddl as parts } from './parts.js';
import { ddl as revisions } from './revisions.js';
import { ddl as rooms } from './rooms.js';
import { ddl as setups } from './setups.js';
import { ddl as shares } from './shares.js';
import { ddl as timelines } from './timelines.js';

export interface Migration {
  /** In a few words, for an error. */
  readonly does: string;
  /** Run whole in one transaction. */
  readonly sql: string;
}
/** The version of a database is how many of these it has had. */
export const migrations: readonly Migration[] = [
  {
    does: 'the first tables',
    sql: [members, rooms, memberships, cars, revisions, setups, shares, changed, inbox, outbox, conversations, timelines, meta].join('\n'),
  },
  { does: 'the parts box', sql: parts },
];
