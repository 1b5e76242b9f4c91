-- Invariants that no code path may break. The word before the colon is a refusal code of the contract; the
-- commands refuse earlier with a fuller sentence, these triggers are the backstop.

-- A format's standing follows from its listings; it is never typed in beside them.
CREATE VIEW format_standing AS
SELECT
  f.id AS format_id,
  CASE WHEN f.cancelled_on IS NOT NULL THEN 'cancelled' ELSE (
    SELECT CASE
      WHEN sum(l.standing = 'gone') > 0
        AND sum(l.standing IN ('sent', 'proof', 'cleared', 'selling', 'leaving')) = 0 THEN 'retired'
      WHEN sum(l.standing = 'leaving') > 0 AND sum(l.standing = 'selling') = 0 THEN 'retiring'
      WHEN sum(l.standing = 'selling') > 0 AND sum(l.standing IN ('leaving', 'gone')) > 0 AND EXISTS (
        SELECT 1 FROM plan p
        WHERE p.edition_id = f.edition_id AND p.kind = 'retirement' AND p.dropped_on IS NULL) THEN 'retiring'
      WHEN sum(l.standing = 'selling') > 0 THEN 'live'
      WHEN sum(l.standing IN ('proof', 'cleared')) > 0 THEN 'proofing'
      WHEN sum(l.first_sent_on IS NOT NULL) > 0 THEN 'committed'
      ELSE 'planned'
    END
    -- One format's own listings only, so that asking for one standing reads no other format.
    FROM listing l WHERE l.format_id = f.id
  ) END AS standing
FROM format f;

-- Number blocks ---------------------------------------------------------------------------------------

CREATE TRIGGER block_overlap BEFORE INSERT ON number_block
WHEN EXISTS (SELECT 1 FROM number_block b
  WHERE b.digits = substr(NEW.digits, 1, length(b.digits)) OR NEW.digits = substr(b.digits, 1, length(NEW.digits)))
BEGIN SELECT RAISE(ABORT, 'BLOCK_OVERLAP: this block shares numbers with a block already recorded.'); END;

CREATE TRIGGER block_digits_stay BEFORE UPDATE OF id, digits ON number_block
WHEN OLD.digits <> NEW.digits OR OLD.id <> NEW.id
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: the digits of a recorded block cannot change.'); END;

-- Numbers: free (no row) → reserved → assigned; or spent. Never backwards from assigned, never out of spent.

CREATE TRIGGER number_in_its_block BEFORE INSERT ON number
WHEN NEW.block_id IS NOT (SELECT b.id FROM number_block b WHERE b.digits = substr(NEW.isbn13, 1, length(b.digits)))
  OR NEW.block_index IS NOT (SELECT CAST(substr(NEW.isbn13, 1 + length(b.digits), b.publication_digits) AS INTEGER)
    FROM number_block b WHERE b.id = NEW.block_id)
BEGIN SELECT RAISE(ABORT, 'NUMBER_OUTSIDE_BLOCKS: this number does not belong to the block it is recorded under.'); END;

CREATE TRIGGER number_kept BEFORE DELETE ON number
WHEN OLD.standing <> 'reserved'
BEGIN SELECT RAISE(ABORT, 'NUMBER_SPENT: an assigned or spent number can never be freed.'); END;

-- A block recorded later takes in the numbers that were recorded before it, spent ones too.
CREATE TRIGGER number_spent_for_ever BEFORE UPDATE ON number
WHEN OLD.spent_on IS NOT NULL AND (OLD.block_id IS NOT NULL OR NEW.block_id IS NULL
  OR NEW.spent_on IS NOT OLD.spent_on OR NEW.spent_reason IS NOT OLD.spent_reason
  OR NEW.format_id IS NOT OLD.format_id OR NEW.assigned_on IS NOT OLD.assigned_on
  OR NEW.reserved_on IS NOT OLD.reserved_on OR NEW.reserved_for IS NOT OLD.reserved_for)
