import { z } from 'zod';

/** Every expected refusal of the product. Anything else becomes INTERNAL with an id that the log shows. */
export const REFUSAL_CODES = [
  'BAD_INPUT',
  'NOT_FOUND',
  'UNKNOWN_OPERATION',
  'FIELD_LOCKED',
  'STEP_REFUSED',
  'NUMBER_INVALID',
  'NUMBER_SPENT',
  'NUMBER_TAKEN',
  'NUMBER_OUTSIDE_BLOCKS',
  'BLOCK_OVERLAP',
  'BLOCK_EMPTY',
  'NOT_READY',
  'ALREADY_EXISTS',
  'IN_USE',
  'READ_ONLY',
  'CATALOGUE_NEWER',
  'CATALOGUE_DAMAGED',
  'CATALOGUE_FOREIGN',
  'CATALOGUE_IN_USE',
  'CATALOGUE_CHANGED',
  'DISK_TROUBLE',
  'CANCELLED',
  'INTERNAL',
] as const;

export const refusalCode = z.enum(REFUSAL_CODES);
export type RefusalCode = z.infer<typeof refusalCode>;

/** What a caller is told when an operation is not carried out: one sentence that says what, where and how to mend it. */
export const refusalBody = z.object({
  code: refusalCode,
  message: z.string(),
  field: z.string().optional(),
});
export type RefusalBody = z.infer<typeof refusalBody>;

/** Thrown below the dispatcher, which turns it into a plain `{ok: false, error}`; nothing is half-saved. */
export class Refusal extends Error {
  readonly code: RefusalCode;
  readonly field: string | undefined;

  constructor(code: RefusalCode, message: string, field?: string) {
    super(message);
    this.name = 'Refusal';
    this.code = code;
    this.field = field;
  }

  /** The plain form that crosses IPC, HTTP and the shell. */
  body(): RefusalBody {
    return this.field === undefined
      ? { code: this.code, message: this.message }
      : { code: this.code, message: this.message, field: this.field };
  }
}
