import type { Finding, Severity } from '../../contract/audit.ts';
import type {
  EditionFacts,
  Facts,
  FormatFacts,
  ListingFacts,
  NumberFacts,
  TaskFacts,
  WorkFacts,
} from './facts.ts';

/** The record a finding is about: ids from the work down, null where it is about nothing so narrow. */
export type About = Pick<Finding, 'workId' | 'editionId' | 'formatId' | 'listingId' | 'taskId' | 'isbn13'>;

/** One thing a rule saw: what is wrong, naming the records, and where. */
export interface Found extends About {
  message: string;
}

/** A rule as data: its words, and a pure function from facts to what it saw. */
export interface Rule {
  id: string;
  /** What should hold, as one sentence. */
  sentence: string;
  severity: Severity;
  /** How to mend what it finds. */
  mend: string;
  source: string;
  /**
   * Looks beyond one work: at numbers, blocks, names in other works, tasks by their day. All other rules are judged
   * work by work, so that a change has only its own works judged anew.
   */
  whole?: true;
  find(facts: Facts): Found[];
}

export const PRACTICE = 'common practice, no source';
export const OURS = 'Edition Ledger';

/** Sections of the manual as STANDARDS A10 and A11 gathered them; the seventh edition renumbered the sixth. */
const MANUAL = "ISBN Users' Manual";
export const NEVER_REUSED = `${MANUAL}, 7th edition, section 7.8 (a number is never used again)`;
export const NUMBER_PER_FORM = `${MANUAL}, 4th edition, section 5.3 (each product form has a number of its own)`;
export const NUMBER_PER_FILE_FORMAT = `${MANUAL}, 6th edition, section 6.3 (each file format has a number of its own)`;
export const UNCHANGED_KEEPS = `${MANUAL}, 4th edition, section 5.1 (an unchanged product keeps its number)`;
export const CHANGES = `${MANUAL}, 6th edition, section 5.2 (what needs a new number)`;
export const STRUCTURE = `${MANUAL}, 7th edition, section 5 (structure of a number)`;

const NOTHING: About = {
  workId: null,
  editionId: null,
  formatId: null,
  listingId: null,
  taskId: null,
  isbn13: null,
};

export function ofNothing(message: string): Found {
  return { ...NOTHING, message };
}

function ofWork(work: WorkFacts, message: string): Found {
  return { ...NOTHING, workId: work.id, message };
}

export function ofEdition(edition: EditionFacts, message: string): Found {
  return { ...NOTHING, workId: edition.workId, editionId: edition.id, message };
}

export function ofFormat(format: FormatFacts, message: string): Found {
  return {
    ...ofEdition(format.edition, message),
    formatId: format.id,
    isbn13: format.number?.isbn13 ?? null,
  };
}

export function ofListing(listing: ListingFacts, message: string): Found {
  return { ...ofFormat(listing.format, message), listingId: listing.id };
}

export function ofNumber(number: NumberFacts, message: string): Found {
  const about = number.format ? ofFormat(number.format, message) : ofNothing(message);
  return { ...about, isbn13: number.isbn13 };
}

export function ofTask(task: TaskFacts, message: string): Found {
  const about = () => {
    if (task.listing) return ofListing(task.listing, message);
    if (task.format) return ofFormat(task.format, message);
    if (task.edition) return ofEdition(task.edition, message);
    return task.work ? ofWork(task.work, message) : ofNothing(message);
  };
  return { ...about(), taskId: task.id };
}

/** What `check` says about each of the things, where it says anything. */
export function each<T>(
  things: readonly T[],
  of: (thing: T, message: string) => Found,
  check: (thing: T) => string | null,
): Found[] {
  const found: Found[] = [];
  for (const thing of things) {
    const message = check(thing);
    if (message !== null) found.push(of(thing, message));
  }
  return found;
}

const ENDED: ReadonlySet<string> = new Set(['retired', 'cancelled']);
const SUBMITTED: ReadonlySet<string> = new Set(['committed', 'proofing', 'live']);

/** Retired or cancelled: read for ever, changed never, so that nothing about it can be mended. */
export function hasEnded(format: { standing: string }): boolean {
  return ENDED.has(format.standing);
}

/** Sent to a channel and not on its way out: its record should be whole. */
export function isSubmitted(format: { standing: string }): boolean {
  return SUBMITTED.has(format.standing);
}

/** An edition with at least one format that has not ended, or with none yet. */
export function isCurrent(edition: EditionFacts): boolean {
  return edition.formats.length === 0 || edition.formats.some((format) => !hasEnded(format));
}

/** The day this listing is to be on sale: its own, else its format's. */
export function saleDay(listing: ListingFacts): string | null {
  return listing.onSaleDate ?? listing.format.onSaleDate;
}
