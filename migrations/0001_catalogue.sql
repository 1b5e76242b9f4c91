-- The tables of a catalogue file. Lengths are micrometres (um), money is minor units with its ISO 4217
-- currency, dates are YYYY-MM-DD; `x IS date(x)` holds for a real calendar day only.

-- Tables with a text key have no hidden rowid, by which OR REPLACE could remove a row unseen.
CREATE TABLE setting (
  name TEXT PRIMARY KEY,
  value TEXT NOT NULL CHECK (json_valid(value))
) STRICT, WITHOUT ROWID;

-- A range message of the ISBN agency that is newer than the bundled table, in the form of resources/isbn-ranges.json.
CREATE TABLE range_table (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  loaded_on TEXT NOT NULL CHECK (loaded_on IS date(loaded_on)),
  data TEXT NOT NULL CHECK (json_valid(data))
) STRICT;

CREATE TABLE number_block (
  id INTEGER PRIMARY KEY,
  digits TEXT NOT NULL UNIQUE
    CHECK (digits NOT GLOB '*[^0-9]*' AND length(digits) BETWEEN 5 AND 11 AND substr(digits, 1, 3) IN ('978', '979')),
  hyphenated_prefix TEXT NOT NULL,
  agency TEXT NOT NULL,
  label TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT '',
  bought_on TEXT CHECK (bought_on IS date(bought_on)),
  cost_minor INTEGER CHECK (cost_minor >= 0),
  cost_currency TEXT CHECK (cost_currency GLOB '[A-Z][A-Z][A-Z]'),
  publication_digits INTEGER NOT NULL GENERATED ALWAYS AS (12 - length(digits)) VIRTUAL,
  CHECK ((cost_minor IS NULL) = (cost_currency IS NULL)),
  CHECK (replace(hyphenated_prefix, '-', '') = digits)
) STRICT;

