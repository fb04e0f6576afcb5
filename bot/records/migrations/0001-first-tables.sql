
CREATE TABLE members (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  units TEXT NOT NULL CHECK (units IN ('us', 'metric')),
  decimal_mark TEXT NOT NULL CHECK (decimal_mark IN ('.', ',')),
  chosen INTEGER REFERENCES cars (id) ON DELETE SET NULL DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX members_by_chosen ON members (chosen) WHERE chosen IS NOT NULL;


CREATE TABLE rooms (
  id TEXT PRIMARY KEY,
  direct INTEGER NOT NULL CHECK (direct IN (0, 1)),
  prefix TEXT CHECK (length(prefix) BETWEEN 1 AND 8),
  left INTEGER NOT NULL DEFAULT 0 CHECK (left IN (0, 1)),
  encrypted INTEGER NOT NULL DEFAULT 0 CHECK (encrypted IN (0, 1))
) STRICT;
-- A room does not become unencrypted again: a server that says so is wrong or lying, and an answer would go out in clear.
CREATE TRIGGER rooms_stay_encrypted BEFORE UPDATE OF encrypted ON rooms WHEN OLD.encrypted = 1 AND NEW.encrypted = 0
BEGIN SELECT RAISE(ABORT, 'an encrypted room stays encrypted'); END;


CREATE TABLE memberships (
  room TEXT NOT NULL REFERENCES rooms (id),
  member TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('join', 'invite', 'leave', 'ban', 'knock')),
  name TEXT,
  may_change_room INTEGER NOT NULL DEFAULT 0 CHECK (may_change_room IN (0, 1)),
  PRIMARY KEY (room, member)
) STRICT, WITHOUT ROWID;
CREATE INDEX memberships_by_member ON memberships (member);


CREATE TABLE cars (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  owner TEXT NOT NULL REFERENCES members (id),
  name TEXT NOT NULL CHECK (length(name) > 0),
  name_key TEXT NOT NULL,
  head INTEGER NOT NULL REFERENCES revisions (id) DEFERRABLE INITIALLY DEFERRED,
  UNIQUE (owner, name_key)
) STRICT;
CREATE INDEX cars_by_head ON cars (head);


CREATE TABLE revisions (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  car INTEGER NOT NULL REFERENCES cars (id) ON DELETE CASCADE,
  parent INTEGER REFERENCES revisions (id),
  at INTEGER NOT NULL,
  by TEXT NOT NULL,
  why TEXT NOT NULL,
  facts TEXT NOT NULL CHECK (json_valid(facts)),
  measured_in INTEGER REFERENCES revisions (id) DEFERRABLE INITIALLY DEFERRED,
  undoes INTEGER REFERENCES revisions (id),
  cause TEXT NOT NULL,
  -- An event that makes several revisions of a car (a change and an undo in one message) numbers them from 1.
  step INTEGER NOT NULL,
  UNIQUE (car, cause, step)
) STRICT;
CREATE INDEX revisions_by_cause ON revisions (cause);
CREATE INDEX revisions_by_car ON revisions (car, id);
CREATE INDEX revisions_by_parent ON revisions (parent) WHERE parent IS NOT NULL;
CREATE INDEX revisions_by_measured_in ON revisions (measured_in) WHERE measured_in IS NOT NULL;
CREATE INDEX revisions_by_undoes ON revisions (undoes) WHERE undoes IS NOT NULL;
CREATE TRIGGER revisions_stay BEFORE UPDATE OF id, car, parent, at, by, facts, measured_in, undoes, cause, step ON revisions
BEGIN SELECT RAISE(ABORT, 'a revision is never altered'); END;
CREATE TRIGGER revisions_lose_only_text BEFORE UPDATE OF why ON revisions WHEN NEW.why <> ''
BEGIN SELECT RAISE(ABORT, 'a revision is never altered'); END;


CREATE TABLE setups (
  car INTEGER NOT NULL REFERENCES cars (id) ON DELETE CASCADE,
  name TEXT NOT NULL CHECK (length(name) > 0),
  name_key TEXT NOT NULL,
  revision INTEGER NOT NULL REFERENCES revisions (id) ON DELETE CASCADE,
  PRIMARY KEY (car, name_key)
) STRICT, WITHOUT ROWID;
CREATE INDEX setups_by_revision ON setups (revision);


