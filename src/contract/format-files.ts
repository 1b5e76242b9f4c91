import { z } from 'zod';
import { anyText, filledText, isoDate, operation, rowId } from './operation.ts';
import { FILE_KINDS, type FileKind } from './terms.ts';

/** SHA-256 of the file's bytes as 64 lower-case hexadecimal digits. */
const sha256 = z.string().regex(/^[0-9a-f]{64}$/, {
  error: 'A SHA-256 is 64 digits from 0 to 9 and a to f, in small letters.',
});

export const formatFile = z.object({
  id: rowId,
  kind: z.enum(FILE_KINDS),
  fileName: z.string(),
  finalOn: isoDate,
  sha256: z.string().nullable(),
  note: z.string(),
  /** Null while it is in force. */
  ended: z.object({ on: isoDate, how: z.enum(['replaced', 'withdrawn']), reason: z.string() }).nullable(),
});
export type FormatFile = z.infer<typeof formatFile>;

export const recordFormatFile = operation({
  name: 'formats.recordFile',
  kind: 'command',
  summary:
    'Record a final file of a format; it takes the place of the one of its kind that was in force, which is kept as replaced.',
  input: z.object({
    formatId: rowId,
    kind: z.enum(FILE_KINDS),
    /** The file's name without its folders. */
    fileName: filledText.max(255, { error: 'Keep the file name under 256 characters.' }),
    /** The day it was final; today where left out. */
    finalOn: isoDate.optional(),
    sha256: sha256.nullable().default(null),
    note: anyText.default(''),
  }),
  output: z.object({ fileId: rowId, replacedId: rowId.nullable() }),
  errors: ['FIELD_LOCKED'],
});

export const withdrawFormatFile = operation({
  name: 'formats.withdrawFile',
  kind: 'command',
  summary: 'Withdraw a final file that turned out not to be final; it is kept as withdrawn.',
  input: z.object({ id: rowId, reason: filledText, on: isoDate.optional() }),
  output: z.object({ fileId: rowId }),
  errors: ['FIELD_LOCKED', 'STEP_REFUSED'],
});

/** How the final file of a kind and its checks stand. */
export interface FileStanding {
  formatId: number;
  kind: FileKind;
  /** The final file in force; null where none is recorded. */
  finalName: string | null;
  /** The check that counts; null where none does. */
  checkedName: string | null;
  checkedOn: string | null;
  /** Lines of it that differ: without a reason, and with one. */
  open: number;
  reasoned: number;
  /** Checks of this kind of file ever, of whatever file. */
  checks: number;
}
