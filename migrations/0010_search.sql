-- Finding things. What each record is found by stands once in search_entry, kept by triggers, and is indexed by
-- trigrams in search_words. Derived like the runs of numbers, so not journalled. Numbers need no entry: they are
-- found by their own key and by their last four digits.

-- id is the place of the kind times 2^40 plus the record's id, so that one kind is one range of the index.
CREATE TABLE search_entry (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('work', 'person', 'channel', 'task')),
  record_id INTEGER NOT NULL,
  name TEXT NOT NULL,
  words TEXT NOT NULL
) STRICT;
CREATE INDEX search_entry_by_name ON search_entry (kind, name COLLATE NOCASE);
CREATE VIRTUAL TABLE search_words USING fts5 (
  words, content='search_entry', content_rowid='id', columnsize=0, tokenize='trigram remove_diacritics 1'
);

CREATE INDEX edition_contributor_by_name ON edition_contributor (name);
CREATE INDEX number_by_last_four ON number (substr(isbn13, -4));
-- Spent numbers of cancelled formats included, which number_of_format leaves out.
CREATE INDEX number_by_format ON number (format_id) WHERE format_id IS NOT NULL;

-- What the entries must be. A person is entered once, under the first row that bears the name.
CREATE VIEW search_source AS
SELECT 1 * 1099511627776 + w.id AS id, 'work' AS kind, w.id AS record_id, w.title AS name,
  w.title || coalesce((SELECT group_concat(' / ' || e.title || ' / ' || e.subtitle || ' / ' || e.statement || ' / '
    || e.series, '' ORDER BY e.id) FROM edition e WHERE e.work_id = w.id), '')
  || coalesce((SELECT group_concat(' / ' || c.name, '' ORDER BY c.id) FROM edition e
    JOIN edition_contributor c ON c.edition_id = e.id WHERE e.work_id = w.id), '') AS words
FROM work w
UNION ALL
SELECT 2 * 1099511627776 + c.id, 'person', c.id, c.name, c.name FROM edition_contributor c
WHERE NOT EXISTS (SELECT 1 FROM edition_contributor o WHERE o.name = c.name AND o.id < c.id)
UNION ALL
SELECT 3 * 1099511627776 + h.id, 'channel', h.id, h.name, h.name || ' / ' || h.contact FROM channel h
UNION ALL
SELECT 4 * 1099511627776 + t.id, 'task', t.id, t.title, t.title || ' / ' || t.waiting_for || ' / ' || t.note FROM task t;

CREATE TRIGGER search_words_of_new AFTER INSERT ON search_entry
BEGIN INSERT INTO search_words (rowid, words) VALUES (NEW.id, NEW.words); END;

CREATE TRIGGER search_words_leave AFTER DELETE ON search_entry
BEGIN INSERT INTO search_words (search_words, rowid, words) VALUES ('delete', OLD.id, OLD.words); END;

CREATE TRIGGER search_entry_whole BEFORE UPDATE ON search_entry
BEGIN SELECT RAISE(ABORT, 'READ_ONLY: an entry of the search is made anew, never changed.'); END;

-- Written to by the triggers below: makes the entry of one record anew, or takes it away with its record.
CREATE VIEW search_stale AS SELECT kind, record_id FROM search_entry;

CREATE TRIGGER search_made_anew INSTEAD OF INSERT ON search_stale
BEGIN
  DELETE FROM search_entry WHERE id = NEW.record_id + 1099511627776
    * CASE NEW.kind WHEN 'work' THEN 1 WHEN 'person' THEN 2 WHEN 'channel' THEN 3 ELSE 4 END;
  INSERT INTO search_entry (id, kind, record_id, name, words)
    SELECT id, kind, record_id, name, words FROM search_source WHERE kind = NEW.kind AND record_id = NEW.record_id;
END;

CREATE TRIGGER search_of_new_work AFTER INSERT ON work
BEGIN INSERT INTO search_stale VALUES ('work', NEW.id); END;
CREATE TRIGGER search_of_work AFTER UPDATE OF title ON work WHEN OLD.title IS NOT NEW.title
BEGIN INSERT INTO search_stale VALUES ('work', NEW.id); END;
CREATE TRIGGER search_of_gone_work AFTER DELETE ON work
BEGIN INSERT INTO search_stale VALUES ('work', OLD.id); END;

