
-- What the bot could read of who may come into a room and read there. NULL: not told; '?': told in words that cannot be read.
ALTER TABLE rooms ADD COLUMN kind TEXT;
ALTER TABLE rooms ADD COLUMN join_rule TEXT;
ALTER TABLE rooms ADD COLUMN history TEXT;
ALTER TABLE rooms ADD COLUMN guests TEXT;
-- Something that may matter could not be read at all.
ALTER TABLE rooms ADD COLUMN unreadable INTEGER NOT NULL DEFAULT 0 CHECK (unreadable IN (0, 1));
-- The room's whole state was read once. Rooms from before this are read anew.
ALTER TABLE rooms ADD COLUMN told INTEGER NOT NULL DEFAULT 0 CHECK (told IN (0, 1));


DROP VIEW seen;
CREATE TABLE memberships_now (
  room TEXT NOT NULL REFERENCES rooms (id),
  -- Beginning with '?': somebody without a name (forgotten by the bot, or invited by an address elsewhere).
  member TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('join', 'invite', 'leave', 'ban', 'knock', 'unknown')),
  name TEXT,
  may_change_room INTEGER NOT NULL DEFAULT 0 CHECK (may_change_room IN (0, 1)),
  -- The generation in which the member last came in: what was seen before is not seen again after coming back.
  since INTEGER NOT NULL DEFAULT 0,
  -- The event that told it, so that what is told again is known.
  event TEXT,
  PRIMARY KEY (room, member)
) STRICT, WITHOUT ROWID;
INSERT INTO memberships_now (room, member, state, name, may_change_room) SELECT room, member, state, name, may_change_room FROM memberships;
DROP TABLE memberships;
ALTER TABLE memberships_now RENAME TO memberships;
CREATE INDEX memberships_by_member ON memberships (member);


-- The generation of this sharing: shared again, a car is seen by another one.
ALTER TABLE shares ADD COLUMN generation INTEGER NOT NULL DEFAULT 0;
-- `sharing` rises whenever the right to see the car was lost and won again: by sharing, by the owner's and by the asker's coming in.
CREATE VIEW seen AS
SELECT asker.member AS asker, shares.room AS room, shares.car AS car, owner.member AS owner, owner.name AS owner_name,
  max(shares.generation, owner.since, asker.since) AS sharing
FROM shares
JOIN rooms ON rooms.id = shares.room AND rooms.left = 0
JOIN cars ON cars.id = shares.car
JOIN memberships AS owner ON owner.room = shares.room AND owner.member = cars.owner AND owner.state = 'join'
JOIN memberships AS asker ON asker.room = shares.room AND asker.member <> cars.owner AND asker.state = 'join';


-- The clubmates' cars that an answer was worked out from, each with the sharing by which it was seen.
ALTER TABLE conversations ADD COLUMN seen TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(seen));
-- Of lines from before this it is not known what they were worked out from, but for those of direct chats, where no clubmate's car is seen.
UPDATE conversations SET rest = '[]' WHERE room NOT IN (SELECT id FROM rooms WHERE direct = 1);


-- What must still be so when it is sent, and what is said in its place when it is not.
ALTER TABLE outbox ADD COLUMN rights TEXT CHECK (json_valid(rights));
ALTER TABLE outbox ADD COLUMN instead TEXT CHECK (json_valid(instead));
-- A member's data that was on its way to a room which nobody has looked at closely enough.
UPDATE outbox SET state = 'refused', error = 'asked for before rooms were looked at', content = NULL, fallback = NULL, file = NULL
WHERE part = 1 AND state IN ('ready', 'trying');
