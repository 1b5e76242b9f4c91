-- What channels list, as their own reports tell it, and where that differs from the record.

CREATE TABLE channel_report (
  id INTEGER PRIMARY KEY,
  channel_id INTEGER NOT NULL REFERENCES channel (id),
  -- the day that the report tells of
  on_date TEXT NOT NULL CHECK (on_date IS date(on_date)),
  file_name TEXT NOT NULL CHECK (trim(file_name) <> ''),
  row_count INTEGER NOT NULL CHECK (row_count > 0),
  -- whether it lists everything that the channel has, so that what is missing from it is missing there
  complete INTEGER NOT NULL CHECK (complete IN (0, 1))
) STRICT;
CREATE INDEX channel_report_by_channel ON channel_report (channel_id, on_date);

CREATE TRIGGER channel_report_in_order BEFORE INSERT ON channel_report
WHEN EXISTS (SELECT 1 FROM channel_report r WHERE r.channel_id = NEW.channel_id AND r.on_date > NEW.on_date)
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a later report of this channel is kept already.'); END;
CREATE TRIGGER channel_report_stays BEFORE UPDATE ON channel_report
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a report that is kept is never changed.'); END;

-- A difference is kept once, with the report that told it first, until a report of the channel no longer tells it.
CREATE TABLE report_finding (
  id INTEGER PRIMARY KEY,
  report_id INTEGER NOT NULL REFERENCES channel_report (id),
  kind TEXT NOT NULL
    CHECK (kind IN ('only there', 'only here', 'still selling', 'price', 'on-sale date', 'title')),
  format_id INTEGER REFERENCES format (id),
  isbn13 TEXT CHECK (length(isbn13) = 13 AND isbn13 NOT GLOB '*[^0-9]*'),
  reference TEXT NOT NULL DEFAULT '',
  currency TEXT CHECK (currency GLOB '[A-Z][A-Z][A-Z]'),
  -- how it was called when it was found
  name TEXT NOT NULL,
  there TEXT NOT NULL,
  here TEXT NOT NULL,
  task_id INTEGER UNIQUE REFERENCES task (id),
  closed_on TEXT CHECK (closed_on IS date(closed_on)),
  CHECK ((kind = 'price') = (currency IS NOT NULL))
) STRICT;
CREATE INDEX report_finding_by_report ON report_finding (report_id);
CREATE INDEX report_finding_by_format ON report_finding (format_id);

CREATE TRIGGER report_finding_stays BEFORE UPDATE ON report_finding
WHEN (OLD.report_id, OLD.kind, OLD.isbn13, OLD.currency) IS NOT (NEW.report_id, NEW.kind, NEW.isbn13, NEW.currency)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: what a finding of a report is about is never changed.'); END;
