-- Taking a replaced edition off sale: what channels promised, copies left, returns, the agency's record; and
-- the rest of what never changes once a format or edition has ended.

-- What happened between asking and gone. When it was asked and when it was gone are steps of the listing.
CREATE TABLE removal_event (
  id INTEGER PRIMARY KEY,
  listing_id INTEGER NOT NULL REFERENCES listing (id),
  kind TEXT NOT NULL CHECK (kind IN ('promised', 'chased')),
  on_date TEXT NOT NULL CHECK (on_date IS date(on_date)),
  promised_by TEXT CHECK (promised_by IS date(promised_by)),
  note TEXT NOT NULL DEFAULT '',
  CHECK ((kind = 'promised') = (promised_by IS NOT NULL)),
  CHECK (promised_by IS NULL OR promised_by >= on_date)
) STRICT;
CREATE INDEX removal_event_by_listing ON removal_event (listing_id, id);

CREATE TRIGGER removal_event_while_leaving BEFORE INSERT ON removal_event
WHEN NOT EXISTS (SELECT 1 FROM listing l
  WHERE l.id = NEW.listing_id AND l.standing = 'leaving' AND l.last_step_on <= NEW.on_date)
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a channel promises and is chased between asking and gone.'); END;
CREATE TRIGGER removal_event_stays BEFORE UPDATE ON removal_event
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what a channel promised is never changed.'); END;
CREATE TRIGGER removal_event_kept BEFORE DELETE ON removal_event
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what a channel promised is never removed.'); END;