CREATE TRIGGER search_of_new_edition AFTER INSERT ON edition
BEGIN INSERT INTO search_stale VALUES ('work', NEW.work_id); END;
CREATE TRIGGER search_of_edition AFTER UPDATE ON edition
WHEN (OLD.work_id, OLD.title, OLD.subtitle, OLD.statement, OLD.series)
  IS NOT (NEW.work_id, NEW.title, NEW.subtitle, NEW.statement, NEW.series)
BEGIN
  INSERT INTO search_stale VALUES ('work', NEW.work_id);
  INSERT INTO search_stale SELECT 'work', OLD.work_id WHERE OLD.work_id <> NEW.work_id;
END;
CREATE TRIGGER search_of_gone_edition AFTER DELETE ON edition
BEGIN INSERT INTO search_stale VALUES ('work', OLD.work_id); END;

-- The row that a name is entered under may change with any row that bears it: the first two are looked at again.
CREATE TRIGGER search_of_new_person AFTER INSERT ON edition_contributor
BEGIN
  INSERT INTO search_stale SELECT 'work', e.work_id FROM edition e WHERE e.id = NEW.edition_id;
  INSERT INTO search_stale SELECT 'person', id FROM edition_contributor WHERE name = NEW.name ORDER BY id LIMIT 2;
END;
CREATE TRIGGER search_of_person AFTER UPDATE ON edition_contributor
WHEN OLD.name IS NOT NEW.name OR OLD.edition_id IS NOT NEW.edition_id
BEGIN
  INSERT INTO search_stale SELECT 'work', e.work_id FROM edition e WHERE e.id IN (OLD.edition_id, NEW.edition_id);
  INSERT INTO search_stale SELECT 'person', id FROM edition_contributor WHERE name = OLD.name ORDER BY id LIMIT 2;
  INSERT INTO search_stale SELECT 'person', id FROM edition_contributor WHERE name = NEW.name ORDER BY id LIMIT 2;
  INSERT INTO search_stale VALUES ('person', NEW.id);
END;
CREATE TRIGGER search_of_gone_person AFTER DELETE ON edition_contributor
BEGIN
  INSERT INTO search_stale SELECT 'work', e.work_id FROM edition e WHERE e.id = OLD.edition_id;
  INSERT INTO search_stale VALUES ('person', OLD.id);
  INSERT INTO search_stale SELECT 'person', id FROM edition_contributor WHERE name = OLD.name ORDER BY id LIMIT 2;
END;

CREATE TRIGGER search_of_new_channel AFTER INSERT ON channel
BEGIN INSERT INTO search_stale VALUES ('channel', NEW.id); END;
CREATE TRIGGER search_of_channel AFTER UPDATE ON channel WHEN (OLD.name, OLD.contact) IS NOT (NEW.name, NEW.contact)
BEGIN INSERT INTO search_stale VALUES ('channel', NEW.id); END;
CREATE TRIGGER search_of_gone_channel AFTER DELETE ON channel
BEGIN INSERT INTO search_stale VALUES ('channel', OLD.id); END;

CREATE TRIGGER search_of_new_task AFTER INSERT ON task
BEGIN INSERT INTO search_stale VALUES ('task', NEW.id); END;
CREATE TRIGGER search_of_task AFTER UPDATE ON task
WHEN (OLD.title, OLD.waiting_for, OLD.note) IS NOT (NEW.title, NEW.waiting_for, NEW.note)
BEGIN INSERT INTO search_stale VALUES ('task', NEW.id); END;
CREATE TRIGGER search_of_gone_task AFTER DELETE ON task
BEGIN INSERT INTO search_stale VALUES ('task', OLD.id); END;

INSERT INTO search_entry (id, kind, record_id, name, words) SELECT id, kind, record_id, name, words FROM search_source;

-- Filters of the list of formats, kept under a name. `terms` is their JSON as the contract writes it.
CREATE TABLE saved_filter (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (trim(name) <> ''),
  terms TEXT NOT NULL CHECK (json_type(terms) = 'object')
) STRICT;
