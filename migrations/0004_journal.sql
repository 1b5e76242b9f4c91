-- The journal: one entry per changed row, written by triggers that the store derives from each table's own
-- columns (so no column can be forgotten and no writer can go round them), sealed with a chained hash when
-- the transaction ends. Entries are never changed after that and never removed.

CREATE TABLE journal (
  seq INTEGER PRIMARY KEY,
  entity TEXT NOT NULL,
  row_key TEXT NOT NULL,
  action TEXT NOT NULL CHECK (action IN ('added', 'changed', 'removed')),
  before TEXT CHECK (json_valid(before)),
  after TEXT CHECK (json_valid(after)),
  -- filled when sealed
  at TEXT,
  operation TEXT,
  command_seq INTEGER,
  work_id INTEGER,
  previous_hash TEXT,
  hash TEXT UNIQUE,
  CHECK ((before IS NULL) = (action = 'added')),
  CHECK ((after IS NULL) = (action = 'removed')),
  CHECK ((hash IS NULL) = (at IS NULL) AND (hash IS NULL) = (operation IS NULL)
    AND (hash IS NULL) = (previous_hash IS NULL) AND (hash IS NULL) = (command_seq IS NULL))
) STRICT;
CREATE INDEX journal_by_work ON journal (work_id, seq);
CREATE INDEX journal_by_row ON journal (entity, row_key, seq);
CREATE INDEX journal_by_time ON journal (at);
CREATE INDEX journal_by_command ON journal (command_seq);
CREATE INDEX journal_unsealed ON journal (seq) WHERE hash IS NULL;

CREATE TRIGGER journal_appends BEFORE INSERT ON journal
WHEN NEW.hash IS NOT NULL OR (NEW.seq > 0 AND NEW.seq <= (SELECT max(seq) FROM journal))
BEGIN SELECT RAISE(ABORT, 'READ_ONLY: the journal is only added to, in order.'); END;

CREATE TRIGGER journal_sealed BEFORE UPDATE ON journal
WHEN OLD.hash IS NOT NULL OR NEW.hash IS NULL OR OLD.seq <> NEW.seq OR OLD.entity <> NEW.entity
  OR OLD.row_key <> NEW.row_key OR OLD.action <> NEW.action OR OLD.before IS NOT NEW.before OR OLD.after IS NOT NEW.after
BEGIN SELECT RAISE(ABORT, 'READ_ONLY: a journal entry is never changed.'); END;

CREATE TRIGGER journal_kept BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'READ_ONLY: a journal entry is never removed.'); END;

-- OR REPLACE removes the row it clashes with unseen; no entry may be sealed with the hash of another.
CREATE TRIGGER journal_hash_once BEFORE UPDATE ON journal
WHEN EXISTS (SELECT 1 FROM journal o WHERE o.hash = NEW.hash AND o.seq <> OLD.seq)
BEGIN SELECT RAISE(ABORT, 'READ_ONLY: a journal entry is never removed.'); END;