BEGIN SELECT RAISE(ABORT, 'NUMBER_SPENT: a spent number can never be changed.'); END;

CREATE TRIGGER number_digits_stay BEFORE UPDATE OF isbn13, block_id, block_index ON number
WHEN OLD.isbn13 <> NEW.isbn13
  OR (OLD.block_id IS NOT NULL AND (OLD.block_id IS NOT NEW.block_id OR OLD.block_index IS NOT NEW.block_index))
  OR (NEW.block_id IS NOT NULL
    AND NEW.block_index IS NOT (SELECT CAST(substr(NEW.isbn13, 1 + length(b.digits), b.publication_digits) AS INTEGER)
      FROM number_block b WHERE b.id = NEW.block_id AND b.digits = substr(NEW.isbn13, 1, length(b.digits))))
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: the digits and the block of a recorded number cannot change.'); END;

CREATE TRIGGER number_stays_assigned BEFORE UPDATE ON number
WHEN OLD.assigned_on IS NOT NULL AND (NEW.format_id IS NOT OLD.format_id OR NEW.assigned_on IS NOT OLD.assigned_on)
BEGIN SELECT RAISE(ABORT, 'NUMBER_TAKEN: an assigned number stays with its format.'); END;

CREATE TRIGGER number_of_sent_format BEFORE UPDATE OF spent_on ON number
WHEN NEW.spent_on IS NOT NULL AND EXISTS (
  SELECT 1 FROM listing l JOIN format f ON f.id = l.format_id
  WHERE l.format_id = OLD.format_id AND l.first_sent_on IS NOT NULL AND f.cancelled_on IS NULL)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: this number was submitted to a channel; cancel or retire its format instead.'); END;

-- A number is given to a format that takes one, and spent only later: no format gets a past it did not have.
CREATE TRIGGER number_added_alive BEFORE INSERT ON number
WHEN NEW.format_id IS NOT NULL AND (NEW.spent_on IS NOT NULL
  OR EXISTS (SELECT 1 FROM format f WHERE f.id = NEW.format_id AND f.cancelled_on IS NOT NULL))
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a cancelled format takes no number, and no format a spent one.'); END;

CREATE TRIGGER number_given_alive BEFORE UPDATE OF format_id ON number
WHEN OLD.format_id IS NULL AND NEW.format_id IS NOT NULL AND (NEW.spent_on IS NOT NULL
  OR EXISTS (SELECT 1 FROM format f WHERE f.id = NEW.format_id AND f.cancelled_on IS NOT NULL))
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a cancelled format takes no number, and no format a spent one.'); END;

-- Runs of taken numbers follow the numbers: a new number joins the run before it and the run after it, a
-- released one splits its run. Each touches at most three rows, however many are taken.

CREATE VIEW number_run_place AS SELECT block_id, first_index AS place FROM number_run;

CREATE TRIGGER run_joins INSTEAD OF INSERT ON number_run_place
BEGIN
  INSERT OR REPLACE INTO number_run (block_id, first_index, last_index) VALUES (
    NEW.block_id,
    coalesce((SELECT first_index FROM number_run WHERE block_id = NEW.block_id AND last_index = NEW.place - 1), NEW.place),
    coalesce((SELECT last_index FROM number_run WHERE block_id = NEW.block_id AND first_index = NEW.place + 1), NEW.place));
  DELETE FROM number_run WHERE block_id = NEW.block_id AND first_index = NEW.place + 1;
END;

CREATE TRIGGER run_of_new_number AFTER INSERT ON number WHEN NEW.block_id IS NOT NULL
BEGIN INSERT INTO number_run_place (block_id, place) VALUES (NEW.block_id, NEW.block_index); END;

CREATE TRIGGER run_of_adopted_number AFTER UPDATE OF block_id ON number WHEN OLD.block_id IS NULL AND NEW.block_id IS NOT NULL
BEGIN INSERT INTO number_run_place (block_id, place) VALUES (NEW.block_id, NEW.block_index); END;