CREATE TABLE work (
  id INTEGER PRIMARY KEY,
  title TEXT NOT NULL CHECK (trim(title) <> ''),
  note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE edition (
  id INTEGER PRIMARY KEY,
  work_id INTEGER NOT NULL REFERENCES work (id),
  number INTEGER CHECK (number BETWEEN 1 AND 999),
  statement TEXT NOT NULL DEFAULT '',
  title TEXT NOT NULL CHECK (trim(title) <> ''),
  subtitle TEXT NOT NULL DEFAULT '',
  language TEXT NOT NULL CHECK (language GLOB '[a-z][a-z][a-z]'),
  imprint TEXT NOT NULL DEFAULT '',
  series TEXT NOT NULL DEFAULT '',
  series_number TEXT NOT NULL DEFAULT '',
  description TEXT NOT NULL DEFAULT '',
  audience TEXT NOT NULL DEFAULT 'general'
    CHECK (audience IN ('general', 'children', 'young adult', 'education', 'professional')),
  age_from INTEGER CHECK (age_from BETWEEN 0 AND 120),
  age_to INTEGER CHECK (age_to BETWEEN 0 AND 120),
  replaces_id INTEGER UNIQUE REFERENCES edition (id),
  CHECK (age_from IS NULL OR age_to IS NULL OR age_from <= age_to),
  CHECK (replaces_id <> id)
) STRICT;
CREATE INDEX edition_by_work ON edition (work_id);

CREATE TABLE edition_contributor (
  id INTEGER PRIMARY KEY,
  edition_id INTEGER NOT NULL REFERENCES edition (id),
  position INTEGER NOT NULL CHECK (position >= 1),
  role TEXT NOT NULL CHECK (role GLOB '[A-Z][0-9][0-9]'),
  name TEXT NOT NULL CHECK (trim(name) <> ''),
  UNIQUE (edition_id, position)
) STRICT;

CREATE TABLE edition_subject (
  id INTEGER PRIMARY KEY,
  edition_id INTEGER NOT NULL REFERENCES edition (id),
  position INTEGER NOT NULL CHECK (position >= 1),
  scheme TEXT NOT NULL CHECK (scheme IN ('thema', 'bisac', 'own')),
  code TEXT NOT NULL CHECK (trim(code) <> ''),
  heading TEXT NOT NULL DEFAULT '',
  UNIQUE (edition_id, position)
) STRICT;

CREATE TABLE edition_keyword (
  id INTEGER PRIMARY KEY,
  edition_id INTEGER NOT NULL REFERENCES edition (id),
  position INTEGER NOT NULL CHECK (position >= 1),
  keyword TEXT NOT NULL CHECK (trim(keyword) <> ''),
  UNIQUE (edition_id, position)
) STRICT;

CREATE TABLE format (
  id INTEGER PRIMARY KEY,
  edition_id INTEGER NOT NULL REFERENCES edition (id),
  form TEXT NOT NULL CHECK (form GLOB '[A-Z][A-Z]'),
  form_detail TEXT CHECK (form_detail GLOB '[A-Z][0-9][0-9][0-9]'),
  case_kind TEXT CHECK (case_kind IN ('laminate', 'cloth', 'jacket')),
  trim_width_um INTEGER CHECK (trim_width_um > 0),
  trim_height_um INTEGER CHECK (trim_height_um > 0),
  pages INTEGER CHECK (pages > 0),
  duration_minutes INTEGER CHECK (duration_minutes > 0),
  interior_colour TEXT CHECK (interior_colour IN ('black', 'standard colour', 'premium colour')),
  paper TEXT NOT NULL DEFAULT '',
  finish TEXT CHECK (finish IN ('matte', 'gloss', 'uncoated')),
  inside_cover_print INTEGER NOT NULL DEFAULT 0 CHECK (inside_cover_print IN (0, 1)),
  large_print INTEGER NOT NULL DEFAULT 0 CHECK (large_print IN (0, 1)),
  right_to_left INTEGER NOT NULL DEFAULT 0 CHECK (right_to_left IN (0, 1)),
  publication_date TEXT CHECK (publication_date IS date(publication_date)),
  on_sale_date TEXT CHECK (on_sale_date IS date(on_sale_date)),
  note TEXT NOT NULL DEFAULT '',
  planned_on TEXT NOT NULL CHECK (planned_on IS date(planned_on)),
  cancelled_on TEXT CHECK (cancelled_on IS date(cancelled_on)),
  cancel_reason TEXT CHECK (trim(cancel_reason) <> ''),
  CHECK ((cancelled_on IS NULL) = (cancel_reason IS NULL)),
  CHECK ((trim_width_um IS NULL) = (trim_height_um IS NULL)),
  CHECK (case_kind IS NULL OR form = 'BB')
) STRICT;
CREATE INDEX format_by_edition ON format (edition_id);

CREATE TABLE format_price (
  id INTEGER PRIMARY KEY,
  format_id INTEGER NOT NULL REFERENCES format (id),
  currency TEXT NOT NULL CHECK (currency GLOB '[A-Z][A-Z][A-Z]'),
  amount_minor INTEGER NOT NULL CHECK (amount_minor >= 0),
  tax TEXT NOT NULL DEFAULT 'including' CHECK (tax IN ('including', 'excluding')),
  UNIQUE (format_id, currency)
) STRICT;

-- A free number has no row: a block of a million numbers needs no million rows. The check digit rule is
-- ISO 2108 (weights 1 and 3, sum divisible by 10).
CREATE TABLE number (
  isbn13 TEXT PRIMARY KEY
    CHECK (length(isbn13) = 13 AND isbn13 NOT GLOB '*[^0-9]*' AND substr(isbn13, 1, 3) IN ('978', '979'))
    CHECK ((substr(isbn13, 1, 1) + substr(isbn13, 3, 1) + substr(isbn13, 5, 1) + substr(isbn13, 7, 1)
      + substr(isbn13, 9, 1) + substr(isbn13, 11, 1) + substr(isbn13, 13, 1)
      + 3 * (substr(isbn13, 2, 1) + substr(isbn13, 4, 1) + substr(isbn13, 6, 1) + substr(isbn13, 8, 1)
      + substr(isbn13, 10, 1) + substr(isbn13, 12, 1))) % 10 = 0),
  block_id INTEGER REFERENCES number_block (id),
  -- place in its block, from 0
  block_index INTEGER CHECK (block_index >= 0),
  format_id INTEGER REFERENCES format (id),
  reserved_for TEXT NOT NULL DEFAULT '',
  reserved_on TEXT CHECK (reserved_on IS date(reserved_on)),
  assigned_on TEXT CHECK (assigned_on IS date(assigned_on)),
  spent_on TEXT CHECK (spent_on IS date(spent_on)),
  spent_reason TEXT CHECK (trim(spent_reason) <> ''),
  standing TEXT NOT NULL GENERATED ALWAYS AS (CASE WHEN spent_on IS NOT NULL THEN 'spent'
    WHEN assigned_on IS NOT NULL THEN 'assigned' ELSE 'reserved' END) VIRTUAL,
  CHECK ((spent_on IS NULL) = (spent_reason IS NULL)),
  CHECK ((block_id IS NULL) = (block_index IS NULL)),
  CHECK ((format_id IS NULL) = (assigned_on IS NULL)),
  CHECK (reserved_on IS NOT NULL OR assigned_on IS NOT NULL OR spent_on IS NOT NULL)
) STRICT, WITHOUT ROWID;
CREATE UNIQUE INDEX number_of_format ON number (format_id) WHERE format_id IS NOT NULL AND spent_on IS NULL;
CREATE UNIQUE INDEX number_in_block ON number (block_id, block_index) WHERE block_id IS NOT NULL;

CREATE TABLE channel (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (trim(name) <> ''),
  kind TEXT NOT NULL DEFAULT 'any' CHECK (kind IN ('print', 'e-book', 'audio', 'any')),
  contact TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT '',
  lead_days INTEGER NOT NULL DEFAULT 3 CHECK (lead_days BETWEEN 0 AND 365),
  removal_days INTEGER NOT NULL DEFAULT 7 CHECK (removal_days BETWEEN 0 AND 365),
  proof TEXT NOT NULL DEFAULT 'electronic' CHECK (proof IN ('none', 'electronic', 'physical')),
  subject_limit INTEGER CHECK (subject_limit >= 0),
  keyword_limit INTEGER CHECK (keyword_limit >= 0),
  keyword_separator TEXT NOT NULL DEFAULT ';',
  description_limit INTEGER CHECK (description_limit >= 0),
  default_discount_bp INTEGER CHECK (default_discount_bp BETWEEN 0 AND 10000),
  default_returns TEXT CHECK (default_returns IN ('Y', 'N', 'C', 'S')),
  request_template TEXT NOT NULL DEFAULT '',
  -- open fields that this channel locks at its submission too, a JSON list
  locks_more TEXT NOT NULL DEFAULT '[]' CHECK (json_type(locks_more) = 'array'),
  closed_on TEXT CHECK (closed_on IS date(closed_on))
) STRICT;

CREATE TABLE listing (
  id INTEGER PRIMARY KEY,
  format_id INTEGER NOT NULL REFERENCES format (id),
  channel_id INTEGER NOT NULL REFERENCES channel (id),
  standing TEXT NOT NULL DEFAULT 'unsent'
    CHECK (standing IN ('unsent', 'sent', 'proof', 'cleared', 'selling', 'leaving', 'gone')),
  discount_bp INTEGER CHECK (discount_bp BETWEEN 0 AND 10000),
  returns TEXT CHECK (returns IN ('Y', 'N', 'C', 'S')),
  print_cost_minor INTEGER CHECK (print_cost_minor >= 0),
  print_cost_currency TEXT CHECK (print_cost_currency GLOB '[A-Z][A-Z][A-Z]'),
  on_sale_date TEXT CHECK (on_sale_date IS date(on_sale_date)),
  reference TEXT NOT NULL DEFAULT '',
  note TEXT NOT NULL DEFAULT '',
  first_sent_on TEXT CHECK (first_sent_on IS date(first_sent_on)),
  first_cleared_on TEXT CHECK (first_cleared_on IS date(first_cleared_on)),
  last_step_on TEXT CHECK (last_step_on IS date(last_step_on)),
  UNIQUE (format_id, channel_id),
  CHECK ((print_cost_minor IS NULL) = (print_cost_currency IS NULL)),
  CHECK (standing = 'unsent' OR first_sent_on IS NOT NULL)
) STRICT;
CREATE INDEX listing_by_channel ON listing (channel_id);

-- The steps a listing took, dated as they happened: standings are read from here, for today or any past day.
CREATE TABLE listing_step (
  id INTEGER PRIMARY KEY,
  listing_id INTEGER NOT NULL REFERENCES listing (id),
  from_standing TEXT NOT NULL,
  to_standing TEXT NOT NULL,
  on_date TEXT NOT NULL CHECK (on_date IS date(on_date)),
  note TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX listing_step_by_listing ON listing_step (listing_id, id);

CREATE TABLE plan (
  id INTEGER PRIMARY KEY,
  edition_id INTEGER NOT NULL REFERENCES edition (id),
  kind TEXT NOT NULL CHECK (kind IN ('release', 'retirement')),
  day TEXT NOT NULL CHECK (day IS date(day)),
  made_on TEXT NOT NULL CHECK (made_on IS date(made_on)),
  dropped_on TEXT CHECK (dropped_on IS date(dropped_on)),
  dropped_reason TEXT CHECK (trim(dropped_reason) <> ''),
  CHECK ((dropped_on IS NULL) = (dropped_reason IS NULL))
) STRICT;
CREATE UNIQUE INDEX plan_in_force ON plan (edition_id, kind) WHERE dropped_on IS NULL;

CREATE TABLE task (
  id INTEGER PRIMARY KEY,
  plan_id INTEGER REFERENCES plan (id),
  work_id INTEGER REFERENCES work (id),
  edition_id INTEGER REFERENCES edition (id),
  format_id INTEGER REFERENCES format (id),
  listing_id INTEGER REFERENCES listing (id),
  kind TEXT NOT NULL,
  title TEXT NOT NULL CHECK (trim(title) <> ''),
  due_on TEXT NOT NULL CHECK (due_on IS date(due_on)),
  standing TEXT NOT NULL DEFAULT 'open' CHECK (standing IN ('open', 'waiting', 'done', 'dropped')),
  waiting_for TEXT NOT NULL DEFAULT '',
  ended_on TEXT CHECK (ended_on IS date(ended_on)),
  dropped_reason TEXT CHECK (trim(dropped_reason) <> ''),
  note TEXT NOT NULL DEFAULT '',
  CHECK ((standing IN ('done', 'dropped')) = (ended_on IS NOT NULL)),
  CHECK ((standing = 'dropped') = (dropped_reason IS NOT NULL)),
  CHECK (standing <> 'waiting' OR trim(waiting_for) <> '')
) STRICT;
CREATE INDEX task_by_day ON task (standing, due_on);
CREATE INDEX task_by_plan ON task (plan_id);
CREATE INDEX task_by_listing ON task (listing_id);

CREATE TABLE task_need (
  id INTEGER PRIMARY KEY,
  task_id INTEGER NOT NULL REFERENCES task (id),
  needs_id INTEGER NOT NULL REFERENCES task (id),
  UNIQUE (task_id, needs_id),
  CHECK (task_id <> needs_id)
) STRICT;
CREATE INDEX task_need_by_needs ON task_need (needs_id);

-- A recorded correction opens the identity fields of an edition that was submitted but never cleared, once
-- every listing was taken back; the next submission closes it.
CREATE TABLE correction (
  id INTEGER PRIMARY KEY,
  edition_id INTEGER NOT NULL REFERENCES edition (id),
  made_on TEXT NOT NULL CHECK (made_on IS date(made_on)),
  reason TEXT NOT NULL CHECK (trim(reason) <> ''),
  closed_on TEXT CHECK (closed_on IS date(closed_on))
) STRICT;
CREATE UNIQUE INDEX correction_open ON correction (edition_id) WHERE closed_on IS NULL;

-- Runs of taken numbers in a block, kept by triggers: the first gap, and so the next free number, is found
-- without looking at the numbers themselves. Derived, so not journalled.
CREATE TABLE number_run (
  block_id INTEGER NOT NULL REFERENCES number_block (id),
  first_index INTEGER NOT NULL,
  last_index INTEGER NOT NULL CHECK (last_index >= first_index),
  PRIMARY KEY (block_id, first_index)
) STRICT, WITHOUT ROWID;
CREATE INDEX number_run_end ON number_run (block_id, last_index);

-- How many numbers of a block stand where, kept by triggers like the runs: a count looks at one row.
CREATE TABLE number_tally (
  block_id INTEGER PRIMARY KEY REFERENCES number_block (id),
  reserved INTEGER NOT NULL DEFAULT 0 CHECK (reserved >= 0),
  assigned INTEGER NOT NULL DEFAULT 0 CHECK (assigned >= 0),
  spent INTEGER NOT NULL DEFAULT 0 CHECK (spent >= 0)
) STRICT;
