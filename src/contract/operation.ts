import { z } from 'zod';
import type { RefusalBody, RefusalCode } from './refusal.ts';

/**
 * `command` changes the catalogue in one transaction; `query` runs on a reading connection; `errand` works on
 * files beside the catalogue (backups), outside any transaction; `reading` reads a user's file in a thread of its
 * own, out of the catalogue's reach, while other calls are answered.
 */
export type OperationKind = 'command' | 'query' | 'errand' | 'reading';

/** One operation, declared once: IPC, HTTP and the command line are thin transports over it. */
export interface Operation<
  Name extends string,
  Kind extends OperationKind,
  In extends z.ZodType,
  Out extends z.ZodType,
> {
  name: Name;
  kind: Kind;
  /** One plain sentence for `call --list`. */
  summary: string;
  input: In;
  output: Out;
  /** Refusals this operation may answer besides BAD_INPUT, NOT_FOUND and INTERNAL. */
  errors: readonly RefusalCode[];
}

/** Declares an operation; the return type keeps name, kind, input and output exact. */
export function operation<
  const Name extends string,
  const Kind extends OperationKind,
  In extends z.ZodType,
  Out extends z.ZodType,
>(declared: Operation<Name, Kind, In, Out>): Operation<Name, Kind, In, Out> {
  return declared;
}

/** What every transport carries back. */
export type Answer<T> = { ok: true; value: T } | { ok: false; error: RefusalBody };

/** A calendar day `YYYY-MM-DD` without time zone, checked to exist. */
export const isoDate = z.iso.date({ error: 'Write the date as YYYY-MM-DD, for example 2026-11-25.' });

/** A row id of the catalogue file. */
export const rowId = z.int().positive();

/** Trimmed text that is not empty. */
export const filledText = z
  .string()
  .trim()
  .min(1, { error: 'Fill this in.' })
  .max(2000, { error: 'Keep this under 2,000 characters.' });

/** Trimmed text that may be empty. */
export const anyText = z.string().trim().max(20_000, { error: 'Keep this under 20,000 characters.' });

/** Integer minor units (pence, cents) with an ISO 4217 currency code. */
export const money = z.object({
  amountMinor: z.int().nonnegative({ error: 'An amount cannot be negative.' }),
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/, { error: 'Write the currency as three capital letters, for example EUR.' }),
});
export type Money = z.infer<typeof money>;

/** Optional past day: the answer is then given as the catalogue's own dates place it on that day. */
export const asOf = isoDate.optional();
