-- What the columns of a file were matched with, remembered by their headers for the next file. A field of '' means
-- that the column is left out on purpose. `reading` says how dates or amounts of the column are written.
CREATE TABLE sheet_column (
  id INTEGER PRIMARY KEY,
  header TEXT NOT NULL UNIQUE CHECK (trim(header) <> ''),
  field TEXT NOT NULL,
  -- the currency, channel or role that the field is about
  of_what TEXT NOT NULL DEFAULT '',
  reading TEXT CHECK (reading IN ('ymd', 'dmy', 'mdy', 'point', 'comma'))
) STRICT;

-- The same for the reports of one channel.
CREATE TABLE report_column (
  id INTEGER PRIMARY KEY,
  channel_id INTEGER NOT NULL REFERENCES channel (id),
  header TEXT NOT NULL CHECK (trim(header) <> ''),
  field TEXT NOT NULL,
  -- the currency, channel or role that the field is about
  of_what TEXT NOT NULL DEFAULT '',
  reading TEXT CHECK (reading IN ('ymd', 'dmy', 'mdy', 'point', 'comma')),
  UNIQUE (channel_id, header)
) STRICT;
