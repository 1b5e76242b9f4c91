import type { Finding } from '../../../../src/contract/audit.ts';
import type { Catalogue } from '../rows.ts';

/** One fault put into the clean catalogue, and what its rule says about it. */
export interface Plant {
  plant(catalogue: Catalogue): void;
  /** Part of the message. */
  says: string;
  about?: Partial<Pick<Finding, 'workId' | 'editionId' | 'formatId' | 'listingId' | 'isbn13'>>;
}

/** Plants by the id of the rule that finds them. */
export type Plants = Record<string, Plant>;
