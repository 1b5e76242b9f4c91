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

-- The steps of a plan, a JSON list in the form of src/contract/plan-templates.ts.
CREATE TABLE plan_template (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('release', 'retirement')),
  version INTEGER NOT NULL CHECK (version >= 1),
  steps TEXT NOT NULL CHECK (json_type(steps) = 'array'),
  note TEXT NOT NULL DEFAULT '',
  saved_on TEXT NOT NULL CHECK (saved_on IS date(saved_on)),
  UNIQUE (kind, version)
) STRICT;

CREATE TRIGGER plan_template_next BEFORE INSERT ON plan_template
WHEN NEW.version <> 1 + coalesce((SELECT max(version) FROM plan_template WHERE kind = NEW.kind), 0)
BEGIN SELECT RAISE(ABORT, 'STEP_REFUSED: saved steps take the next version of their kind of plan.'); END;
CREATE TRIGGER plan_template_stays BEFORE UPDATE ON plan_template
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a saved version of the steps is never changed; save a new one.'); END;
CREATE TRIGGER plan_template_kept BEFORE DELETE ON plan_template
WHEN OLD.version < (SELECT max(version) FROM plan_template WHERE kind = OLD.kind)
BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: an older version of the steps is kept.'); END;

-- The version a plan was made from; a plan made before there were versions has none and follows the program's own.
ALTER TABLE plan ADD COLUMN template_id INTEGER REFERENCES plan_template (id);
-- Whether a printed proof is wanted of everything printed; without an answer each channel's own rule holds.
ALTER TABLE plan ADD COLUMN printed_proof INTEGER CHECK (printed_proof IN (0, 1));
-- Whether the release day is the on-sale date too, as pre-orders need it.
ALTER TABLE plan ADD COLUMN on_sale_fixed INTEGER NOT NULL DEFAULT 1 CHECK (on_sale_fixed IN (0, 1));
-- The day on which the last task of the plan ended; from then on it is no longer in force.
ALTER TABLE plan ADD COLUMN ended_on TEXT CHECK (ended_on IS date(ended_on));

-- The step of its plan's template that a task was made from.
ALTER TABLE task ADD COLUMN step TEXT;

-- A plan that was finished or dropped makes room for another.
UPDATE plan SET ended_on = (SELECT max(t.ended_on) FROM task t WHERE t.plan_id = plan.id)
WHERE dropped_on IS NULL AND EXISTS (SELECT 1 FROM task t WHERE t.plan_id = plan.id)
  AND NOT EXISTS (SELECT 1 FROM task t WHERE t.plan_id = plan.id AND t.standing IN ('open', 'waiting'));
DROP INDEX plan_in_force;
CREATE UNIQUE INDEX plan_in_force ON plan (edition_id, kind) WHERE dropped_on IS NULL AND ended_on IS NULL;

CREATE TRIGGER plan_ends AFTER UPDATE OF standing ON task
WHEN NEW.plan_id IS NOT NULL AND NEW.standing IN ('done', 'dropped') AND NOT EXISTS (
  SELECT 1 FROM task t WHERE t.plan_id = NEW.plan_id AND t.standing IN ('open', 'waiting'))
BEGIN
  UPDATE plan SET ended_on = (SELECT max(t.ended_on) FROM task t WHERE t.plan_id = NEW.plan_id)
  WHERE id = NEW.plan_id AND dropped_on IS NULL AND ended_on IS NULL;
END;
