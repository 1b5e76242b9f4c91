import type { OutputOf, ParsedInputOf, ReadingName } from '../contract/index.ts';
import type { Follower } from '../contract/jobs.ts';
import type { Staging } from '../store/staging.ts';

/** How the thread that reads files is started. Tests give a stand-in, less time or less memory. */
export interface ReaderOptions {
  /** The thread's file; the bundled program has its own. */
  entry: URL;
  /** Milliseconds after which it is ended. */
  timeMs: number;
  /** Megabytes of JavaScript memory after which it ends. */
  heapMb: number;
}

/** What a reading works with: files that lie ready, and a thread of its own; the catalogue is out of its reach. */
export interface ReadingContext {
  readonly files: Staging;
  readonly reader: ReaderOptions;
  readonly follower: Follower | undefined;
  /** Aborted when the catalogue is closed. */
  readonly closing: AbortSignal;
}

/** Carries out one reading beside the catalogue; rejects with a Refusal. */
export type ReadingHandler<N extends ReadingName> = (
  context: ReadingContext,
  input: ParsedInputOf<N>,
) => Promise<OutputOf<N>>;

/** The handlers of one noun's file, by operation name. */
export type Readings<N extends ReadingName> = { [K in N]: ReadingHandler<K> };
