/** The schema's history, one frozen SQL file a version: a released one is never edited, a change of the schema is a new file at the end. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { topOf } from '../top.js';

export interface Migration {
  /** In a few words, for an error. */
  readonly does: string;
  /** Run whole in one transaction. Read when it is first needed: most starts need none. */
  readonly sql: string;
}
/** A file under `migrations/`, and the hash that it was released with. */
interface Frozen {
  readonly does: string;
  readonly file: string;
  readonly sha256: string;
}
export const frozen: readonly Frozen[] = [
  {
    does: 'the first tables',
    file: '0001-first-tables.sql',
    sha256: '97ff4b3a47ba60c8cb337dde0d87bcde37b6efd516474179fb12bdd63a32191d',
  },
  {
    does: 'the parts box',
    file: '0002-parts-box.sql',
    sha256: 'eb630a23fad2ef36aa929be6150b4a4559b6e2fee53c57ed2c64fbc3696dc471',
  },
  {
    does: 'records of every kind, the journal, and who told each fact',
    file: '0003-records.sql',
    sha256: '35a790462f0fc4c8935fd1f77d6fa43d4ad4d3a7000f13ef2c8832b4322f37e5',
  },
  {
    does: 'who may see what, told exactly',
    file: '0004-who-may-see.sql',
    sha256: '45c5491c29826fec23208183863890ceeccd996ed172b5cd9108c92e252be665',
  },
  {
    does: 'what old answers offered is offered no more',
    file: '0005-what-was-offered.sql',
    sha256: 'f667e4b2c484113697da9a5cf817f76d1eab4fa1cf60343022e9c46c3258a18d',
  },
];
/** Where the files stand, also for the built program. */
export const migrationFolder = new URL('bot/records/migrations/', topOf(import.meta.url));

/** @throws when the file is not what was released: databases made with it would differ from those made before. */
function sqlOf({ file, sha256 }: Frozen): string {
  const text = readFileSync(new URL(file, migrationFolder));
  const found = createHash('sha256').update(text).digest('hex');
  if (found !== sha256)
    throw new Error(`The migration ${file} was changed after its release; put it back, and write the change as a new one.`);
  return text.toString('utf8');
}
/** The version of a database is how many of these it has had. */
export const migrations: readonly Migration[] = frozen.map((one) => ({
  does: one.does,
  get sql() {
    return sqlOf(one);
  },
}));
