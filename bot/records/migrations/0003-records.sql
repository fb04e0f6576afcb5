-- Records of every kind that has no table of its own: a new kind needs no migration.
CREATE TABLE records (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  kind TEXT NOT NULL,
  -- Whose it is, or what it is about, as its kind says.
  member TEXT,
  car INTEGER REFERENCES cars (id) ON DELETE CASCADE,
  room TEXT,
  data TEXT NOT NULL CHECK (json_valid(data)),
  -- Who told it, when, in which event; null once that member is forgotten.
  at INTEGER,
  by TEXT,
  cause TEXT,
  -- What was typed; empty once it was redacted.
  text TEXT NOT NULL
) STRICT;
CREATE INDEX records_by_car ON records (car, kind, id) WHERE car IS NOT NULL;
CREATE INDEX records_by_member ON records (member, kind, id) WHERE member IS NOT NULL;
CREATE INDEX records_by_room ON records (room, kind, id) WHERE room IS NOT NULL;
CREATE INDEX records_by_kind ON records (kind, id);
CREATE INDEX records_by_cause ON records (cause) WHERE cause IS NOT NULL;

INSERT INTO records (id, kind, car, data, at, by, cause, text)
SELECT parts.id, 'part', parts.car, parts.part, parts.at, cars.owner, parts.cause, parts.line
FROM parts JOIN cars ON cars.id = parts.car ORDER BY parts.id;
-- A number is never used again: an old one never means another part.
INSERT INTO sqlite_sequence (name, seq)
SELECT 'records', seq FROM sqlite_sequence WHERE name = 'parts' AND NOT EXISTS (SELECT 1 FROM sqlite_sequence WHERE name = 'records');
UPDATE sqlite_sequence SET seq = (SELECT max(seq) FROM sqlite_sequence WHERE name IN ('parts', 'records')) WHERE name = 'records';
DROP TABLE parts;


-- The source of a fact was made of the words that told it: it becomes a number of its own, the same where it was the same,
-- and the fact says who told it, when, and in which event: those of the first revision that has it.
CREATE TABLE old_sources (id INTEGER PRIMARY KEY, source TEXT NOT NULL UNIQUE, revision INTEGER NOT NULL);
INSERT INTO old_sources (source, revision)
SELECT fact.value ->> 3, min(revisions.id) FROM revisions, json_each(revisions.facts) AS fact GROUP BY 1 ORDER BY 2;
DROP TRIGGER revisions_stay;
UPDATE revisions SET facts = (
  SELECT json_group_object(fact.key, json_array(
    json(fact.value -> 0), json(fact.value -> 1), json(fact.value -> 2), '#old' || old_sources.id, first.at, first.by, first.cause) ORDER BY fact.id)
  FROM json_each(revisions.facts) AS fact
  JOIN old_sources ON old_sources.source = fact.value ->> 3
  JOIN revisions AS first ON first.id = old_sources.revision);
DROP TABLE old_sources;
CREATE TRIGGER revisions_stay BEFORE UPDATE OF id, car, parent, at, by, facts, measured_in, undoes, cause, step ON revisions
BEGIN SELECT RAISE(ABORT, 'a revision is never altered'); END;


-- What each event changed, with what was before and after it: what an undo takes back.
CREATE TABLE journal (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  -- The event of the line that asked for it, and the event that made it: the line, or an edit of it.
  line TEXT NOT NULL,
  cause TEXT NOT NULL,
  member TEXT NOT NULL,
  at INTEGER NOT NULL,
  kind TEXT NOT NULL,
  -- Its number or its name, as JSON.
  record TEXT NOT NULL CHECK (json_valid(record)),
  car INTEGER REFERENCES cars (id) ON DELETE CASCADE,
  -- Null: it was not there.
  before TEXT CHECK (json_valid(before)),
  after TEXT CHECK (json_valid(after)),
  -- Made by taking something back.
  back INTEGER NOT NULL DEFAULT 0 CHECK (back IN (0, 1)),
  -- The line that took it back.
  undone TEXT
) STRICT;
CREATE INDEX journal_by_line ON journal (line);
CREATE INDEX journal_by_cause ON journal (cause);
CREATE INDEX journal_by_member ON journal (member, id);
CREATE INDEX journal_by_record ON journal (kind, record);
CREATE INDEX journal_by_car ON journal (car) WHERE car IS NOT NULL;
CREATE INDEX journal_by_undone ON journal (undone) WHERE undone IS NOT NULL;

-- The cars that were made, so that no undo goes further back than a car's beginning; then what was recorded of them.
INSERT INTO journal (line, cause, member, at, kind, record, car, before, after, back, undone)
SELECT r.cause, r.cause, r.by, r.at,
  CASE WHEN r.parent IS NULL THEN 'car' ELSE 'revision' END,
  CASE WHEN r.parent IS NULL THEN r.car ELSE r.id END,
  r.car,
  CASE WHEN r.parent IS NULL THEN NULL ELSE json_object(
    'of', json_object('car', r.car), 'text', '',
    'data', json_patch('{}', json_object('measuredIn', p.measured_in, 'facts', json((
      SELECT json_group_object(was.key, json(was.value) ORDER BY was.id) FROM json_each(p.facts) AS was
      WHERE (r.facts -> ('$."' || was.key || '"')) IS NOT was.value))))) END,
  json_object(
    'of', CASE WHEN r.parent IS NULL THEN json_object('member', r.by) ELSE json_object('car', r.car) END, 'text', '',
    'data', CASE WHEN r.parent IS NULL THEN json_object('name', cars.name, 'head', r.id) ELSE
      json_patch('{}', json_object('measuredIn', r.measured_in, 'facts', json((
        SELECT json_group_object(now.key, json(now.value) ORDER BY now.id) FROM json_each(r.facts) AS now
        WHERE (p.facts -> ('$."' || now.key || '"')) IS NOT now.value)))) END),
  r.undoes IS NOT NULL,
  (SELECT max(u.cause) FROM revisions AS u WHERE u.car = r.car AND u.undoes <= r.id AND u.id > r.id)
FROM revisions AS r JOIN cars ON cars.id = r.car LEFT JOIN revisions AS p ON p.id = r.parent
ORDER BY r.id;
