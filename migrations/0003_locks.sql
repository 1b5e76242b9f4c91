-- Identity fields lock at the first submission of any listing (common practice, no source: channels do not
-- let a publisher change them once submitted). The edition's fields lock with any of its formats, a format's
-- own with its own listings. A retired or cancelled format changes never.

CREATE VIEW edition_lock AS
SELECT f.edition_id, min(l.first_sent_on) AS locked_on
FROM listing l JOIN format f ON f.id = l.format_id
WHERE l.first_sent_on IS NOT NULL
GROUP BY f.edition_id;

CREATE TRIGGER edition_identity_locked
BEFORE UPDATE OF work_id, number, statement, title, subtitle, language, imprint, series, series_number ON edition
WHEN (OLD.work_id IS NOT NEW.work_id OR OLD.number IS NOT NEW.number OR OLD.statement IS NOT NEW.statement
  OR OLD.title IS NOT NEW.title OR OLD.subtitle IS NOT NEW.subtitle OR OLD.language IS NOT NEW.language
  OR OLD.imprint IS NOT NEW.imprint OR OLD.series IS NOT NEW.series OR OLD.series_number IS NOT NEW.series_number)
  AND EXISTS (SELECT 1 FROM edition_lock k WHERE k.edition_id = OLD.id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: this edition was submitted to a channel; its identity fields cannot change.'); END;

CREATE TRIGGER contributor_added_locked BEFORE INSERT ON edition_contributor
WHEN EXISTS (SELECT 1 FROM edition_lock k WHERE k.edition_id = NEW.edition_id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: this edition was submitted to a channel; its contributors cannot change.'); END;

CREATE TRIGGER contributor_changed_locked BEFORE UPDATE ON edition_contributor
WHEN EXISTS (SELECT 1 FROM edition_lock k WHERE k.edition_id IN (OLD.edition_id, NEW.edition_id))
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: this edition was submitted to a channel; its contributors cannot change.'); END;

CREATE TRIGGER contributor_removed_locked BEFORE DELETE ON edition_contributor
WHEN EXISTS (SELECT 1 FROM edition_lock k WHERE k.edition_id = OLD.edition_id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: this edition was submitted to a channel; its contributors cannot change.'); END;

CREATE TRIGGER format_identity_locked BEFORE UPDATE OF edition_id, form, form_detail, case_kind, large_print ON format
WHEN (OLD.edition_id IS NOT NEW.edition_id OR OLD.form IS NOT NEW.form OR OLD.form_detail IS NOT NEW.form_detail
  OR OLD.case_kind IS NOT NEW.case_kind OR OLD.large_print IS NOT NEW.large_print)
  AND EXISTS (SELECT 1 FROM listing l WHERE l.format_id = OLD.id AND l.first_sent_on IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: this format was submitted to a channel; its product form cannot change.'); END;

CREATE TRIGGER ended_format_stays BEFORE UPDATE ON format
WHEN (SELECT standing FROM format_standing WHERE format_id = OLD.id) IN ('retired', 'cancelled')
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a retired or cancelled format can be read for ever and changed never.'); END;

CREATE TRIGGER ended_format_kept BEFORE DELETE ON format
WHEN EXISTS (SELECT 1 FROM number n WHERE n.format_id = OLD.id)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a format that was given a number is kept; cancel it instead.'); END;

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
