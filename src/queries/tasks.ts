import type { Task } from '../contract/tasks.ts';
import { formName } from '../contract/terms.ts';
import { calendarText } from '../exchange/calendar.ts';
import { editionLabel } from '../rules/labels.ts';
import { movesTo } from '../rules/plans/kinds.ts';
import { calendarFacts } from '../store/calendar.ts';
import { readSettings } from '../store/settings.ts';
import { type TaskRow, taskPage, unfinishedNeedsOf } from '../store/task-list.ts';
import type { Queries } from './context.ts';

/** 'The Salt Almanac, 2nd edition · Paperback · Printworks Direct', as far as the task says what it is about. */
function aboutOf(row: TaskRow): string {
  const edition =
    row.editionTitle === null
      ? row.workTitle
      : editionLabel({ title: row.editionTitle, number: row.editionNumber });
  const format =
    row.form === null ? null : formName({ ...row, form: row.form, largePrint: row.largePrint === 1 });
  return [edition, format, row.channelName].filter((part) => part !== null).join(' · ');
}

function taskOf(row: TaskRow, needs: Task['needs']): Task {
  return {
    id: row.id,
    kind: row.kind,
    title: row.title,
    dueOn: row.dueOn,
    standing: row.standing,
    waitingFor: row.waitingFor,
    endedOn: row.endedOn,
    droppedReason: row.droppedReason,
    note: row.note,
    overdue: row.overdue === 1,
    planId: row.planId,
    planKind: row.planKind,
    workId: row.workId,
    editionId: row.editionId,
    formatId: row.formatId,
    listingId: row.listingId,
    about: aboutOf(row),
    movesTo: row.listingId === null ? null : movesTo(row.kind),
    needs,
  };
}

export const taskQueries = {
  'tasks.list': ({ db, today }, filter) => {
    const { rows, total } = taskPage(db, { ...filter, today });
    const needs = unfinishedNeedsOf(
      db,
      rows.map((row) => row.id),
    );
    return { tasks: rows.map((row) => taskOf(row, needs.get(row.id) ?? [])), total };
  },
  'tasks.calendar': ({ db, file }, { as }) => ({
    fileName: `${file.name.replace(/\.ledger$/, '')} agenda.ics`,
    text: calendarText(calendarFacts(db, readSettings(db).catalogueName), as),
  }),
} satisfies Queries<'tasks.list' | 'tasks.calendar'>;
