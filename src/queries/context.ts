import type { OutputOf, ParsedInputOf, QueryName } from '../contract/index.ts';
import type { Step } from '../contract/jobs.ts';
import type { KeptAudit } from '../records/kept-audit.ts';
import type { ReadDb } from '../store/connection.ts';
import type { Staging } from '../store/staging.ts';

/** What a query works with: a reading connection and the local calendar day. */
export interface QueryContext {
  /** The catalogue as it stands now. */
  readonly db: ReadDb;
  /** The catalogue as its own dates place it on a past day; without a day, as it stands now. */
  on(asOf: string | undefined): ReadDb;
  /** The audit as it was last judged, brought up to date by what has changed since. */
  readonly audit: KeptAudit;
  /** YYYY-MM-DD */
  readonly today: string;
  readonly file: {
    readonly path: string;
    readonly name: string;
    readonly readOnly: boolean;
    readonly warnings: readonly string[];
    readonly schemaVersion: number;
  };
}

/** What a query that may take long works with, one whose input names a `job`. */
export interface LongQueryContext extends QueryContext {
  /** Files on their way in and out. */
  readonly files: Staging;
  /** Tells how far long work has come; throws CANCELLED. */
  readonly step: Step;
}

/** Answers one query; a reading connection cannot write by accident. */
export type QueryHandler<N extends QueryName> = (
  context: 'job' extends keyof ParsedInputOf<N> ? LongQueryContext : QueryContext,
  input: ParsedInputOf<N>,
) => OutputOf<N>;

/** The handlers of one noun's file, by operation name. */
export type Queries<N extends QueryName> = { [K in N]: QueryHandler<K> };
