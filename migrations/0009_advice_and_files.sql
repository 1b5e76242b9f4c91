-- Why an edition took new numbers or kept them, as it was stated and answered that day; and the final files of
-- a format. Both are added to, never rewritten.

CREATE TABLE edition_advice (
  id INTEGER PRIMARY KEY,
  edition_id INTEGER NOT NULL REFERENCES edition (id),
  made_on TEXT NOT NULL CHECK (made_on IS date(made_on)),
  verdict TEXT NOT NULL CHECK (verdict IN ('new', 'judge', 'same', 'mixed')),
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX edition_advice_by_edition ON edition_advice (edition_id);

-- Rule and source are kept as they were worded that day.
CREATE TABLE edition_advice_line (
  id INTEGER PRIMARY KEY,
  advice_id INTEGER NOT NULL REFERENCES edition_advice (id),
  position INTEGER NOT NULL CHECK (position >= 1),
  format_name TEXT NOT NULL CHECK (trim(format_name) <> ''),
  change TEXT NOT NULL CHECK (trim(change) <> ''),
  detail TEXT NOT NULL DEFAULT '',
  told TEXT NOT NULL CHECK (told IN ('stated', 'record')),
  verdict TEXT NOT NULL CHECK (verdict IN ('new', 'judge', 'same')),
  rule TEXT NOT NULL CHECK (trim(rule) <> ''),
  source TEXT NOT NULL CHECK (trim(source) <> ''),
  UNIQUE (advice_id, position)
) STRICT;

CREATE TRIGGER advice_stays BEFORE UPDATE ON edition_advice
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what was answered on an edition is never changed; ask again instead.'); END;
CREATE TRIGGER advice_line_stays BEFORE UPDATE ON edition_advice_line
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what was answered on an edition is never changed; ask again instead.'); END;

-- Once something of the edition was sent since, the reasons for its numbers are history.
CREATE VIEW advice_in_force AS
SELECT a.id FROM edition_advice a
WHERE EXISTS (SELECT 1 FROM listing l JOIN format f ON f.id = l.format_id
  WHERE f.edition_id = a.edition_id AND l.first_sent_on >= a.made_on);

CREATE TRIGGER advice_kept BEFORE DELETE ON edition_advice
WHEN EXISTS (SELECT 1 FROM advice_in_force a WHERE a.id = OLD.id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what was answered on an edition is kept once it was sent.'); END;
CREATE TRIGGER advice_line_kept BEFORE DELETE ON edition_advice_line
WHEN EXISTS (SELECT 1 FROM advice_in_force a WHERE a.id = OLD.advice_id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what was answered on an edition is kept once it was sent.'); END;

-- A final file of a format. One of a kind is in force; a revised one takes its place and the old one is kept.
CREATE TABLE format_file (
  id INTEGER PRIMARY KEY,
  format_id INTEGER NOT NULL REFERENCES format (id),
  kind TEXT NOT NULL CHECK (kind IN ('interior', 'cover', 'e-book', 'audio')),
  file_name TEXT NOT NULL CHECK (trim(file_name) <> ''),
  final_on TEXT NOT NULL CHECK (final_on IS date(final_on)),
  sha256 TEXT CHECK (length(sha256) = 64 AND sha256 NOT GLOB '*[^0-9a-f]*'),
  note TEXT NOT NULL DEFAULT '',
  ended_on TEXT CHECK (ended_on IS date(ended_on)),
  ended_how TEXT CHECK (ended_how IN ('replaced', 'withdrawn')),
  ended_reason TEXT NOT NULL DEFAULT '',
  CHECK ((ended_on IS NULL) = (ended_how IS NULL)),
  CHECK (ended_on IS NOT NULL OR ended_reason = ''),
  CHECK (ended_on >= final_on)
) STRICT;
CREATE UNIQUE INDEX format_file_in_force ON format_file (format_id, kind) WHERE ended_on IS NULL;
CREATE INDEX format_file_by_format ON format_file (format_id);

CREATE TRIGGER format_file_stays BEFORE UPDATE ON format_file
WHEN OLD.format_id <> NEW.format_id OR OLD.kind <> NEW.kind OR OLD.file_name <> NEW.file_name
  OR OLD.final_on <> NEW.final_on OR OLD.sha256 IS NOT NEW.sha256
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a recorded file stays as it was recorded; record the revised one beside it.'); END;

CREATE TRIGGER format_file_of_running_format BEFORE INSERT ON format_file
WHEN (SELECT standing FROM format_standing WHERE format_id = NEW.format_id) IN ('retired', 'cancelled')
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired or cancelled format can be read for ever and changed never.'); END;

CREATE TRIGGER format_file_of_ended_format BEFORE UPDATE ON format_file
WHEN (SELECT standing FROM format_standing WHERE format_id = OLD.format_id) IN ('retired', 'cancelled')
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired or cancelled format can be read for ever and changed never.'); END;

CREATE TRIGGER format_file_kept BEFORE DELETE ON format_file
WHEN OLD.ended_on IS NOT NULL OR EXISTS (
  SELECT 1 FROM listing l WHERE l.format_id = OLD.format_id AND l.first_sent_on >= OLD.final_on)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a file that was sent or superseded is kept for the record.'); END;
