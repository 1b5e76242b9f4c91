import { z } from 'zod';
import { asOf, isoDate, operation, rowId } from './operation.ts';
import { formatStanding } from './terms.ts';

export const SEVERITIES = ['must fix', 'should fix', 'note'] as const;
export const severity = z.enum(SEVERITIES);
export type Severity = z.infer<typeof severity>;

export const finding = z.object({
  /** Id of the rule, for example 'number-used-twice'. */
  rule: z.string(),
  severity,
  /** What is wrong here, naming the records. */
  message: z.string(),
  /** How to mend it. */
  mend: z.string(),
  source: z.string(),
  workId: rowId.nullable(),
  editionId: rowId.nullable(),
  formatId: rowId.nullable(),
  listingId: rowId.nullable(),
  isbn13: z.string().nullable(),
});
export type Finding = z.infer<typeof finding>;

export const auditRow = z.object({
  formatId: rowId,
  workId: rowId,
  editionLabel: z.string(),
  name: z.string(),
  standing: formatStanding,
  hyphenated: z.string().nullable(),
  /** 'Printworks Direct: selling since 2019-05-02' */
  channels: z.array(z.string()),
});
export type AuditRow = z.infer<typeof auditRow>;

export const audit = z.object({
  catalogueName: z.string(),
  fileName: z.string(),
  /** The day this was answered and the day it speaks of. */
  today: isoDate,
  asOf: isoDate,
  demo: z.boolean(),
  journalHead: z.string(),
  rules: z.int(),
  formats: z.array(auditRow),
  numbers: z.object({ free: z.int(), reserved: z.int(), assigned: z.int(), spent: z.int() }),
  findings: z.array(finding),
});
export type Audit = z.infer<typeof audit>;

export const runAudit = operation({
  name: 'audit.run',
  kind: 'query',
  summary:
    'Which formats are live, retiring, retired and planned, and what is wrong, today or on a past day.',
  input: z.object({ asOf }),
  output: audit,
  errors: [],
});

export const auditText = operation({
  name: 'audit.text',
  kind: 'query',
  summary: 'The audit as plain text or CSV, ready to save.',
  input: z.object({ asOf, as: z.enum(['text', 'csv']) }),
  output: z.object({ fileName: z.string(), text: z.string() }),
  errors: [],
});

export const auditRules = operation({
  name: 'audit.rules',
  kind: 'query',
  summary: 'The rules the audit applies, each with its sentence, severity and source.',
  input: z.object({}),
  output: z.object({
    rules: z.array(
      z.object({ id: z.string(), sentence: z.string(), severity, mend: z.string(), source: z.string() }),
    ),
  }),
  errors: [],
});
