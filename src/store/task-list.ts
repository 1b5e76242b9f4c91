import type { TaskStanding } from '../contract/terms.ts';
import type { ReadDb } from './connection.ts';
import type { StoredTask } from './tasks.ts';

/** A task with the names of what it is about. */
export interface TaskRow extends StoredTask {
  overdue: number;
  planKind: 'release' | 'retirement' | null;
  workTitle: string | null;
  editionTitle: string | null;
  editionNumber: number | null;
  form: string | null;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: number | null;
  channelName: string | null;
}

export interface TaskFilter {
  standings: readonly TaskStanding[];
  workId?: number | undefined;
  editionId?: number | undefined;
  from?: string | undefined;
  to?: string | undefined;
  count: number;
  today: string;
}

function condition(filter: TaskFilter): { where: string; params: unknown[] } {
  const where = [`t.standing IN (${filter.standings.map(() => '?').join(', ')})`];
  const params: unknown[] = [...filter.standings];
  const also = (sql: string, value: unknown) => {
    if (value === undefined) return;
    where.push(sql);
    params.push(value);
  };
  also('t.work_id = ?', filter.workId);
  also('t.edition_id = ?', filter.editionId);
  also('t.due_on >= ?', filter.from);
  also('t.due_on <= ?', filter.to);
  return { where: where.join(' AND '), params };
}

/** Tasks that pass the filter, overdue ones first, then by day; with how many there are in all. */
export function taskPage(db: ReadDb, filter: TaskFilter): { rows: TaskRow[]; total: number } {
  const { where, params } = condition(filter);
  const rows = db.all<TaskRow>(
    `SELECT t.id, t.plan_id AS planId, t.work_id AS workId, t.edition_id AS editionId, t.format_id AS formatId,
       t.listing_id AS listingId, t.kind, t.title, t.due_on AS dueOn, t.standing, t.waiting_for AS waitingFor,
       t.ended_on AS endedOn, t.dropped_reason AS droppedReason, t.note,
       t.ended_on IS NULL AND t.due_on < ? AS overdue, p.kind AS planKind, w.title AS workTitle,
       e.title AS editionTitle, e.number AS editionNumber, f.form, f.form_detail AS formDetail,
       f.case_kind AS caseKind, f.large_print AS largePrint, c.name AS channelName
     FROM task t LEFT JOIN plan p ON p.id = t.plan_id LEFT JOIN work w ON w.id = t.work_id
     LEFT JOIN edition e ON e.id = t.edition_id LEFT JOIN format f ON f.id = t.format_id
     LEFT JOIN listing l ON l.id = t.listing_id LEFT JOIN channel c ON c.id = l.channel_id
     WHERE ${where} ORDER BY overdue DESC, t.due_on, t.id LIMIT ?`,
    filter.today,
    ...params,
    filter.count,
  );
  const total = db.one<{ n: number }>(`SELECT count(*) AS n FROM task t WHERE ${where}`, ...params)?.n ?? 0;
  return { rows, total };
}

/**
 * What some tasks still need, as one query: unfinished tasks by the task that needs them. CROSS JOIN keeps
 * SQLite from walking every unfinished task first.
 */
export function unfinishedNeedsOf(
  db: ReadDb,
  taskIds: readonly number[],
): Map<number, { id: number; title: string }[]> {
  const byTask = new Map<number, { id: number; title: string }[]>();
  const rows = db.all<{ taskId: number; id: number; title: string }>(
    `SELECT n.task_id AS taskId, t.id, t.title
     FROM json_each(?) asked CROSS JOIN task_need n ON n.task_id = asked.value CROSS JOIN task t ON t.id = n.needs_id
     WHERE t.standing IN ('open', 'waiting')
     ORDER BY n.task_id, t.due_on, t.id`,
    JSON.stringify(taskIds),
  );
  for (const { taskId, id, title } of rows)
    byTask.set(taskId, [...(byTask.get(taskId) ?? []), { id, title }]);
  return byTask;
}
