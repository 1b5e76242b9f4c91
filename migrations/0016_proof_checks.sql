-- What was found when a final file was held against the record. A check is never changed and never removed; a later
-- one of the same kind takes its place.

CREATE TABLE proof_check (
  id INTEGER PRIMARY KEY,
  format_id INTEGER NOT NULL REFERENCES format (id),
  kind TEXT NOT NULL CHECK (kind IN ('interior', 'cover', 'e-book', 'audio')),
  file_name TEXT NOT NULL CHECK (trim(file_name) <> ''),
  bytes INTEGER NOT NULL CHECK (bytes >= 0),
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64 AND sha256 NOT GLOB '*[^0-9a-f]*'),
  checked_on TEXT NOT NULL CHECK (checked_on IS date(checked_on)),
  rule_set INTEGER NOT NULL CHECK (rule_set >= 1),
  line_count INTEGER NOT NULL CHECK (line_count >= 1),
  -- what was read stands beside, outside the journal; its hash here binds it into the journal's chain
  facts_sha256 TEXT NOT NULL CHECK (length(facts_sha256) = 64 AND facts_sha256 NOT GLOB '*[^0-9a-f]*'),
  -- [{"page": 1, "sha256": "…"}]
  pictures TEXT NOT NULL CHECK (json_type(pictures) = 'array')
) STRICT;
CREATE INDEX proof_check_by_format ON proof_check (format_id, kind);
CREATE INDEX proof_check_by_file ON proof_check (sha256);

CREATE TABLE proof_check_line (
  id INTEGER PRIMARY KEY,
  check_id INTEGER NOT NULL REFERENCES proof_check (id),
  position INTEGER NOT NULL CHECK (position >= 1),
  rule TEXT NOT NULL CHECK (trim(rule) <> ''),
  label TEXT NOT NULL CHECK (trim(label) <> ''),
  state TEXT NOT NULL CHECK (state IN ('agreed', 'differs', 'not found', 'cannot tell')),
  expected TEXT NOT NULL DEFAULT '',
  found TEXT NOT NULL DEFAULT '',
  advice TEXT NOT NULL DEFAULT '',
  page INTEGER CHECK (page >= 1),
  -- {"xPt", "yPt", "widthPt", "heightPt"} on that page as it is shown
  box TEXT CHECK (json_type(box) = 'object'),
  UNIQUE (check_id, position)
) STRICT;

-- Why a line that differs is accepted: given once, shown for ever.
CREATE TABLE proof_check_reason (
  id INTEGER PRIMARY KEY,
  line_id INTEGER NOT NULL UNIQUE REFERENCES proof_check_line (id),
  check_id INTEGER NOT NULL REFERENCES proof_check (id),
  reason TEXT NOT NULL CHECK (trim(reason) <> ''),
  given_on TEXT NOT NULL CHECK (given_on IS date(given_on))
) STRICT;

-- What was read from the file, as JSON (src/contract/proof-checks/facts.ts).
CREATE TABLE proof_check_facts (
  check_id INTEGER PRIMARY KEY REFERENCES proof_check (id),
  facts TEXT NOT NULL CHECK (json_valid(facts))
) STRICT;

CREATE TABLE proof_check_picture (
  id INTEGER PRIMARY KEY,
  check_id INTEGER NOT NULL REFERENCES proof_check (id),
  page INTEGER NOT NULL CHECK (page >= 1),
  width_px INTEGER NOT NULL CHECK (width_px BETWEEN 1 AND 2000),
  height_px INTEGER NOT NULL CHECK (height_px BETWEEN 1 AND 2000),
  png BLOB NOT NULL CHECK (length(png) BETWEEN 1 AND 4000000),
  UNIQUE (check_id, page)
) STRICT;

CREATE TRIGGER proof_check_stays BEFORE UPDATE ON proof_check
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a check of a file is never changed; check the file again instead.'); END;
CREATE TRIGGER proof_check_kept BEFORE DELETE ON proof_check
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a check of a file is kept for the record.'); END;
CREATE TRIGGER proof_check_line_stays BEFORE UPDATE ON proof_check_line
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a check of a file is never changed; check the file again instead.'); END;
CREATE TRIGGER proof_check_line_kept BEFORE DELETE ON proof_check_line
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a check of a file is kept for the record.'); END;
CREATE TRIGGER proof_check_reason_stays BEFORE UPDATE ON proof_check_reason
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a reason that was given is never changed.'); END;
CREATE TRIGGER proof_check_reason_kept BEFORE DELETE ON proof_check_reason
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a reason that was given is kept for the record.'); END;
CREATE TRIGGER proof_check_facts_stay BEFORE UPDATE ON proof_check_facts
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what was read from a file is never changed.'); END;
CREATE TRIGGER proof_check_facts_kept BEFORE DELETE ON proof_check_facts
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what was read from a file is kept for the record.'); END;
CREATE TRIGGER proof_check_picture_stays BEFORE UPDATE ON proof_check_picture
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what was read from a file is never changed.'); END;
CREATE TRIGGER proof_check_picture_kept BEFORE DELETE ON proof_check_picture
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what was read from a file is kept for the record.'); END;

