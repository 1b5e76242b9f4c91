import type { ErrandName, OutputOf, ParsedInputOf } from '../contract/index.ts';
import type { CatalogueFile } from '../store/catalogue-file.ts';
import type { Staging } from '../store/staging.ts';

/** What an errand works with: the open file, and the right to put another in its place. */
export interface ErrandContext {
  readonly file: CatalogueFile;
  /** Files on their way in and out. */
  readonly files: Staging;
  /** The present moment, ISO UTC. */
  readonly at: string;
  /** Full path of the program's error log, where it keeps one. */
  readonly log: string | null;
  /** Closes the catalogue, lets `swap` exchange the file, and opens it again; puts everything back when that fails. */
  exchange(swap: { to: string }): void;
}

export type ErrandHandler<N extends ErrandName> = (
  context: ErrandContext,
  input: ParsedInputOf<N>,
) => OutputOf<N>;

/** The handlers of one noun's file, by operation name. */
export type Errands<N extends ErrandName> = { [K in N]: ErrandHandler<K> };
