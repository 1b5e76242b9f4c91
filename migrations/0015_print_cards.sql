-- What printing one copy costs on a channel: a fixed part and a part for each page, stated by the printer or fitted
-- to quotes. '' and 0 stand for any, so that the set of columns that tells two cards apart is never null.

CREATE TABLE print_card (
  id INTEGER PRIMARY KEY,
  channel_id INTEGER NOT NULL REFERENCES channel (id),
  currency TEXT NOT NULL CHECK (currency GLOB '[A-Z][A-Z][A-Z]'),
  form TEXT NOT NULL DEFAULT '' CHECK (form = '' OR form GLOB '[A-Z][A-Z]'),
  case_kind TEXT NOT NULL DEFAULT '' CHECK (case_kind IN ('', 'laminate', 'cloth', 'jacket')),
  interior_colour TEXT NOT NULL DEFAULT '' CHECK (interior_colour IN ('', 'black', 'standard colour', 'premium colour')),
  -- the largest trim it holds for
  trim_width_um INTEGER NOT NULL DEFAULT 0 CHECK (trim_width_um BETWEEN 0 AND 2000000),
  trim_height_um INTEGER NOT NULL DEFAULT 0 CHECK (trim_height_um BETWEEN 0 AND 2000000),
  pages_from INTEGER NOT NULL DEFAULT 1 CHECK (pages_from >= 1),
  pages_to INTEGER NOT NULL DEFAULT 20000 CHECK (pages_to <= 20000),
  valid_from TEXT NOT NULL DEFAULT '' CHECK (valid_from = '' OR valid_from IS date(valid_from)),
  -- ten-thousandths of a minor unit; null where quotes tell them
  fixed_parts INTEGER CHECK (fixed_parts BETWEEN 0 AND 500000000000),
  page_parts INTEGER CHECK (page_parts BETWEEN 0 AND 10000000000),
  note TEXT NOT NULL DEFAULT '',
  UNIQUE (channel_id, currency, form, case_kind, interior_colour, trim_width_um, trim_height_um, pages_from,
    valid_from),
  CHECK ((fixed_parts IS NULL) = (page_parts IS NULL)),
  CHECK ((trim_width_um = 0) = (trim_height_um = 0)),
  CHECK (pages_from <= pages_to),
  CHECK (case_kind = '' OR form = 'BB')
) STRICT;

CREATE TABLE print_quote (
  id INTEGER PRIMARY KEY,
  card_id INTEGER NOT NULL REFERENCES print_card (id),
  pages INTEGER NOT NULL CHECK (pages BETWEEN 1 AND 20000),
  amount_minor INTEGER NOT NULL CHECK (amount_minor BETWEEN 0 AND 50000000),
  -- as its card has it, so that a quote can be read by itself
  currency TEXT NOT NULL
) STRICT;
CREATE INDEX print_quote_by_card ON print_quote (card_id, pages);

CREATE TRIGGER print_quote_or_stated BEFORE INSERT ON print_quote
WHEN EXISTS (SELECT 1 FROM print_card c
  WHERE c.id = NEW.card_id AND (c.fixed_parts IS NOT NULL OR c.currency <> NEW.currency))
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a card takes quotes in its own currency, and none beside a stated cost.'); END;
CREATE TRIGGER print_card_stated_or_quotes BEFORE UPDATE ON print_card
WHEN EXISTS (SELECT 1 FROM print_quote q
  WHERE q.card_id = NEW.id AND (NEW.fixed_parts IS NOT NULL OR q.currency <> NEW.currency))
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a card that has quotes keeps their currency and states no cost beside them.'); END;
CREATE TRIGGER print_quote_stays_there BEFORE UPDATE ON print_quote
WHEN OLD.card_id IS NOT NEW.card_id OR OLD.currency IS NOT NEW.currency
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a quote stays with its card.'); END;
CREATE TRIGGER print_card_stays_there BEFORE UPDATE ON print_card WHEN OLD.channel_id IS NOT NEW.channel_id
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a card stays with its channel.'); END;
