import { OWN_KIND } from '../contract/plan-templates.ts';
import { Refusal } from '../contract/refusal.ts';
import { headerKey } from '../exchange/sheets/match.ts';
import { openSheet } from '../exchange/sheets/open-sheet.ts';
import { type ReadReport, type ReportColumn, readReport } from '../exchange/sheets/report-in.ts';
import { calendarOf } from '../records/plans.ts';
import { reconcile, reportDay, reportingChannel } from '../records/reports.ts';
import { differenceSentence, differenceTask } from '../rules/reconcile-words.ts';
import { workingDayFrom } from '../rules/working-days.ts';
import { rememberColumns } from '../store/columns.ts';
import type { WriteDb } from '../store/connection.ts';
import {
  closeFinding,
  findingById,
  giveFindingTask,
  insertFinding,
  insertReport,
  placeOnChannel,
  refreshFinding,
  type StoredFinding,
} from '../store/reports.ts';
import { finishStoredTask, insertTask, taskById } from '../store/tasks.ts';
import type { Commands } from './context.ts';

/** Refuses a report with rows that cannot be read, unless the good ones alone were asked for. */
function refuseHalf({ problems, unread, rows }: ReadReport, goodRowsOnly: boolean): void {
  const [first] = problems;
  if (!first || (goodRowsOnly && rows.length > 0)) return;
  const place = first.header === '' ? `Row ${first.row}` : `Row ${first.row}, ${first.header}`;
  const more = unread > 1 ? ` ${unread - 1} more rows cannot be read.` : '';
  throw new Refusal('BAD_INPUT', `${place}: ${first.message}${more} Nothing was kept.`, 'file');
}

function remember(db: WriteDb, channelId: number, columns: readonly ReportColumn[]): void {
  rememberColumns(
    db,
    channelId,
    columns
      .map(({ header, field, detail, reading }) => ({
        header: headerKey(header),
        field: field ?? '',
        detail,
        reading,
      }))
      .filter(({ header }) => header !== ''),
  );
}

/** Closes a finding that no longer holds and ends its open task; answers whether there was one. */
function close(db: WriteDb, finding: StoredFinding, channel: string, day: string, today: string): boolean {
  closeFinding(db, finding.id, day);
  const task = finding.taskId === null ? undefined : taskById(db, finding.taskId);
  if (!task || task.endedOn !== null) return false;
  finishStoredTask(db, task, today, `Mended, as the report of ${channel} of ${day} shows.`);
  return true;
}

export const reportCommands = {
  'reports.reconcile': ({ db, today, files, step }, input) => {
    const channel = reportingChannel(db, input.channelId);
    const day = reportDay(db, channel, input.on, today);
    const read = readReport(openSheet(files.read(input.file), input.sheet, step), input, step);
    refuseHalf(read, input.goodRowsOnly);
    const { rows } = read;
    const { complete } = input;
    const { opened, still, closes } = reconcile(db, channel, { rows, day, complete });
    const fileName = files.nameOf(input.file);
    const kept = { channelId: channel.id, on: day, fileName, rows: rows.length, complete };
    const reportId = insertReport(db, kept);
    const total = opened.length + still.length + closes.length;
    let done = 0;
    const told = () => {
      done += 1;
      step(done, total, 'findings kept');
    };
    for (const found of opened) {
      insertFinding(db, reportId, found);
      told();
    }
    for (const { stored, now } of still) {
      refreshFinding(db, stored, now);
      told();
    }
    let tasksEnded = 0;
    for (const finding of closes) {
      if (close(db, finding, channel.name, day, today)) tasksEnded += 1;
      told();
    }
    remember(db, channel.id, read.columns);
    const counts = { opened: opened.length, stillOpen: still.length, closed: closes.length };
    return { reportId, ...counts, tasksEnded };
  },

  'reports.makeTask': ({ db, today }, { findingId, dueOn }) => {
    const finding = findingById(db, findingId);
    if (!finding) throw new Refusal('NOT_FOUND', `There is no finding ${findingId}.`, 'findingId');
    if (finding.closedOn !== null)
      throw new Refusal(
        'STEP_REFUSED',
        `This was mended, as the report of ${finding.closedOn} showed; there is nothing left to do.`,
        'findingId',
      );
    if (finding.taskStanding === 'open' || finding.taskStanding === 'waiting')
      throw new Refusal(
        'STEP_REFUSED',
        `There is a task for this already: '${finding.taskTitle}'.`,
        'findingId',
      );
    const channel = reportingChannel(db, finding.channelId);
    const place =
      finding.formatId === null ? undefined : placeOnChannel(db, finding.formatId, finding.channelId);
    const taskId = insertTask(db, {
      kind: OWN_KIND,
      title: differenceTask(finding, channel.name),
      dueOn: dueOn ?? workingDayFrom(calendarOf(db), today),
      note: `${differenceSentence(finding, channel.name)} Told by the report of ${finding.on}.`,
      formatId: finding.formatId,
      ...place,
    });
    giveFindingTask(db, finding.id, taskId);
    return { taskId };
  },
} satisfies Commands<'reports.reconcile' | 'reports.makeTask'>;
