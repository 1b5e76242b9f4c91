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
import type { Stock } from './stock.ts';

/** The record a finding is about: ids from the work down, null where it is about nothing so narrow. */
export type About = Pick<Finding, 'workId' | 'editionId' | 'formatId' | 'listingId' | 'taskId' | 'isbn13'>;

/** One thing a rule saw: what is wrong, naming the records, and where. */
export interface Found extends About {
  message: string;
}

/** The words of a rule. */
interface Words {
  id: string;
  /** What should hold, as one sentence. */
  sentence: string;
  severity: Severity;
  /** How to mend what it finds. */
  mend: string;
  source: string;
}

/**
 * Looks at the records of one work, and, where it is a rule `of` numbers or tasks, at each number or task that belongs to
 * no work. Works are judged one by one, so that a change has only its own works judged anew: nothing it says about a
 * work may depend on another one.
 */
export interface OwnRule extends Words {
  of?: 'numbers' | 'tasks';
  find(facts: Facts): Found[];
}

/** What rules look for beyond one work: entries that works bring, kept under keys. */
export interface Index<E> {
  /** What the records bring, each under its key; the same records always bring the same. */
  entries(facts: Facts): Iterable<readonly [key: string, entry: E]>;
  /** The order of the entries of one key; entries of which none comes first are one and the same. */
  order(a: E, b: E): number;
}

/** Looks at what different works, or numbers of none, brought under one key: a change has only its keys judged anew. */
export interface KeyedRule<E> extends Words {
  by: Index<E>;
  /** What it says about one key; it should not need to go through all entries. `base` holds no works. */
  judge(entries: readonly E[], base: Facts): Found[];
  /** What else a mending looks at, where what was found belongs to no work. */
  beside?(entries: readonly E[]): Partial<Facts>;
}

/** Looks at how many numbers of which block are taken. */
export interface StockRule extends Words {
  count(stock: Stock): Found[];
}

/** A rule as data: its words, and a pure function from facts to what it saw. */
export type Rule = OwnRule | KeyedRule<unknown> | StockRule;

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

/** A rule by key as one of all rules, which look at entries of many kinds. */
export function keyed<E>(rule: KeyedRule<E>): KeyedRule<unknown> {
  return rule;
}

/** Texts by their characters' codes. */
export function byCode(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Works in the order in which they are gone through: by title, case aside, then as they were recorded. */
export function byWork(a: WorkFacts, b: WorkFacts): number {
  return a === b ? 0 : byCode(a.place, b.place) || a.id - b.id;
}

/** Editions in the order of their works and within them. */
export function byEdition(a: EditionFacts, b: EditionFacts): number {
  return byWork(a.work, b.work) || a.place - b.place;
}

/** The day this listing is to be on sale: its own, else its format's. */
export function saleDay(listing: ListingFacts): string | null {
  return listing.onSaleDate ?? listing.format.onSaleDate;
}
