-- Rows that a copy of this list added and that were taken over from it: so that the same file, or a later one of the
-- same copy, brings no row twice.

CREATE TABLE merged_row (
  -- seal of the entry by which the copy added the row
  origin_hash TEXT PRIMARY KEY CHECK (length(origin_hash) = 64 AND origin_hash NOT GLOB '*[^0-9a-f]*'),
  entity TEXT NOT NULL CHECK (trim(entity) <> ''),
  row_key TEXT NOT NULL CHECK (row_key <> '')
) STRICT;

CREATE TRIGGER merged_row_stays BEFORE UPDATE ON merged_row
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: where a row came from is never changed.'); END;
