import { REPORT_FINDING_KINDS, type ReportPreview } from '../contract/reports.ts';
import { matchColumns } from '../exchange/sheets/match.ts';
import { openSheet } from '../exchange/sheets/open-sheet.ts';
import { readReport } from '../exchange/sheets/report-in.ts';
import { differenceOf, findingOf, reconcile, reportDay, reportingChannel } from '../records/reports.ts';
import { rememberedColumns } from '../store/columns.ts';
import { closedFindings, openFindings, reportsOf } from '../store/reports.ts';
import type { Queries } from './context.ts';

/** As much as a person looks at. */
const SHOWN = 500;
const SHOWN_PROBLEMS = 200;
const SHOWN_CLOSED = 200;

export const reportQueries = {
  'reports.look': ({ db, files, step }, { channelId, file, sheet }) => {
    const channel = reportingChannel(db, channelId);
    step(0, null, 'reading the file');
    const table = openSheet(files.read(file), sheet, step);
    const remembered = new Map(rememberedColumns(db, channel.id).map((column) => [column.header, column]));
    const columns = matchColumns(table.header, table.body, { of: 'report', channels: [], remembered });
    return { sheets: table.sheets, sheet: table.sheet, columns, rows: table.body.length };
  },

  'reports.preview': ({ db, today, files, step }, input): ReportPreview => {
    const channel = reportingChannel(db, input.channelId);
    const day = reportDay(db, channel, input.on, today);
    const read = readReport(openSheet(files.read(input.file), input.sheet, step), input, step);
    const { opened, still, closes } = reconcile(db, channel, { ...read, day, complete: input.complete });
    const all = [
      ...opened.map((told) => ({ told, isNew: true })),
      ...still.map(({ now }) => ({ told: now, isNew: false })),
    ].sort((a, b) => REPORT_FINDING_KINDS.indexOf(a.told.kind) - REPORT_FINDING_KINDS.indexOf(b.told.kind));
    return {
      rows: read.total,
      differences: all
        .slice(0, SHOWN)
        .map(({ told, isNew }) => ({ ...differenceOf(db, channel, told), isNew })),
      differencesTotal: all.length,
      closes: closes.slice(0, SHOWN).map((finding) => findingOf(channel, finding)),
      closesTotal: closes.length,
      problems: read.problems.slice(0, SHOWN_PROBLEMS),
      problemsTotal: read.problems.length,
      unread: read.unread,
    };
  },

  'reports.list': ({ db }, { channelId }) => {
    const channel = reportingChannel(db, channelId);
    const open = openFindings(db, channelId);
    return {
      reports: reportsOf(db, channelId).map((report) => ({ ...report, complete: report.complete === 1 })),
      findings: [...open.slice(0, SHOWN), ...closedFindings(db, channelId, SHOWN_CLOSED)].map((finding) =>
        findingOf(channel, finding),
      ),
      openTotal: open.length,
    };
  },
} satisfies Queries<'reports.look' | 'reports.preview' | 'reports.list'>;
