import { z } from 'zod';
import { stagedId } from '../files.ts';
import { formatFile } from '../format-files.ts';
import { job } from '../jobs.ts';
import { asOf, filledText, isoDate, operation, rowId } from '../operation.ts';
import { FILE_KINDS } from '../terms.ts';
import { CHECK_STATES, checkLine } from './facts.ts';

const kind = z.enum(FILE_KINDS);

/**
 * How a checked file stands to the final file on record: the same by its hash, another one, one recorded without a
 * hash so that nothing can be said, or none recorded.
 */
export const AGAINST_FINAL = ['same', 'other', 'unknown', 'none'] as const;

export const checkSummary = z.object({
  id: rowId,
  formatId: rowId,
  kind,
  fileName: z.string(),
  bytes: z.int(),
  sha256: z.string(),
  checkedOn: isoDate,
  ruleSet: z.int(),
  counts: z.record(z.enum(CHECK_STATES), z.int()),
  /** Lines that differ and have no reason. */
  open: z.int(),
  /** Whether it is the one that counts for its kind of file. */
  inForce: z.boolean(),
  final: z.enum(AGAINST_FINAL),
});
export type CheckSummary = z.infer<typeof checkSummary>;

export const keptLine = checkLine.extend({
  id: rowId,
  /** Why it is accepted that it differs. */
  reason: z.object({ text: z.string(), on: isoDate }).nullable(),
  /** The reason given for the same difference at an earlier check of this kind of file; null where none was. */
  earlierReason: z.string().nullable(),
});
export type KeptLine = z.infer<typeof keptLine>;

/** A page of which a picture is kept. Sizes in points tell where a box lies on it. */
export const pictured = z.object({
  page: z.int().positive(),
  widthPx: z.int(),
  heightPx: z.int(),
  widthPt: z.number().positive(),
  heightPt: z.number().positive(),
});
export type Pictured = z.infer<typeof pictured>;

export const checkDetail = checkSummary.extend({
  workId: rowId,
  editionId: rowId,
  formatName: z.string(),
  lines: z.array(keptLine),
  /** Pages of a PDF; null for other files. */
  pages: z.int().nullable(),
  pictured: z.array(pictured),
  /** What was read is as it was kept, by its hash. */
  intact: z.boolean(),
  /** Whether an earlier check of this kind was of another file; null where there was none. */
  otherThanBefore: z.object({ fileName: z.string(), checkedOn: isoDate }).nullable(),
});
export type CheckDetail = z.infer<typeof checkDetail>;

export const readProofFile = operation({
  name: 'proofChecks.read',
  kind: 'reading',
  summary: 'Read a final file that lies ready, beside the catalogue, so that it can be checked.',
  input: z.object({ file: stagedId, kind, ...job }),
  output: z.object({
    /** What was read, lying ready for proofChecks.record. */
    reading: stagedId,
    fileName: z.string(),
    bytes: z.int(),
    sha256: z.string(),
  }),
  errors: ['CANCELLED', 'DISK_TROUBLE', 'IN_USE'],
});

export const recordCheck = operation({
  name: 'proofChecks.record',
  kind: 'command',
  summary: 'Hold what was read from a final file against the record of a format, and keep the result.',
  input: z.object({ formatId: rowId, kind, reading: stagedId, ...job }),
  output: checkSummary,
  errors: ['FIELD_LOCKED'],
});

export const listChecks = operation({
  name: 'proofChecks.list',
  kind: 'query',
  summary: 'The kinds of final file of a format, and every check of them, the newest first.',
  input: z.object({ formatId: rowId, asOf }),
  output: z.object({
    workId: rowId,
    editionId: rowId,
    formatName: z.string(),
    /** Whether a file of it can be checked: a retired or cancelled format is kept as it is. */
    running: z.boolean(),
    kinds: z.array(
      z.object({
        kind,
        /** The final file in force. */
        final: formatFile.nullable(),
        /** The check that counts. */
        inForce: rowId.nullable(),
      }),
    ),
    checks: z.array(checkSummary),
  }),
  errors: [],
});

export const showCheck = operation({
  name: 'proofChecks.show',
  kind: 'query',
  summary: 'One check of a final file, line by line, with the reasons that were given.',
  input: z.object({ checkId: rowId, asOf }),
  output: checkDetail,
  errors: [],
});

/** Pictures handed over at once. */
export const PICTURES_AT_ONCE = 12;

export const checkPictures = operation({
  name: 'proofChecks.pictures',
  kind: 'query',
  summary: `Pictures of pages of a checked file as PNG, at most ${PICTURES_AT_ONCE} at once.`,
  input: z.object({ checkId: rowId, pages: z.array(z.int().positive()).min(1).max(PICTURES_AT_ONCE) }),
  output: z.object({ pictures: z.array(z.object({ page: z.int(), png: z.base64() })) }),
  errors: ['CATALOGUE_DAMAGED'],
});

export const giveReason = operation({
  name: 'proofChecks.reason',
  kind: 'command',
  summary: 'Say why it is accepted that a line of a check differs; a reason is kept for ever.',
  input: z.object({ lineId: rowId, reason: filledText }),
  output: z.object({ checkId: rowId, open: z.int() }),
  errors: ['ALREADY_EXISTS', 'STEP_REFUSED'],
});
