-- Findings of the audit that somebody accepted. A row names what was seen by its fingerprint, not by the records: a
-- finding comes back when its facts change, and records are removed without asking here. So work_id is no reference;
-- it lets the journal tell the acceptance with its work.
CREATE TABLE acceptance (
  id INTEGER PRIMARY KEY,
  fingerprint TEXT NOT NULL CHECK (trim(fingerprint) <> ''),
  rule TEXT NOT NULL CHECK (trim(rule) <> ''),
  message TEXT NOT NULL CHECK (trim(message) <> ''),
  work_id INTEGER,
  reason TEXT NOT NULL CHECK (trim(reason) <> ''),
  accepted_on TEXT NOT NULL CHECK (accepted_on IS date(accepted_on)),
  review_on TEXT NOT NULL CHECK (review_on IS date(review_on)),
  reopened_on TEXT CHECK (reopened_on IS date(reopened_on)),
  CHECK (review_on > accepted_on),
  CHECK (reopened_on >= accepted_on)
) STRICT;
CREATE UNIQUE INDEX acceptance_in_force ON acceptance (fingerprint) WHERE reopened_on IS NULL;

CREATE TRIGGER acceptance_stays BEFORE UPDATE ON acceptance
WHEN OLD.fingerprint <> NEW.fingerprint OR OLD.rule <> NEW.rule OR OLD.message <> NEW.message
  OR OLD.work_id IS NOT NEW.work_id OR OLD.reason <> NEW.reason OR OLD.accepted_on <> NEW.accepted_on
  OR OLD.review_on <> NEW.review_on
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what was accepted, why and until when stays as it was written.'); END;
