-- Identity fields lock at the first submission of any listing (common practice, no source: channels do not
-- let a publisher change them once submitted). The edition's fields lock with any of its formats, a format's
-- own with its own listings. A retired or cancelled format changes never.

CREATE VIEW edition_lock AS
SELECT f.edition_id, min(l.first_sent_on) AS locked_on
FROM listing l JOIN format f ON f.id = l.format_id
WHERE l.first_sent_on IS NOT NULL
GROUP BY f.edition_id;

-- Editions whose identity fields may not change now: submitted, and without an open correction.
CREATE VIEW edition_locked AS
SELECT k.edition_id FROM edition_lock k
WHERE NOT EXISTS (SELECT 1 FROM correction c WHERE c.edition_id = k.edition_id AND c.closed_on IS NULL);

CREATE TRIGGER correction_allowed BEFORE INSERT ON correction
WHEN NEW.closed_on IS NOT NULL OR EXISTS (
  SELECT 1 FROM listing l JOIN format f ON f.id = l.format_id
  WHERE f.edition_id = NEW.edition_id AND (l.standing <> 'unsent' OR l.first_cleared_on IS NOT NULL))
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a correction needs every listing taken back and none ever cleared.'); END;

CREATE TRIGGER correction_stays BEFORE UPDATE ON correction
WHEN OLD.closed_on IS NOT NULL OR NEW.edition_id <> OLD.edition_id OR NEW.made_on <> OLD.made_on OR NEW.reason <> OLD.reason
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a recorded correction is never changed.'); END;

CREATE TRIGGER correction_kept BEFORE DELETE ON correction
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a recorded correction is never removed.'); END;

CREATE TRIGGER correction_closes AFTER INSERT ON listing_step WHEN NEW.to_standing = 'sent'
BEGIN
  UPDATE correction SET closed_on = NEW.on_date
  WHERE closed_on IS NULL AND edition_id = (
    SELECT f.edition_id FROM listing l JOIN format f ON f.id = l.format_id WHERE l.id = NEW.listing_id);
END;

