-- What belongs to one work, edition or format is found by it, so that looking at one work reads no other's rows.
CREATE INDEX plan_by_edition ON plan (edition_id, kind);
CREATE INDEX task_by_work ON task (work_id) WHERE work_id IS NOT NULL;
CREATE INDEX task_by_edition ON task (edition_id) WHERE edition_id IS NOT NULL;
CREATE INDEX task_by_format ON task (format_id) WHERE format_id IS NOT NULL;
CREATE INDEX correction_by_edition ON correction (edition_id);
CREATE INDEX work_by_title ON work (title COLLATE NOCASE, id);