-- Both stand outside the journal, so nothing else guards their keys against OR REPLACE, nor their references.
CREATE TRIGGER proof_check_facts_once BEFORE INSERT ON proof_check_facts
WHEN EXISTS (SELECT 1 FROM proof_check_facts f WHERE f.check_id = NEW.check_id)
BEGIN SELECT RAISE(ABORT, 'ALREADY_EXISTS: what was read from this file is kept already.'); END;
CREATE TRIGGER proof_check_facts_belong BEFORE INSERT ON proof_check_facts
WHEN NOT EXISTS (SELECT 1 FROM proof_check c WHERE c.id = NEW.check_id)
BEGIN SELECT RAISE(ABORT, 'NOT_FOUND: what was read belongs to a check.'); END;
CREATE TRIGGER proof_check_picture_once BEFORE INSERT ON proof_check_picture
WHEN EXISTS (SELECT 1 FROM proof_check_picture p
  WHERE p.id = NEW.id OR (p.check_id = NEW.check_id AND p.page = NEW.page))
BEGIN SELECT RAISE(ABORT, 'ALREADY_EXISTS: a picture of this page is kept already.'); END;
CREATE TRIGGER proof_check_picture_belongs BEFORE INSERT ON proof_check_picture
WHEN NOT EXISTS (SELECT 1 FROM proof_check c JOIN json_each(c.pictures) j
  WHERE c.id = NEW.check_id AND j.value ->> 'page' = NEW.page)
BEGIN SELECT RAISE(ABORT, 'NOT_FOUND: a picture belongs to a check that tells of it.'); END;

CREATE TRIGGER proof_check_of_running_format BEFORE INSERT ON proof_check
WHEN (SELECT standing FROM format_standing WHERE format_id = NEW.format_id) IN ('retired', 'cancelled')
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired or cancelled format can be read for ever and changed never.'); END;

CREATE TRIGGER proof_check_line_within BEFORE INSERT ON proof_check_line
WHEN NEW.position > (SELECT line_count FROM proof_check WHERE id = NEW.check_id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a check has the lines that it was kept with and no more.'); END;

CREATE TRIGGER proof_check_reason_fits BEFORE INSERT ON proof_check_reason
WHEN NOT EXISTS (SELECT 1 FROM proof_check_line l
  WHERE l.id = NEW.line_id AND l.check_id = NEW.check_id AND l.state = 'differs')
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a reason is given for a line of a check that differs.'); END;

-- The check that counts for a kind of file: the newest of the final file in force, or, where none is recorded with
-- its hash, the newest of all.
CREATE VIEW proof_check_in_force AS
SELECT max(c.id) AS id, c.format_id, c.kind FROM proof_check c
LEFT JOIN format_file f ON f.format_id = c.format_id AND f.kind = c.kind AND f.ended_on IS NULL
WHERE f.sha256 IS NULL OR f.sha256 = c.sha256
GROUP BY c.format_id, c.kind;

-- What differs in a check in force and has no reason.
CREATE VIEW proof_check_open AS
SELECT l.id AS line_id, l.check_id, l.label, l.position, i.format_id, i.kind FROM proof_check_in_force i
JOIN proof_check_line l ON l.check_id = i.id AND l.state = 'differs'
WHERE NOT EXISTS (SELECT 1 FROM proof_check_reason r WHERE r.line_id = l.id);

CREATE TRIGGER step_needs_agreeing_files BEFORE INSERT ON listing_step
WHEN NEW.to_standing = 'cleared' AND EXISTS (
  SELECT 1 FROM listing l JOIN proof_check_open o ON o.format_id = l.format_id WHERE l.id = NEW.listing_id)
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a check of its final files differs from the record; mend the file or the record and check again, or give the reason.'); END;