CREATE TABLE shares (
  room TEXT NOT NULL REFERENCES rooms (id),
  car INTEGER NOT NULL REFERENCES cars (id) ON DELETE CASCADE,
  PRIMARY KEY (room, car)
) STRICT, WITHOUT ROWID;
CREATE INDEX shares_by_car ON shares (car);
CREATE VIEW seen AS
SELECT asker.member AS asker, shares.room AS room, shares.car AS car, owner.member AS owner, owner.name AS owner_name
FROM shares
JOIN rooms ON rooms.id = shares.room AND rooms.left = 0
JOIN cars ON cars.id = shares.car
JOIN memberships AS owner ON owner.room = shares.room AND owner.member = cars.owner AND owner.state = 'join'
JOIN memberships AS asker ON asker.room = shares.room AND asker.member <> cars.owner AND asker.state = 'join';


CREATE TABLE changed (
  cause TEXT NOT NULL,
  change TEXT NOT NULL,
  PRIMARY KEY (cause, change)
) STRICT, WITHOUT ROWID;


CREATE TABLE inbox (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  event TEXT NOT NULL UNIQUE,
  room TEXT NOT NULL,
  sender TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('message', 'edit', 'redaction', 'state', 'invite', 'left')),
  target TEXT CHECK ((kind IN ('edit', 'redaction')) = (target IS NOT NULL)),
  thread TEXT,
  content TEXT,
  at INTEGER NOT NULL,
  state TEXT NOT NULL DEFAULT 'new' CHECK (state IN ('new', 'answered', 'silent', 'failed', 'withdrawn', 'unreadable')),
  tries INTEGER NOT NULL DEFAULT 0,
  reason TEXT
) STRICT;
CREATE INDEX inbox_open ON inbox (room, seq) WHERE state = 'new';
CREATE INDEX inbox_by_target ON inbox (target) WHERE target IS NOT NULL;
CREATE INDEX inbox_by_sender ON inbox (sender);
CREATE INDEX inbox_by_age ON inbox (at) WHERE content IS NOT NULL;


CREATE TABLE outbox (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  command TEXT NOT NULL,
  part INTEGER NOT NULL CHECK (part >= 0),
  version INTEGER NOT NULL CHECK (version >= 0),
  action TEXT NOT NULL CHECK (action IN ('send', 'edit', 'redact', 'join', 'leave')),
  room TEXT NOT NULL,
  "to" TEXT,
  content TEXT,
  fallback TEXT,
  file BLOB,
  clear INTEGER NOT NULL DEFAULT 0 CHECK (clear IN (0, 1)),
  brief INTEGER NOT NULL DEFAULT 0 CHECK (brief IN (0, 1)),
  txn TEXT NOT NULL UNIQUE,
  state TEXT NOT NULL DEFAULT 'ready' CHECK (state IN ('ready', 'trying', 'sent', 'refused', 'withdrawn')),
  device TEXT,
  first_try INTEGER,
  not_before INTEGER NOT NULL DEFAULT 0,
  tries INTEGER NOT NULL DEFAULT 0,
  event TEXT,
  error TEXT,
  at INTEGER NOT NULL,
  UNIQUE (command, part, version, action),
  CHECK ((state = 'sent') = (event IS NOT NULL)),
  CHECK (state <> 'trying' OR (device IS NOT NULL AND first_try IS NOT NULL))
) STRICT;
CREATE INDEX outbox_open ON outbox (room, seq) WHERE state IN ('ready', 'trying');
CREATE INDEX outbox_by_event ON outbox (event) WHERE event IS NOT NULL;
CREATE INDEX outbox_by_age ON outbox (at) WHERE content IS NOT NULL;
CREATE INDEX outbox_by_reader ON outbox ("to") WHERE "to" IS NOT NULL;


CREATE TABLE conversations (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  command TEXT NOT NULL UNIQUE,
  asker TEXT NOT NULL,
  room TEXT NOT NULL,
  thread TEXT NOT NULL,
  rest TEXT NOT NULL CHECK (json_valid(rest)),
  trial TEXT CHECK (json_valid(trial)),
  choices TEXT NOT NULL CHECK (json_valid(choices)),
  heads TEXT NOT NULL CHECK (json_valid(heads)),
  open INTEGER NOT NULL CHECK (open IN (0, 1)),
  at INTEGER NOT NULL
) STRICT;
CREATE INDEX conversations_by_asker ON conversations (asker, room, thread, seq);
CREATE INDEX conversations_by_age ON conversations (at);


CREATE TABLE timelines (
  room TEXT PRIMARY KEY,
  last TEXT,
  clear INTEGER NOT NULL DEFAULT 0 CHECK (clear IN (0, 1)),
  rulers TEXT
) STRICT, WITHOUT ROWID;


CREATE TABLE meta (
  key TEXT PRIMARY KEY,
  value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