CREATE TRIGGER run_splits AFTER DELETE ON number WHEN OLD.block_id IS NOT NULL
BEGIN
  INSERT INTO number_run (block_id, first_index, last_index)
    SELECT r.block_id, OLD.block_index + 1, r.last_index FROM number_run r
    WHERE r.block_id = OLD.block_id AND r.last_index > OLD.block_index AND r.first_index = (
      SELECT max(first_index) FROM number_run WHERE block_id = OLD.block_id AND first_index <= OLD.block_index);
  UPDATE number_run SET last_index = OLD.block_index - 1
    WHERE block_id = OLD.block_id AND first_index < OLD.block_index AND last_index >= OLD.block_index;
  DELETE FROM number_run WHERE block_id = OLD.block_id AND first_index = OLD.block_index;
END;

CREATE TRIGGER tally_of_block AFTER INSERT ON number_block
BEGIN INSERT INTO number_tally (block_id) VALUES (NEW.id); END;

CREATE TRIGGER tally_leaves BEFORE DELETE ON number_block
BEGIN DELETE FROM number_tally WHERE block_id = OLD.id; END;

CREATE TRIGGER tally_grows AFTER INSERT ON number WHEN NEW.block_id IS NOT NULL
BEGIN
  UPDATE number_tally SET reserved = reserved + (NEW.standing = 'reserved'),
    assigned = assigned + (NEW.standing = 'assigned'), spent = spent + (NEW.standing = 'spent')
  WHERE block_id = NEW.block_id;
END;

CREATE TRIGGER tally_follows AFTER UPDATE ON number WHEN NEW.block_id IS NOT NULL
BEGIN
  UPDATE number_tally SET
    reserved = reserved + (NEW.standing = 'reserved') - (OLD.block_id IS NOT NULL AND OLD.standing = 'reserved'),
    assigned = assigned + (NEW.standing = 'assigned') - (OLD.block_id IS NOT NULL AND OLD.standing = 'assigned'),
    spent = spent + (NEW.standing = 'spent') - (OLD.block_id IS NOT NULL AND OLD.standing = 'spent')
  WHERE block_id = NEW.block_id;
END;

CREATE TRIGGER tally_shrinks AFTER DELETE ON number WHEN OLD.block_id IS NOT NULL
BEGIN UPDATE number_tally SET reserved = reserved - 1 WHERE block_id = OLD.block_id; END;

-- Listings ---------------------------------------------------------------------------------------------

CREATE TRIGGER listing_starts_unsent BEFORE INSERT ON listing
WHEN NEW.standing <> 'unsent' OR NEW.first_sent_on IS NOT NULL OR NEW.first_cleared_on IS NOT NULL OR NEW.last_step_on IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a new listing starts unsent.'); END;

CREATE TRIGGER listing_not_for_ended_format BEFORE INSERT ON listing
WHEN (SELECT standing FROM format_standing WHERE format_id = NEW.format_id) IN ('retired', 'cancelled')
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a retired or cancelled format takes no new listing.'); END;

CREATE TRIGGER listing_kept BEFORE DELETE ON listing
WHEN OLD.first_sent_on IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a listing that was once sent is kept.'); END;

CREATE TRIGGER listing_place_stays BEFORE UPDATE OF id, format_id, channel_id ON listing
WHEN OLD.id <> NEW.id OR OLD.format_id <> NEW.format_id OR OLD.channel_id <> NEW.channel_id
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a listing stays with its format and channel.'); END;

CREATE TRIGGER listing_standing_follows_steps BEFORE UPDATE OF standing, first_sent_on, first_cleared_on, last_step_on ON listing
WHEN NEW.standing IS NOT (SELECT to_standing FROM listing_step WHERE listing_id = OLD.id ORDER BY id DESC LIMIT 1)
  OR NEW.last_step_on IS NOT (SELECT on_date FROM listing_step WHERE listing_id = OLD.id ORDER BY id DESC LIMIT 1)
  OR NEW.first_sent_on IS NOT (SELECT min(on_date) FROM listing_step WHERE listing_id = OLD.id AND to_standing = 'sent')
  OR NEW.first_cleared_on IS NOT (SELECT min(on_date) FROM listing_step WHERE listing_id = OLD.id AND to_standing = 'cleared')
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a listing moves by a recorded step only.'); END;

