
CREATE TABLE parts (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  car INTEGER NOT NULL REFERENCES cars (id) ON DELETE CASCADE,
  at INTEGER NOT NULL,
  part TEXT NOT NULL CHECK (json_valid(part)),
  -- What was typed; empty once it was redacted.
  line TEXT NOT NULL,
  cause TEXT NOT NULL
) STRICT;
CREATE INDEX parts_by_car ON parts (car, id);
CREATE INDEX parts_by_cause ON parts (cause);
