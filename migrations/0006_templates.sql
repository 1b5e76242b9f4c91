-- Texts and plans are the user's to edit. Every save is a version of its own: the newest is in use, older ones
-- can be read and put back. Where there is none, the program's own is in use.

CREATE TABLE text_template (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('removal request', 'chase', 'moved notice', 'copyright page')),
  version INTEGER NOT NULL CHECK (version >= 1),
  -- empty for a text that is not sent to anybody
  subject TEXT NOT NULL DEFAULT '',
  body TEXT NOT NULL CHECK (trim(body) <> ''),
  -- what changed, in the user's words
  note TEXT NOT NULL DEFAULT '',
  saved_on TEXT NOT NULL CHECK (saved_on IS date(saved_on)),
  UNIQUE (kind, version)
) STRICT;

CREATE TRIGGER text_template_next BEFORE INSERT ON text_template
WHEN NEW.version <> 1 + coalesce((SELECT max(version) FROM text_template WHERE kind = NEW.kind), 0)
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: a saved text takes the next version of its kind.'); END;
CREATE TRIGGER text_template_stays BEFORE UPDATE ON text_template
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a saved version of a text is never changed; save a new one.'); END;
CREATE TRIGGER text_template_kept BEFORE DELETE ON text_template
WHEN OLD.version < (SELECT max(version) FROM text_template WHERE kind = OLD.kind)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: an older version of a text is kept.'); END;

-- The request text that stood among the settings becomes the first version of its kind; its subject was fixed.
INSERT INTO text_template (kind, version, subject, body, note, saved_on)
SELECT 'removal request', 1, 'Please stop selling: {title}, {edition}, {form}, {isbn}', trim(json_extract(value, '$')),
  'Taken over from the settings', coalesce((SELECT substr(max(at), 1, 10) FROM journal), date('now'))
FROM setting
WHERE name = 'requestTemplate' AND json_type(value) = 'text' AND trim(json_extract(value, '$')) <> '';
