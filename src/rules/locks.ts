import type { EditionFields } from '../contract/editions.ts';
import type { FormatFields } from '../contract/formats.ts';
import type { ListingFields } from '../contract/listings.ts';
import type { LOCKABLE_FIELDS } from '../contract/terms.ts';

// The lock policy as data: which field locks when, why, and on whose word. The database's triggers hold the
// same policy; a test walks every field through every standing and shows that both agree.

/** `submission`: the first 'sent' of a listing; `on sale`: the first 'selling'; `end`: retired, cancelled or gone. */
export type LocksAt = 'submission' | 'on sale' | 'end';

interface Lock {
  /** Plain name, as screens and refusals show it. */
  name: string;
  at: LocksAt;
}

const IDENTITY = 'submission';

export const EDITION_LOCKS: Record<keyof EditionFields, Lock> = {
  title: { name: 'title', at: IDENTITY },
  subtitle: { name: 'subtitle', at: IDENTITY },
  number: { name: 'edition number', at: IDENTITY },
  statement: { name: 'edition statement', at: IDENTITY },
  contributors: { name: 'contributors', at: IDENTITY },
  language: { name: 'language', at: IDENTITY },
  imprint: { name: 'imprint', at: IDENTITY },
  series: { name: 'series', at: IDENTITY },
  seriesNumber: { name: 'series volume', at: IDENTITY },
  description: { name: 'description', at: 'end' },
  keywords: { name: 'keywords', at: 'end' },
  subjects: { name: 'subjects', at: 'end' },
  audience: { name: 'audience', at: 'end' },
  ageFrom: { name: 'age from', at: 'end' },
  ageTo: { name: 'age to', at: 'end' },
};

export const FORMAT_LOCKS: Record<keyof FormatFields, Lock> = {
  form: { name: 'product form', at: IDENTITY },
  formDetail: { name: 'file format', at: IDENTITY },
  caseKind: { name: 'kind of case', at: IDENTITY },
  largePrint: { name: 'large print', at: IDENTITY },
  publicationDate: { name: 'publication date', at: 'on sale' },
  onSaleDate: { name: 'on-sale date', at: 'on sale' },
  trimWidthUm: { name: 'trim width', at: 'end' },
  trimHeightUm: { name: 'trim height', at: 'end' },
  pages: { name: 'pages', at: 'end' },
  durationMinutes: { name: 'duration', at: 'end' },
  interiorColour: { name: 'interior colour', at: 'end' },
  paper: { name: 'paper', at: 'end' },
  finish: { name: 'finish', at: 'end' },
  insideCoverPrint: { name: 'printing inside the cover', at: 'end' },
  rightToLeft: { name: 'right-to-left reading', at: 'end' },
  note: { name: 'note', at: 'end' },
  prices: { name: 'prices', at: 'end' },
};

export const LISTING_LOCKS: Record<keyof ListingFields, Lock> = {
  onSaleDate: { name: 'on-sale date', at: 'on sale' },
  discountBp: { name: 'discount', at: 'end' },
  returns: { name: 'returns', at: 'end' },
  printCost: { name: 'print cost', at: 'end' },
  reference: { name: 'reference', at: 'end' },
  note: { name: 'note', at: 'end' },
};

/** Why a field locks at each point, and on whose word. */
export const LOCK_REASONS: Record<LocksAt, { reason: string; source: string }> = {
  submission: {
    reason:
      'A channel keeps what was first submitted under a number; it does not let a publisher change it afterwards.',
    source: 'Common practice, no source; ISBN Users’ Manual, what calls for a new number (sections 5 and 6).',
  },
  'on sale': { reason: 'The day has been reached; it is history now.', source: 'Edition Ledger.' },
  end: { reason: 'What has ended can be read for ever and changed never.', source: 'Edition Ledger.' },
};

const NAMES: Record<string, string> = Object.fromEntries([
  ...[LISTING_LOCKS, FORMAT_LOCKS, EDITION_LOCKS].flatMap((policy) =>
    Object.entries(policy).map(([field, lock]) => [field, lock.name]),
  ),
  ['isbn', 'ISBN'],
]);

/** Plain name of a field, as screens and refusals show it. */
export function fieldName(field: string): string {
  return NAMES[field] ?? field;
}

/** Where a record stands, as far as locks go. */
export interface LockFacts {
  submitted: boolean;
  onSale: boolean;
  ended: boolean;
  /** An open recorded correction lets identity fields change once more. */
  correcting: boolean;
  /** Fields that a channel it was submitted to locks too. */
  more: readonly (typeof LOCKABLE_FIELDS)[number][];
}

/** What a channel's own lock on one field covers beside it: a trim size is two measures, an audience has its ages. */
const TOGETHER: Record<string, string[]> = { trimWidthUm: ['trimHeightUm'], audience: ['ageFrom', 'ageTo'] };

/** The fields of a policy that are locked for a record standing so. */
export function lockedFields<F extends string>(policy: Record<F, Lock>, facts: LockFacts): F[] {
  const more = new Set<string>(facts.more.flatMap((field) => [field, ...(TOGETHER[field] ?? [])]));
  return (Object.keys(policy) as F[]).filter((field) => {
    const { at } = policy[field];
    if (facts.ended) return true;
    if (more.has(field)) return true;
    if (at === 'submission') return facts.submitted && !facts.correcting;
    return at === 'on sale' && facts.onSale;
  });
}

/** The sentence that a refused change is answered with: which fields, since when, by what, and the ways forward. */
export function lockedSentence(
  fields: readonly string[],
  lock: { since: string; by: string; correctable: boolean },
): string {
  const names = fields.map(fieldName).join(', ');
  const ways = lock.correctable
    ? 'Leave it as it is, record a correction (every listing is taken back and none was cleared), or prepare the next edition with new numbers.'
    : 'Leave it as it is, or prepare the next edition with new numbers.';
  return `Locked since ${lock.since} (sent to ${lock.by}): ${names}. ${ways}`;
}
