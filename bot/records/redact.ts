/** Redaction: what an event typed goes, wherever it is kept; what it changed stays. */
import type { Held, Id } from '../../commands/records/held.js';
import type { Kind } from '../../commands/records/kind.js';
import { revisions } from '../../commands/records/kinds/revision.js';
import { entriesBy, entriesOf, journalOf } from './journal.js';
import { toldBy } from './records.js';
import { eraseText } from './revisions.js';
import type { Store } from './store.js';
import { SqlTables } from './tables.js';

/** The record without what the event typed. */
function redacted(kind: Kind, held: Held, event: string): Held {
  const data = kind.redacted === undefined ? held.data : kind.redacted(held.data, event);
  return { ...held, data, text: held.told?.cause === event ? '' : held.text };
}
interface Named {
  readonly kind: string;
  readonly id: Id;
}
/** Inside a transaction. */
export function eraseTexts(store: Store, event: string): void {
  eraseText(store, event);
  const tables = new SqlTables(store);
  const journal = journalOf(store);
  // What it told last, and what it told before others did: those stand in the journal.
  const changed = entriesBy(store, event).filter(({ kind }) => kind !== 'order');
  const records = new Map<string, Named>();
  for (const one of [...toldBy(store, event), ...changed.map(({ kind, record }) => ({ kind, id: record }))])
    records.set(`${one.kind} ${one.id}`, one);
  for (const { kind: name, id } of records.values()) {
    const kind = store.kinds.named(name);
    // A revision is never altered but for its words, which are gone by now.
    if (kind.name === revisions.name) continue;
    const held = tables.find(kind, id);
    if (held !== undefined) tables.replace(kind, redacted(kind, held, event));
    for (const entry of entriesOf(store, name, id)) {
      const { before, after } = entry;
      journal.replace({ ...entry, before: before && redacted(kind, before, event), after: after && redacted(kind, after, event) });
    }
  }
}
