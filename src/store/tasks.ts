import type { ListingStanding, TaskStanding } from '../contract/terms.ts';
import type { ReadDb, WriteDb } from './connection.ts';

/** A task as stored. */
export interface StoredTask {
  id: number;
  planId: number | null;
  workId: number | null;
  editionId: number | null;
  formatId: number | null;
  listingId: number | null;
  kind: string;
  title: string;
  dueOn: string;
  standing: TaskStanding;
  waitingFor: string;
  endedOn: string | null;
  droppedReason: string | null;
  note: string;
}

const COLUMNS = `t.id, t.plan_id AS planId, t.work_id AS workId, t.edition_id AS editionId, t.format_id AS formatId,
  t.listing_id AS listingId, t.kind, t.title, t.due_on AS dueOn, t.standing, t.waiting_for AS waitingFor,
  t.ended_on AS endedOn, t.dropped_reason AS droppedReason, t.note`;

export function taskById(db: ReadDb, id: number): StoredTask | undefined {
  return db.one<StoredTask>(`SELECT ${COLUMNS} FROM task t WHERE t.id = ?`, id);
}

/** Tasks of a listing that have not ended. */
export function unfinishedOfListing(db: ReadDb, listingId: number): StoredTask[] {
  return db.all<StoredTask>(
    `SELECT ${COLUMNS} FROM task t WHERE t.listing_id = ? AND t.standing IN ('open', 'waiting') ORDER BY t.id`,
    listingId,
  );
}

/** Unfinished tasks that a task needs. CROSS JOIN keeps SQLite from walking every unfinished task first. */
export function unfinishedNeeds(db: ReadDb, taskId: number): StoredTask[] {
  return db.all<StoredTask>(
    `SELECT ${COLUMNS} FROM task_need n CROSS JOIN task t ON t.id = n.needs_id
     WHERE n.task_id = ? AND t.standing IN ('open', 'waiting') ORDER BY t.due_on, t.id`,
    taskId,
  );
}

/** Unfinished tasks that need a task. */
export function unfinishedDependents(db: ReadDb, taskId: number): StoredTask[] {
  return db.all<StoredTask>(
    `SELECT ${COLUMNS} FROM task_need n CROSS JOIN task t ON t.id = n.task_id
     WHERE n.needs_id = ? AND t.standing IN ('open', 'waiting') ORDER BY t.due_on, t.id`,
    taskId,
  );
}

export type NewTask = Pick<StoredTask, 'kind' | 'title' | 'dueOn' | 'note'> &
  Partial<Pick<StoredTask, 'planId' | 'workId' | 'editionId' | 'formatId' | 'listingId'>> & {
    /** The step of its plan's template. */
    step?: string | null;
  };

/** Adds an open task; answers its id. */
export function insertTask(db: WriteDb, task: NewTask): number {
  return db.run(
    `INSERT INTO task (plan_id, work_id, edition_id, format_id, listing_id, kind, step, title, due_on, note)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    task.planId ?? null,
    task.workId ?? null,
    task.editionId ?? null,
    task.formatId ?? null,
    task.listingId ?? null,
    task.kind,
    task.step ?? null,
    task.title,
    task.dueOn,
    task.note,
  ).lastInsertRowid;
}

export function insertNeed(db: WriteDb, taskId: number, needsId: number): void {
  db.run('INSERT INTO task_need (task_id, needs_id) VALUES (?, ?)', taskId, needsId);
}

/** Whether a task is already to come after another. */
export function hasNeed(db: ReadDb, taskId: number, needsId: number): boolean {
  return db.one('SELECT 1 FROM task_need WHERE task_id = ? AND needs_id = ?', taskId, needsId) !== undefined;
}

/** Marks a task done; a note is added below the one it has. */
export function finishStoredTask(
  db: WriteDb,
  task: Pick<StoredTask, 'id' | 'note'>,
  on: string,
  note: string,
): void {
  db.run(
    "UPDATE task SET standing = 'done', ended_on = ?, note = ? WHERE id = ?",
    on,
    [task.note, note].filter((part) => part !== '').join('\n'),
    task.id,
  );
}

export function dropStoredTask(db: WriteDb, id: number, on: string, reason: string): void {
  db.run(
    "UPDATE task SET standing = 'dropped', ended_on = ?, dropped_reason = ? WHERE id = ?",
    on,
    reason,
    id,
  );
}

export function dateStoredTask(db: WriteDb, id: number, dueOn: string): void {
  db.run('UPDATE task SET due_on = ? WHERE id = ?', dueOn, id);
}

/** Marks a task as waiting for somebody; an empty text opens it again. */
export function waitStoredTask(db: WriteDb, id: number, waitingFor: string): void {
  db.run(
    'UPDATE task SET standing = ?, waiting_for = ? WHERE id = ?',
    waitingFor === '' ? 'open' : 'waiting',
    waitingFor,
    id,
  );
}

export function standingOfListing(db: ReadDb, listingId: number): ListingStanding | undefined {
  return db.one<{ standing: ListingStanding }>('SELECT standing FROM listing WHERE id = ?', listingId)
    ?.standing;
}
