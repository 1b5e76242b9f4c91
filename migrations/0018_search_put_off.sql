-- What the search finds may be made anew together instead of row by row: while this table holds anything, the records
-- whose words changed are only noted in it. Whoever puts a row in empties it in the same transaction, once the entries
-- of what it names are made anew; each record is then taken in once, however many of its rows were written.
CREATE TABLE search_later (
  kind TEXT NOT NULL,
  record_id INTEGER NOT NULL,
  PRIMARY KEY (kind, record_id)
) STRICT, WITHOUT ROWID;

DROP TRIGGER search_made_anew;
CREATE TRIGGER search_made_anew INSTEAD OF INSERT ON search_stale WHEN NOT EXISTS (SELECT 1 FROM search_later)
BEGIN
  DELETE FROM search_entry WHERE id = NEW.record_id + 1099511627776
    * CASE NEW.kind WHEN 'work' THEN 1 WHEN 'person' THEN 2 WHEN 'channel' THEN 3 ELSE 4 END;
  INSERT INTO search_entry (id, kind, record_id, name, words)
    SELECT id, kind, record_id, name, words FROM search_source WHERE kind = NEW.kind AND record_id = NEW.record_id;
END;
CREATE TRIGGER search_put_off INSTEAD OF INSERT ON search_stale WHEN EXISTS (SELECT 1 FROM search_later)
BEGIN
  INSERT INTO search_later (kind, record_id) SELECT NEW.kind, NEW.record_id
    WHERE NOT EXISTS (SELECT 1 FROM search_later l WHERE l.kind = NEW.kind AND l.record_id = NEW.record_id);
END;
