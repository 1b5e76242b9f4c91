import { z } from 'zod';
import { anyText, filledText, isoDate, operation, rowId } from './operation.ts';
import { listingStanding, taskStanding } from './terms.ts';

export const task = z.object({
  id: rowId,
  kind: z.string(),
  title: z.string(),
  dueOn: isoDate,
  standing: taskStanding,
  waitingFor: z.string(),
  endedOn: isoDate.nullable(),
  droppedReason: z.string().nullable(),
  note: z.string(),
  overdue: z.boolean(),
  planId: rowId.nullable(),
  planKind: z.enum(['release', 'retirement']).nullable(),
  workId: rowId.nullable(),
  editionId: rowId.nullable(),
  formatId: rowId.nullable(),
  listingId: rowId.nullable(),
  /** 'The Salt Almanac, 2nd edition · Paperback · Printworks Direct' */
  about: z.string(),
  /** The listing standing that finishing this task brings about, if any. */
  movesTo: listingStanding.nullable(),
  /** Titles of unfinished tasks that come first. */
  needs: z.array(z.object({ id: rowId, title: z.string() })),
});
export type Task = z.infer<typeof task>;

export const listTasks = operation({
  name: 'tasks.list',
  kind: 'query',
  summary: 'Tasks of every work by day, overdue first; filter by standing, work, edition or days.',
  input: z.object({
    standings: z.array(taskStanding).default(['open', 'waiting']),
    workId: rowId.optional(),
    editionId: rowId.optional(),
    from: isoDate.optional(),
    to: isoDate.optional(),
    count: z.int().min(1).max(2000).default(500),
  }),
  output: z.object({ tasks: z.array(task), total: z.int() }),
  errors: [],
});

export const taskCalendar = operation({
  name: 'tasks.calendar',
  kind: 'query',
  summary: 'The agenda as a calendar file (RFC 5545), ready to save: tasks as to-dos or as all-day events.',
  input: z.object({ as: z.enum(['tasks', 'events']).default('tasks') }),
  output: z.object({ fileName: z.string(), text: z.string() }),
  errors: [],
});

export const createTask = operation({
  name: 'tasks.create',
  kind: 'command',
  summary: 'Add a task of your own, about a work or about nothing in particular.',
  input: z.object({ title: filledText, dueOn: isoDate, workId: rowId.optional(), note: anyText.default('') }),
  output: z.object({ taskId: rowId }),
  errors: [],
});

const ended = z.object({
  taskId: rowId,
  moved: z.array(z.object({ listingId: rowId, standing: listingStanding })),
});

export const finishTask = operation({
  name: 'tasks.finish',
  kind: 'command',
  summary: 'Mark a task done with its day and a note; a task about a listing moves the listing.',
  input: z.object({ id: rowId, on: isoDate.optional(), note: anyText.default('') }),
  output: ended,
  errors: ['STEP_REFUSED', 'NOT_READY'],
});

export const waitTask = operation({
  name: 'tasks.wait',
  kind: 'command',
  summary: 'Mark a task as waiting for somebody, or open again with an empty text.',
  input: z.object({ id: rowId, waitingFor: anyText, dueOn: isoDate.optional() }),
  output: z.object({ taskId: rowId }),
  errors: ['STEP_REFUSED'],
});

export const redateTask = operation({
  name: 'tasks.redate',
  kind: 'command',
  summary: 'Give an open task another day.',
  input: z.object({ id: rowId, dueOn: isoDate }),
  output: z.object({ taskId: rowId }),
  errors: ['STEP_REFUSED'],
});

export const dropTask = operation({
  name: 'tasks.drop',
  kind: 'command',
  summary: 'Drop a task with a reason.',
  input: z.object({ id: rowId, reason: filledText }),
  output: z.object({ taskId: rowId }),
  errors: ['STEP_REFUSED'],
});
