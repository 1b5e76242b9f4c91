import { z } from 'zod';
import { updateEdition } from './editions.ts';
import { updateFormat } from './formats.ts';
import { job } from './jobs.ts';
import { removeListing, updateListing } from './listings.ts';
import { assignNumber, releaseNumber, spendNumber } from './numbers.ts';
import { asOf, filledText, isoDate, operation, rowId } from './operation.ts';
import { planRetirement } from './plans.ts';
import { dropTask, redateTask } from './tasks.ts';
import { formatStanding } from './terms.ts';

export const SEVERITIES = ['must fix', 'should fix', 'note'] as const;
export const severity = z.enum(SEVERITIES);
export type Severity = z.infer<typeof severity>;

const says = {
  /** What the button is called: 'Take the next free number'. */
  label: z.string(),
  /** What pressing it does, in one sentence, before it is pressed. */
  does: z.string(),
  /** Cannot be taken back, so it is asked once more. */
  lasting: z.boolean(),
};

const byMeansOf = <N extends string, In extends z.ZodType>(op: { name: N; input: In }) =>
  z.object({ operation: z.literal(op.name), input: op.input, ...says });

/** How a finding can be mended at one press: an operation of this contract with its whole input. */
export const mending = z.discriminatedUnion('operation', [
  byMeansOf(assignNumber),
  byMeansOf(spendNumber),
  byMeansOf(releaseNumber),
  byMeansOf(updateEdition),
  byMeansOf(updateFormat),
  byMeansOf(updateListing),
  byMeansOf(removeListing),
  byMeansOf(planRetirement),
  byMeansOf(redateTask),
  byMeansOf(dropTask),
]);
export type Mending = z.infer<typeof mending>;

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
  taskId: rowId.nullable(),
  isbn13: z.string().nullable(),
  /** What to press to mend it, where one press can. */
  mending: mending.nullable(),
  /** Stands for what the rule saw; another one once the facts have changed. */
  fingerprint: z.string(),
});
export type Finding = z.infer<typeof finding>;

/** A finding that somebody has accepted: it rests until its facts change or its day of review comes. */
export const acceptedFinding = finding.extend({
  accepted: z.object({ id: rowId, reason: z.string(), on: isoDate, reviewOn: isoDate }),
});
export type AcceptedFinding = z.infer<typeof acceptedFinding>;

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
  /** Stands for the words of all rules: another one once a rule has changed. */
  ruleSet: z.string(),
  formats: z.array(auditRow),
  numbers: z.object({ free: z.int(), reserved: z.int(), assigned: z.int(), spent: z.int() }),
  findings: z.array(finding),
  /** Found too, but accepted for the time being. */
  accepted: z.array(acceptedFinding),
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

export const auditReport = operation({
  name: 'audit.report',
  kind: 'query',
  summary: 'The audit as a document to print or send: PDF on A4 or Letter, or HTML that stands alone.',
  input: z.object({ asOf, as: z.enum(['pdf', 'html']), paper: z.enum(['A4', 'Letter']).default('A4') }),
  output: z.object({ fileName: z.string(), mediaType: z.string(), base64: z.string() }),
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

const findingCounts = z.object({
  'must fix': z.int(),
  'should fix': z.int(),
  note: z.int(),
  accepted: z.int(),
});

export const countFindings = operation({
  name: 'audit.count',
  kind: 'query',
  summary: 'How many findings there are of each gravity, and how many more are accepted.',
  input: z.object({ asOf }),
  output: findingCounts,
  errors: [],
});

export const auditProgress = operation({
  name: 'audit.progress',
  kind: 'query',
  summary:
    'The count of findings of today where it is at hand, otherwise how many works are judged so far: the window has them judged between other calls, and everything else that asks for the audit waits for the whole.',
  input: z.object({}),
  output: z.object({ counts: findingCounts.nullable(), done: z.int(), total: z.int() }),
  errors: [],
});

export const auditAgain = operation({
  name: 'audit.again',
  kind: 'query',
  summary:
    'Judge every work by every rule anew, instead of only what has changed, and say whether anything came out otherwise.',
  input: z.object({ ...job }),
  output: z.object({
    rules: z.int(),
    works: z.int(),
    formats: z.int(),
    findings: z.int(),
    /** Findings that the audit kept so far had and this one has not, or the other way round; none is to be expected. */
    differences: z.int(),
  }),
  errors: ['CANCELLED'],
});

export const acceptFinding = operation({
  name: 'audit.accept',
  kind: 'command',
  summary:
    'Accept a finding with a reason until a day of review; it comes back on that day, or as soon as its facts change.',
  input: z.object({ fingerprint: z.string().max(100), reason: filledText, reviewOn: isoDate }),
  output: z.object({ id: rowId }),
  errors: ['STEP_REFUSED'],
});

export const reopenFinding = operation({
  name: 'audit.reopen',
  kind: 'command',
  summary: 'Take back that a finding was accepted: it counts as open again.',
  input: z.object({ id: rowId }),
  output: z.object({ id: rowId }),
  errors: ['STEP_REFUSED'],
});
