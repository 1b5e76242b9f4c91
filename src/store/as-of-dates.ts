/**
 * What the catalogue's own dates say about a day. `:day` is the day, `:was(f)` says that a format was there; `r` is a stored row. A column or a condition that
 * is not named here does not depend on the day. Rows recorded later but dated earlier count: an old listing typed in
 * today was selling then.
 */
interface Dated {
  columns?: Record<string, string>;
  where?: string;
}

const OF_FORMAT = 'EXISTS (SELECT 1 FROM main.format f WHERE f.id = r.format_id AND :was(f))';

/** Fills temp.early_format: the formats with a number or a listing that is older than the day they were planned. */
export const EARLY_FORMATS = `INSERT INTO temp.early_format SELECT f.id FROM main.format f WHERE f.planned_on > :day AND (
  EXISTS (SELECT 1 FROM main.number n WHERE n.format_id = f.id AND n.assigned_on <= :day)
  OR EXISTS (SELECT 1 FROM main.listing l WHERE l.format_id = f.id AND l.first_sent_on <= :day))`;

/**
 * Puts the day in place of `:day`, and of `:was(f)` whether a format was there then: from the first day that anything of
 * it is dated to. Where no format is older than its plan, its plan alone is asked for, which an index holds.
 */
export function onDay(sql: string, day: string, early: () => boolean): string {
  const was = /:was\((\w)\)/g;
  const also = was.test(sql) && early();
  return sql
    .replaceAll(
      was,
      also
        ? '($1.planned_on <= :day OR $1.id IN (SELECT id FROM temp.early_format))'
        : '$1.planned_on <= :day',
    )
    .replaceAll(':day', `'${day.replaceAll("'", "''")}'`);
}

const until = (column: string, value = column) => `iif(r.${column} <= :day, r.${value}, NULL)`;
/** The days of steps never go back, so only a listing that was under way on the day is asked for its steps. */
const byLastStep = (stands: string, unsent: string, step: string) =>
  `CASE WHEN r.last_step_on <= :day THEN r.${stands} WHEN r.first_sent_on <= :day THEN (
    SELECT s.${step} FROM main.listing_step s WHERE s.listing_id = r.id AND s.on_date <= :day ORDER BY s.id DESC LIMIT 1)
   ELSE ${unsent} END`;

export const DATED: Readonly<Record<string, Dated>> = {
  listing_step: { where: 'r.on_date <= :day' },
  listing: {
    columns: {
      standing: byLastStep('standing', "'unsent'", 'to_standing'),
      first_sent_on: until('first_sent_on'),
      first_cleared_on: until('first_cleared_on'),
      last_step_on: byLastStep('last_step_on', 'NULL', 'on_date'),
    },
    where: OF_FORMAT,
  },
  number: {
    columns: {
      spent_on: until('spent_on'),
      spent_reason: until('spent_on', 'spent_reason'),
      standing:
        "CASE WHEN r.spent_on <= :day THEN 'spent' WHEN r.assigned_on <= :day THEN 'assigned' ELSE 'reserved' END",
    },
    where: 'r.assigned_on <= :day OR r.reserved_on <= :day OR r.spent_on <= :day',
  },
  format: {
    columns: {
      cancelled_on: until('cancelled_on'),
      cancel_reason: until('cancelled_on', 'cancel_reason'),
      planned_on: 'r.planned_on',
    },
    where: ':was(r)',
  },
  edition: {
    where: `EXISTS (SELECT 1 FROM main.format f WHERE f.edition_id = r.id AND :was(f))`,
  },
  work: {
    where: `EXISTS (SELECT 1 FROM main.edition e JOIN main.format f ON f.edition_id = e.id WHERE e.work_id = r.id AND :was(f))`,
  },
  plan: {
    columns: {
      dropped_on: until('dropped_on'),
      dropped_reason: until('dropped_on', 'dropped_reason'),
      ended_on: until('ended_on'),
    },
    where: 'r.made_on <= :day',
  },
  format_file: {
    columns: {
      ended_on: until('ended_on'),
      ended_how: until('ended_on', 'ended_how'),
      ended_reason: "iif(r.ended_on <= :day, r.ended_reason, '')",
    },
    where: `r.final_on <= :day AND ${OF_FORMAT}`,
  },
  proof_check: { where: `r.checked_on <= :day AND ${OF_FORMAT}` },
  proof_check_line: {
    where: `EXISTS (SELECT 1 FROM main.proof_check c JOIN main.format f ON f.id = c.format_id
      WHERE c.id = r.check_id AND c.checked_on <= :day AND :was(f))`,
  },
  proof_check_reason: { where: 'r.given_on <= :day' },
  number_block: { where: 'r.bought_on IS NULL OR r.bought_on <= :day' },
};

/** What is counted from the numbers of the day. */
export const COUNTED: Readonly<Record<string, string>> = {
  number_tally: `SELECT b.id AS block_id, coalesce(sum(n.standing = 'reserved'), 0) AS reserved,
      coalesce(sum(n.standing = 'assigned'), 0) AS assigned, coalesce(sum(n.standing = 'spent'), 0) AS spent
    FROM main.number_block b LEFT JOIN temp.number n ON n.block_id = b.id
    WHERE b.bought_on IS NULL OR b.bought_on <= :day OR n.block_id IS NOT NULL GROUP BY b.id`,
  // Neighbouring indexes differ from their rank by the same amount: each such amount is one run.
  number_run: `SELECT block_id, min(block_index) AS first_index, max(block_index) AS last_index FROM (
      SELECT block_id, block_index, block_index - row_number() OVER (PARTITION BY block_id ORDER BY block_index) AS run
      FROM temp.number WHERE block_id IS NOT NULL) GROUP BY block_id, run`,
};
