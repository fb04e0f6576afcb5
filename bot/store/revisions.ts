/** Revisions: a car's facts, one immutable moment after another. */
export const ddl = `
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
`;