-- Last date for returns (ONIX List 166, code 18). It stays open after the listing is gone: copies still come back.
CREATE TABLE returns_window (
  id INTEGER PRIMARY KEY,
  listing_id INTEGER NOT NULL UNIQUE REFERENCES listing (id),
  until TEXT NOT NULL CHECK (until IS date(until)),
  note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TRIGGER returns_of_returnable BEFORE INSERT ON returns_window
WHEN NOT EXISTS (SELECT 1 FROM listing l WHERE l.id = NEW.listing_id
  AND l.returns IN ('Y', 'C', 'S') AND l.standing IN ('selling', 'leaving', 'gone'))
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: only what was sold returnable comes back.'); END;
CREATE TRIGGER returns_stay_there BEFORE UPDATE ON returns_window WHEN OLD.listing_id <> NEW.listing_id
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a last date for returns stays with its listing.'); END;
CREATE TRIGGER returns_kept BEFORE DELETE ON returns_window
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a last date for returns is kept; give it another day.'); END;

-- Copies counted at a place; the newest count of a place holds. It goes on after the format has ended.
CREATE TABLE stock_count (
  id INTEGER PRIMARY KEY,
  format_id INTEGER NOT NULL REFERENCES format (id),
  place TEXT NOT NULL CHECK (trim(place) <> ''),
  copies INTEGER NOT NULL CHECK (copies >= 0),
  counted_on TEXT NOT NULL CHECK (counted_on IS date(counted_on)),
  fate TEXT NOT NULL DEFAULT 'undecided'
    CHECK (fate IN ('undecided', 'sell off', 'give away', 'keep', 'recycle')),
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX stock_count_by_format ON stock_count (format_id, place, id);

CREATE TRIGGER stock_count_stays BEFORE UPDATE ON stock_count
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a count is never changed; count again.'); END;
CREATE TRIGGER stock_count_kept BEFORE DELETE ON stock_count
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a count is never removed; count again.'); END;

-- The day on which a number was set to out of print in the agency's record.
CREATE TABLE agency_record (
  id INTEGER PRIMARY KEY,
  format_id INTEGER NOT NULL UNIQUE REFERENCES format (id),
  out_of_print_on TEXT NOT NULL CHECK (out_of_print_on IS date(out_of_print_on)),
  note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TRIGGER agency_record_of_sold BEFORE INSERT ON agency_record
WHEN (SELECT standing FROM format_standing WHERE format_id = NEW.format_id) NOT IN ('live', 'retiring', 'retired')
  OR EXISTS (SELECT 1 FROM listing l WHERE l.format_id = NEW.format_id AND l.standing = 'selling')
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: out of print is what no channel is selling any more.'); END;
CREATE TRIGGER agency_record_stays BEFORE UPDATE ON agency_record
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what was reported to the agency is never changed.'); END;
CREATE TRIGGER agency_record_kept BEFORE DELETE ON agency_record
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what was reported to the agency is never removed.'); END;

-- An edition has ended when its formats have, at least one of them retired. Then nothing of it changes, but that
-- it may still be linked to the edition it replaced.

CREATE VIEW edition_ended AS
SELECT f.edition_id FROM format f JOIN format_standing s ON s.format_id = f.id
GROUP BY f.edition_id
HAVING sum(s.standing = 'retired') > 0 AND sum(s.standing NOT IN ('retired', 'cancelled')) = 0;

CREATE TRIGGER ended_edition_stays BEFORE UPDATE ON edition
WHEN EXISTS (SELECT 1 FROM edition_ended x WHERE x.edition_id = OLD.id) AND (
  OLD.work_id IS NOT NEW.work_id OR OLD.number IS NOT NEW.number OR OLD.statement IS NOT NEW.statement
  OR OLD.title IS NOT NEW.title OR OLD.subtitle IS NOT NEW.subtitle OR OLD.language IS NOT NEW.language
  OR OLD.imprint IS NOT NEW.imprint OR OLD.series IS NOT NEW.series OR OLD.series_number IS NOT NEW.series_number
  OR OLD.description IS NOT NEW.description OR OLD.audience IS NOT NEW.audience
  OR OLD.age_from IS NOT NEW.age_from OR OLD.age_to IS NOT NEW.age_to
  OR (OLD.replaces_id IS NOT NULL AND OLD.replaces_id IS NOT NEW.replaces_id))
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired edition can be read for ever and changed never.'); END;

CREATE TRIGGER ended_edition_contributor_added BEFORE INSERT ON edition_contributor
WHEN EXISTS (SELECT 1 FROM edition_ended x WHERE x.edition_id = NEW.edition_id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired edition can be read for ever and changed never.'); END;
CREATE TRIGGER ended_edition_contributor_changed BEFORE UPDATE ON edition_contributor
WHEN EXISTS (SELECT 1 FROM edition_ended x WHERE x.edition_id IN (OLD.edition_id, NEW.edition_id))
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired edition can be read for ever and changed never.'); END;
CREATE TRIGGER ended_edition_contributor_removed BEFORE DELETE ON edition_contributor
WHEN EXISTS (SELECT 1 FROM edition_ended x WHERE x.edition_id = OLD.edition_id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired edition can be read for ever and changed never.'); END;

CREATE TRIGGER ended_edition_subject_added BEFORE INSERT ON edition_subject
WHEN EXISTS (SELECT 1 FROM edition_ended x WHERE x.edition_id = NEW.edition_id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired edition can be read for ever and changed never.'); END;
CREATE TRIGGER ended_edition_subject_changed BEFORE UPDATE ON edition_subject
WHEN EXISTS (SELECT 1 FROM edition_ended x WHERE x.edition_id IN (OLD.edition_id, NEW.edition_id))
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired edition can be read for ever and changed never.'); END;
CREATE TRIGGER ended_edition_subject_removed BEFORE DELETE ON edition_subject
WHEN EXISTS (SELECT 1 FROM edition_ended x WHERE x.edition_id = OLD.edition_id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired edition can be read for ever and changed never.'); END;

CREATE TRIGGER ended_edition_keyword_added BEFORE INSERT ON edition_keyword
WHEN EXISTS (SELECT 1 FROM edition_ended x WHERE x.edition_id = NEW.edition_id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired edition can be read for ever and changed never.'); END;
CREATE TRIGGER ended_edition_keyword_changed BEFORE UPDATE ON edition_keyword
WHEN EXISTS (SELECT 1 FROM edition_ended x WHERE x.edition_id IN (OLD.edition_id, NEW.edition_id))
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired edition can be read for ever and changed never.'); END;
CREATE TRIGGER ended_edition_keyword_removed BEFORE DELETE ON edition_keyword
WHEN EXISTS (SELECT 1 FROM edition_ended x WHERE x.edition_id = OLD.edition_id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired edition can be read for ever and changed never.'); END;

CREATE TRIGGER listing_of_ended_format_stays BEFORE UPDATE ON listing
WHEN (SELECT standing FROM format_standing WHERE format_id = OLD.format_id) IN ('retired', 'cancelled')
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired or cancelled format can be read for ever and changed never.'); END;

CREATE TRIGGER listing_of_retired_format_kept BEFORE DELETE ON listing
WHEN (SELECT standing FROM format_standing WHERE format_id = OLD.format_id) = 'retired'
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired format can be read for ever and changed never.'); END;

-- An edition that is linked later to the one it replaces belongs to the same work, and editions replace each
-- other in a line, never in a ring.
CREATE TRIGGER edition_linked_in_line BEFORE UPDATE OF replaces_id ON edition
WHEN NEW.replaces_id IS NOT NULL AND NEW.replaces_id IS NOT OLD.replaces_id AND (
  OLD.replaces_id IS NOT NULL
  OR NEW.work_id IS NOT (SELECT work_id FROM edition WHERE id = NEW.replaces_id)
  OR OLD.id IN (
    WITH RECURSIVE before (id) AS (
      SELECT NEW.replaces_id
      UNION SELECT e.replaces_id FROM edition e JOIN before b ON e.id = b.id WHERE e.replaces_id IS NOT NULL)
    SELECT id FROM before))
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: an edition replaces one other edition of its work, in a line.'); END;
