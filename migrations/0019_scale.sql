-- What belongs to one work, edition or format is found by it, so that looking at one work reads no other's rows.
CREATE INDEX plan_by_edition ON plan (edition_id, kind);
CREATE INDEX task_by_work ON task (work_id) WHERE work_id IS NOT NULL;
CREATE INDEX task_by_edition ON task (edition_id) WHERE edition_id IS NOT NULL;
CREATE INDEX task_by_format ON task (format_id) WHERE format_id IS NOT NULL;
CREATE INDEX correction_by_edition ON correction (edition_id);
CREATE INDEX work_by_title ON work (title COLLATE NOCASE, id);

-- Going back to a past day asks for the first change of every field since; most entries tell of steps, whose days stand
-- with the steps. These indexes hold the others alone.
CREATE INDEX journal_of_fields ON journal (seq)
WHERE entity IN ('work', 'edition', 'edition_contributor', 'edition_subject', 'edition_keyword', 'format',
  'format_price', 'channel', 'number_block');
CREATE INDEX journal_of_listings ON journal (seq)
WHERE entity = 'listing' AND action = 'changed'
  AND json_remove(before, '$.standing', '$.first_sent_on', '$.first_cleared_on', '$.last_step_on')
    <> json_remove(after, '$.standing', '$.first_sent_on', '$.first_cleared_on', '$.last_step_on');