CREATE TRIGGER step_allowed BEFORE INSERT ON listing_step
WHEN NEW.from_standing IS NOT (SELECT standing FROM listing WHERE id = NEW.listing_id)
  OR (NEW.from_standing || '>' || NEW.to_standing) NOT IN ('unsent>sent', 'sent>proof', 'proof>cleared',
    'cleared>selling', 'selling>leaving', 'leaving>gone', 'leaving>selling',
    'sent>unsent', 'proof>unsent', 'cleared>unsent')
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: this listing cannot take that step from where it stands.'); END;

CREATE TRIGGER step_in_order_of_days BEFORE INSERT ON listing_step
WHEN NEW.on_date < (SELECT last_step_on FROM listing WHERE id = NEW.listing_id)
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a step cannot be dated before the step it follows.'); END;

CREATE TRIGGER step_needs_number BEFORE INSERT ON listing_step
WHEN NEW.to_standing = 'sent' AND NOT EXISTS (
  SELECT 1 FROM listing l JOIN number n ON n.format_id = l.format_id
  WHERE l.id = NEW.listing_id AND n.spent_on IS NULL)
BEGIN SELECT RAISE(ABORT, 'NOT_READY: this format has no number yet; take one before it is sent.'); END;

CREATE TRIGGER step_not_for_ended_format BEFORE INSERT ON listing_step
WHEN (SELECT fs.standing FROM listing l JOIN format_standing fs ON fs.format_id = l.format_id
  WHERE l.id = NEW.listing_id) IN ('retired', 'cancelled')
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a retired or cancelled format takes no further step.'); END;

CREATE TRIGGER step_moves_listing AFTER INSERT ON listing_step
BEGIN
  UPDATE listing SET
    standing = NEW.to_standing,
    last_step_on = NEW.on_date,
    first_sent_on = (SELECT min(on_date) FROM listing_step WHERE listing_id = NEW.listing_id AND to_standing = 'sent'),
    first_cleared_on = (SELECT min(on_date) FROM listing_step WHERE listing_id = NEW.listing_id AND to_standing = 'cleared')
  WHERE id = NEW.listing_id;
END;

CREATE TRIGGER step_stays BEFORE UPDATE ON listing_step
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a recorded step is never changed.'); END;
CREATE TRIGGER step_kept BEFORE DELETE ON listing_step
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a recorded step is never removed.'); END;

-- Cancelling a format spends its number in the same breath.

CREATE TRIGGER format_cancel_allowed BEFORE UPDATE OF cancelled_on ON format
WHEN NEW.cancelled_on IS NOT NULL AND EXISTS (
  SELECT 1 FROM listing l WHERE l.format_id = OLD.id AND l.standing <> 'unsent')
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: take every listing back before the format is cancelled; a format once live is retired instead.'); END;

CREATE TRIGGER format_cancel_spends AFTER UPDATE OF cancelled_on ON format
WHEN NEW.cancelled_on IS NOT NULL AND OLD.cancelled_on IS NULL
BEGIN
  UPDATE number SET spent_on = NEW.cancelled_on, spent_reason = NEW.cancel_reason
  WHERE format_id = NEW.id AND spent_on IS NULL;
END;

-- Tasks end once.

CREATE TRIGGER task_ends_once BEFORE UPDATE ON task
WHEN OLD.standing IN ('done', 'dropped')
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: this task has ended; make a new one if there is more to do.'); END;
CREATE TRIGGER task_kept BEFORE DELETE ON task
WHEN OLD.standing IN ('done', 'dropped')
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: an ended task is kept.'); END;
