import { z } from 'zod';
import { stagedId } from './files.ts';
import { job } from './jobs.ts';
import { isoDate, operation, rowId } from './operation.ts';
import { reading, reportFieldKey } from './sheet-fields.ts';
import { foundColumn, repair, sheetProblem } from './sheets.ts';
import { taskStanding } from './terms.ts';

/** How a channel's report can differ from the record, what costs most first. */
export const REPORT_FINDING_KINDS = [
  'still selling',
  'only there',
  'only here',
  'price',
  'on-sale date',
  'title',
] as const;
export const reportFindingKind = z.enum(REPORT_FINDING_KINDS);
export type ReportFindingKind = z.infer<typeof reportFindingKind>;

const sheetName = z.string().max(255).optional();

/** A column of a report as the person has settled it. */
export const reportColumn = z.object({
  index: z.int().min(0).max(999),
  field: reportFieldKey.nullable(),
  detail: z.string().max(2000).default(''),
  reading: reading.nullable().default(null),
});

const theReport = z.object({
  channelId: rowId,
  file: stagedId,
  sheet: sheetName,
  columns: z.array(reportColumn).min(1, { error: 'Say what the columns hold.' }).max(1000),
  repairs: z.array(repair).max(100_000).default([]),
  /** The day that the report tells of; today where it is left out. */
  on: isoDate.optional(),
  /** Whether it lists everything the channel has, so that what is missing from it is missing there. */
  complete: z.boolean().default(true),
  ...job,
});

/** One difference between a report and the record. */
export const reportDifference = z.object({
  kind: reportFindingKind,
  /** The difference in one sentence. */
  sentence: z.string(),
  /** The number with hyphens; null where there is none. */
  hyphenated: z.string().nullable(),
  /** The work it is about; null where nothing here is known of it. */
  workId: rowId.nullable(),
  there: z.string(),
  here: z.string(),
});

/** A difference that is kept. */
export const reportFinding = reportDifference.extend({
  id: rowId,
  /** The day of the report that told it first. */
  on: isoDate,
  task: z.object({ id: rowId, title: z.string(), standing: taskStanding }).nullable(),
  closedOn: isoDate.nullable(),
});
export type ReportFinding = z.infer<typeof reportFinding>;

export const lookAtReport = operation({
  name: 'reports.look',
  kind: 'query',
  summary:
    'Look into a channel’s own report, a CSV or XLSX file that lies ready: its columns and what each is taken to hold, as remembered for this channel or guessed.',
  input: z.object({ channelId: rowId, file: stagedId, sheet: sheetName, ...job }),
  output: z.object({
    sheets: z.array(z.string()),
    sheet: z.string(),
    columns: z.array(foundColumn),
    /** Rows below the header. */
    rows: z.int(),
  }),
  errors: ['CANCELLED'],
});

export const previewReport = operation({
  name: 'reports.preview',
  kind: 'query',
  summary: 'Set a channel’s own report against the record and tell where they differ; nothing is kept.',
  input: theReport,
  output: z.object({
    rows: z.int(),
    /** The first five hundred, what costs most first; `isNew` is false for what is a finding already. */
    differences: z.array(reportDifference.extend({ isNew: z.boolean() })),
    differencesTotal: z.int(),
    /** Findings that this report no longer tells: they are closed when it is kept. */
    closes: z.array(reportFinding),
    closesTotal: z.int(),
    /** The first two hundred cells or rows that cannot be read. */
    problems: z.array(sheetProblem),
    problemsTotal: z.int(),
    /** Rows with such a cell, or without a number and a reference. */
    unread: z.int(),
  }),
  errors: ['STEP_REFUSED', 'CANCELLED'],
});
export type ReportPreview = z.infer<typeof previewReport.output>;

export const reconcileReport = operation({
  name: 'reports.reconcile',
  kind: 'command',
  summary:
    'Keep a channel’s own report: each difference from the record becomes a finding; open findings that it no longer tells are closed and their open tasks ended.',
  input: theReport.extend({
    /** Leaves out rows that cannot be read: what stands in them counts as not listed there. */
    goodRowsOnly: z.boolean().default(false),
  }),
  output: z.object({
    reportId: rowId,
    opened: z.int(),
    stillOpen: z.int(),
    closed: z.int(),
    tasksEnded: z.int(),
  }),
  errors: ['STEP_REFUSED', 'CANCELLED'],
});
export type ReportOutcome = z.infer<typeof reconcileReport.output>;

export const listReports = operation({
  name: 'reports.list',
  kind: 'query',
  summary: 'The reports of a channel that were kept, newest first, and their findings, open ones first.',
  input: z.object({ channelId: rowId }),
  output: z.object({
    reports: z.array(
      z.object({
        id: rowId,
        on: isoDate,
        fileName: z.string(),
        rows: z.int(),
        complete: z.boolean(),
        /** Findings that it told first, and how many of them are open. */
        findings: z.int(),
        open: z.int(),
      }),
    ),
    /** All open ones up to five hundred, then the closed ones up to two hundred, newest first. */
    findings: z.array(reportFinding),
    openTotal: z.int(),
  }),
  errors: [],
});

export const makeReportTask = operation({
  name: 'reports.makeTask',
  kind: 'command',
  summary: 'Make a task out of an open finding of a report; it ends when a later report no longer tells it.',
  input: z.object({ findingId: rowId, dueOn: isoDate.optional() }),
  output: z.object({ taskId: rowId }),
  errors: ['STEP_REFUSED'],
});
