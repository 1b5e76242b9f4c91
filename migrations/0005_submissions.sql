-- What a channel asks for when a format is submitted to it, and what was sent each time.

ALTER TABLE channel ADD COLUMN title_limit INTEGER CHECK (title_limit >= 0);
ALTER TABLE channel ADD COLUMN subtitle_limit INTEGER CHECK (subtitle_limit >= 0);
ALTER TABLE channel ADD COLUMN description_markup TEXT NOT NULL DEFAULT 'any'
  CHECK (description_markup IN ('none', 'simple HTML', 'any'));
-- What its form asks for, in its order, a JSON list; empty: everything, in the usual order.
ALTER TABLE channel ADD COLUMN sheet_items TEXT NOT NULL DEFAULT '[]' CHECK (json_type(sheet_items) = 'array');

-- One row a submission: the whole sheet as it stood. Without a step it tells of changes sent later.
CREATE TABLE submission (
  id INTEGER PRIMARY KEY,
  listing_id INTEGER NOT NULL REFERENCES listing (id),
  step_id INTEGER UNIQUE REFERENCES listing_step (id),
  on_date TEXT NOT NULL CHECK (on_date IS date(on_date)),
  -- the day on which the sheet stood so in this catalogue
  taken_on TEXT NOT NULL CHECK (taken_on IS date(taken_on)),
  sheet TEXT NOT NULL CHECK (json_valid(sheet) AND json_type(sheet, '$.items') = 'array'),
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX submission_by_listing ON submission (listing_id, id);

-- A sheet is stamped together with its step, never added to a step long past.
CREATE TRIGGER submission_with_its_step BEFORE INSERT ON submission
WHEN NEW.step_id IS NOT NULL AND NEW.step_id IS NOT (
  SELECT s.id FROM listing_step s
  WHERE s.listing_id = NEW.listing_id AND s.to_standing = 'sent' AND s.on_date = NEW.on_date
    AND s.id = (SELECT max(id) FROM listing_step WHERE listing_id = NEW.listing_id))
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a sheet is stamped when its listing is sent, on that day.'); END;

CREATE TRIGGER submission_of_sent_listing BEFORE INSERT ON submission
WHEN NEW.step_id IS NULL AND EXISTS (
  SELECT 1 FROM listing l WHERE l.id = NEW.listing_id
    AND (l.standing IN ('unsent', 'gone') OR NEW.on_date < l.first_sent_on))
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: changes are sent to a channel that has the listing, after it was first sent.'); END;

CREATE TRIGGER submission_stays BEFORE UPDATE ON submission
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what was sent is never changed.'); END;
CREATE TRIGGER submission_kept BEFORE DELETE ON submission
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what was sent is never removed.'); END;