CREATE TRIGGER edition_identity_locked
BEFORE UPDATE OF work_id, number, statement, title, subtitle, language, imprint, series, series_number ON edition
WHEN (OLD.work_id IS NOT NEW.work_id OR OLD.number IS NOT NEW.number OR OLD.statement IS NOT NEW.statement
  OR OLD.title IS NOT NEW.title OR OLD.subtitle IS NOT NEW.subtitle OR OLD.language IS NOT NEW.language
  OR OLD.imprint IS NOT NEW.imprint OR OLD.series IS NOT NEW.series OR OLD.series_number IS NOT NEW.series_number)
  AND EXISTS (SELECT 1 FROM edition_locked k WHERE k.edition_id = OLD.id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: this edition was submitted to a channel; its identity fields cannot change.'); END;

CREATE TRIGGER contributor_added_locked BEFORE INSERT ON edition_contributor
WHEN EXISTS (SELECT 1 FROM edition_locked k WHERE k.edition_id = NEW.edition_id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: this edition was submitted to a channel; its contributors cannot change.'); END;

CREATE TRIGGER contributor_changed_locked BEFORE UPDATE ON edition_contributor
WHEN EXISTS (SELECT 1 FROM edition_locked k WHERE k.edition_id IN (OLD.edition_id, NEW.edition_id))
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: this edition was submitted to a channel; its contributors cannot change.'); END;

CREATE TRIGGER contributor_removed_locked BEFORE DELETE ON edition_contributor
WHEN EXISTS (SELECT 1 FROM edition_locked k WHERE k.edition_id = OLD.edition_id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: this edition was submitted to a channel; its contributors cannot change.'); END;

CREATE TRIGGER format_identity_locked BEFORE UPDATE OF edition_id, form, form_detail, case_kind, large_print ON format
WHEN (OLD.edition_id IS NOT NEW.edition_id OR OLD.form IS NOT NEW.form OR OLD.form_detail IS NOT NEW.form_detail
  OR OLD.case_kind IS NOT NEW.case_kind OR OLD.large_print IS NOT NEW.large_print)
  AND EXISTS (SELECT 1 FROM listing l WHERE l.format_id = OLD.id AND l.first_sent_on IS NOT NULL)
  AND EXISTS (SELECT 1 FROM edition_locked k WHERE k.edition_id = OLD.edition_id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: this format was submitted to a channel; its product form cannot change.'); END;

CREATE TRIGGER ended_format_stays BEFORE UPDATE ON format
WHEN (SELECT standing FROM format_standing WHERE format_id = OLD.id) IN ('retired', 'cancelled')
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired or cancelled format can be read for ever and changed never.'); END;

CREATE TRIGGER ended_format_kept BEFORE DELETE ON format
WHEN EXISTS (SELECT 1 FROM number n WHERE n.format_id = OLD.id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a format that was given a number is kept; cancel it instead.'); END;

CREATE TRIGGER cancelled_format_kept BEFORE DELETE ON format
WHEN OLD.cancelled_on IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a cancelled format is kept for the record.'); END;

CREATE TRIGGER ended_format_price_added BEFORE INSERT ON format_price
WHEN (SELECT standing FROM format_standing WHERE format_id = NEW.format_id) IN ('retired', 'cancelled')
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired or cancelled format can be read for ever and changed never.'); END;

CREATE TRIGGER ended_format_price_changed BEFORE UPDATE ON format_price
WHEN EXISTS (SELECT 1 FROM format_standing s
  WHERE s.format_id IN (OLD.format_id, NEW.format_id) AND s.standing IN ('retired', 'cancelled'))
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired or cancelled format can be read for ever and changed never.'); END;

CREATE TRIGGER ended_format_price_removed BEFORE DELETE ON format_price
WHEN (SELECT standing FROM format_standing WHERE format_id = OLD.format_id) IN ('retired', 'cancelled')
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired or cancelled format can be read for ever and changed never.'); END;

CREATE TRIGGER gone_listing_stays BEFORE UPDATE ON listing
WHEN OLD.standing = 'gone'
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a listing that is gone can be read for ever and changed never.'); END;

-- Dates lock when they are reached: once a format has been on sale its dates are history.

CREATE TRIGGER format_dates_reached BEFORE UPDATE OF publication_date, on_sale_date ON format
WHEN (OLD.publication_date IS NOT NEW.publication_date OR OLD.on_sale_date IS NOT NEW.on_sale_date)
  AND EXISTS (SELECT 1 FROM listing l WHERE l.format_id = OLD.id AND l.standing IN ('selling', 'leaving', 'gone'))
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: this format has been on sale; its dates cannot change.'); END;

CREATE TRIGGER listing_date_reached BEFORE UPDATE OF on_sale_date ON listing
WHEN OLD.on_sale_date IS NOT NEW.on_sale_date AND OLD.standing IN ('selling', 'leaving', 'gone')
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: this listing has been on sale; its on-sale date cannot change.'); END;

-- A channel may lock more than the identity fields at its submission.

CREATE VIEW format_locked_more AS
SELECT l.format_id, f.edition_id, j.value AS field
FROM listing l JOIN format f ON f.id = l.format_id JOIN channel c ON c.id = l.channel_id, json_each(c.locks_more) j
WHERE l.first_sent_on IS NOT NULL;

CREATE TRIGGER format_locked_by_channel BEFORE UPDATE ON format
WHEN EXISTS (SELECT 1 FROM format_locked_more m WHERE m.format_id = OLD.id AND (
  (m.field = 'trimWidthUm' AND OLD.trim_width_um IS NOT NEW.trim_width_um)
  OR (m.field = 'trimWidthUm' AND OLD.trim_height_um IS NOT NEW.trim_height_um)
  OR (m.field = 'pages' AND OLD.pages IS NOT NEW.pages)
  OR (m.field = 'interiorColour' AND OLD.interior_colour IS NOT NEW.interior_colour)
  OR (m.field = 'paper' AND OLD.paper IS NOT NEW.paper)
  OR (m.field = 'finish' AND OLD.finish IS NOT NEW.finish)
  OR (m.field = 'onSaleDate' AND OLD.on_sale_date IS NOT NEW.on_sale_date)
  OR (m.field = 'publicationDate' AND OLD.publication_date IS NOT NEW.publication_date)))
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a channel this format was submitted to locks this field too.'); END;

CREATE TRIGGER edition_locked_by_channel BEFORE UPDATE ON edition
WHEN EXISTS (SELECT 1 FROM format_locked_more m WHERE m.edition_id = OLD.id AND (
  (m.field = 'description' AND OLD.description IS NOT NEW.description)
  OR (m.field = 'audience' AND (OLD.audience IS NOT NEW.audience OR OLD.age_from IS NOT NEW.age_from OR OLD.age_to IS NOT NEW.age_to))))
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a channel this edition was submitted to locks this field too.'); END;
