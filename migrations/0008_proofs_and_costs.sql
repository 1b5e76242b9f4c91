-- Proof rounds of a listing with their outcome, and what bringing a format out has cost.

CREATE TABLE proof_round (
  id INTEGER PRIMARY KEY,
  listing_id INTEGER NOT NULL REFERENCES listing (id),
  on_date TEXT NOT NULL CHECK (on_date IS date(on_date)),
  proof TEXT NOT NULL CHECK (proof IN ('electronic', 'physical')),
  outcome TEXT NOT NULL
    CHECK (outcome IN ('clear for sale', 'clear for own orders', 'new file needed', 'channel error')),
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX proof_round_by_listing ON proof_round (listing_id, id);

-- A round is recorded after the steps it brings about: where the listing then stands tells whether it fits.
CREATE TRIGGER round_fits_standing BEFORE INSERT ON proof_round
WHEN NOT EXISTS (
  SELECT 1 FROM listing l WHERE l.id = NEW.listing_id AND l.last_step_on <= NEW.on_date AND CASE NEW.outcome
    WHEN 'clear for sale' THEN l.standing = 'cleared'
    WHEN 'clear for own orders' THEN l.standing = 'cleared'
    WHEN 'new file needed' THEN l.standing = 'unsent' AND (
      SELECT s.from_standing FROM listing_step s WHERE s.listing_id = l.id ORDER BY s.id DESC LIMIT 1)
      IN ('proof', 'cleared')
    ELSE l.standing IN ('proof', 'cleared') END)
  OR (SELECT fs.standing FROM listing l JOIN format_standing fs ON fs.format_id = l.format_id
    WHERE l.id = NEW.listing_id) IN ('retired', 'cancelled')
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: this outcome does not fit where the listing stands.'); END;

CREATE TRIGGER round_stays BEFORE UPDATE ON proof_round
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a recorded proof round is never changed.'); END;
CREATE TRIGGER round_kept BEFORE DELETE ON proof_round
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a recorded proof round is never removed.'); END;

CREATE TABLE cost (
  id INTEGER PRIMARY KEY,
  format_id INTEGER NOT NULL REFERENCES format (id),
  listing_id INTEGER REFERENCES listing (id),
  round_id INTEGER REFERENCES proof_round (id),
  kind TEXT NOT NULL CHECK (kind IN ('upload', 'revised file', 'proof copy', 'own copies', 'number', 'other')),
  amount_minor INTEGER NOT NULL CHECK (amount_minor >= 0),
  currency TEXT NOT NULL CHECK (currency GLOB '[A-Z][A-Z][A-Z]'),
  -- what was used up instead of money, such as a voucher for a free upload
  voucher TEXT NOT NULL DEFAULT '',
  on_date TEXT NOT NULL CHECK (on_date IS date(on_date)),
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX cost_by_format ON cost (format_id, on_date);

-- Since when a format has ended: from then on nothing of it changes.
CREATE VIEW format_end AS
SELECT f.id AS format_id, coalesce(f.cancelled_on, (
  SELECT max(st.on_date) FROM listing l JOIN listing_step st ON st.listing_id = l.id
  WHERE l.format_id = f.id AND st.to_standing = 'gone')) AS ended_on
FROM format f JOIN format_standing s ON s.format_id = f.id
WHERE s.standing IN ('retired', 'cancelled');

CREATE TRIGGER cost_in_its_place BEFORE INSERT ON cost
WHEN (NEW.listing_id IS NOT NULL AND NEW.format_id IS NOT (SELECT format_id FROM listing WHERE id = NEW.listing_id))
  OR (NEW.round_id IS NOT NULL AND NEW.listing_id IS NOT (SELECT listing_id FROM proof_round WHERE id = NEW.round_id))
BEGIN SELECT RAISE(ABORT, 'BAD_INPUT: a cost belongs to a listing of its own format.'); END;

CREATE TRIGGER cost_stays_there BEFORE UPDATE ON cost
WHEN OLD.format_id IS NOT NEW.format_id OR OLD.listing_id IS NOT NEW.listing_id OR OLD.round_id IS NOT NEW.round_id
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a cost stays with its format, listing and proof round.'); END;

-- Bills that come after a format has ended stay open; what is dated before is history.
CREATE TRIGGER cost_of_ended_format_added BEFORE INSERT ON cost
WHEN EXISTS (SELECT 1 FROM format_end e WHERE e.format_id = NEW.format_id AND NEW.on_date <= e.ended_on)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired or cancelled format takes only costs dated after its end.'); END;
CREATE TRIGGER cost_of_ended_format_changed BEFORE UPDATE ON cost
WHEN EXISTS (
  SELECT 1 FROM format_end e WHERE e.format_id = OLD.format_id AND min(OLD.on_date, NEW.on_date) <= e.ended_on)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired or cancelled format can be read for ever and changed never.'); END;
CREATE TRIGGER cost_of_ended_format_removed BEFORE DELETE ON cost
WHEN EXISTS (SELECT 1 FROM format_end e WHERE e.format_id = OLD.format_id AND OLD.on_date <= e.ended_on)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired or cancelled format can be read for ever and changed never.'); END;
