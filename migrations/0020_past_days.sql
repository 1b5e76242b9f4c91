-- A past day asks each kind of record for the entries that changed or removed one since; most entries are of steps and of
-- new rows. Told apart by kind, and whole in the index, they are found without reading any other.
DROP INDEX journal_of_fields;
CREATE INDEX journal_of_changes ON journal (entity, seq, action, row_key)
WHERE action <> 'added' AND entity IN ('work', 'edition', 'edition_contributor', 'edition_subject', 'edition_keyword',
  'format', 'format_price', 'channel', 'number_block', 'print_card', 'print_quote');

-- Hardly any row is ever led to another parent; where one was, its table cannot be read by its parent as of that day.
CREATE INDEX journal_of_moves ON journal (entity, seq)
WHERE action = 'changed' AND entity IN ('edition', 'edition_contributor', 'edition_subject', 'edition_keyword', 'format',
  'format_price', 'print_card', 'print_quote')
  AND (json_extract(before, '$.work_id') IS NOT json_extract(after, '$.work_id')
    OR json_extract(before, '$.edition_id') IS NOT json_extract(after, '$.edition_id')
    OR json_extract(before, '$.format_id') IS NOT json_extract(after, '$.format_id')
    OR json_extract(before, '$.channel_id') IS NOT json_extract(after, '$.channel_id')
    OR json_extract(before, '$.card_id') IS NOT json_extract(after, '$.card_id'));

-- Whether an edition was there on a day, and whether a format is older than its plan, is told by these indexes alone.
DROP INDEX format_by_edition;
CREATE INDEX format_by_edition ON format (edition_id, planned_on);
DROP INDEX number_by_format;
CREATE INDEX number_by_format ON number (format_id, assigned_on) WHERE format_id IS NOT NULL;
CREATE INDEX listing_sent_first ON listing (format_id, first_sent_on) WHERE first_sent_on IS NOT NULL;
