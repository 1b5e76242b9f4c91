import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ListingStanding } from '../../src/contract/terms.ts';
import { EDITION_IDENTITY, FORMAT_IDENTITY, LISTING_STANDINGS } from '../../src/contract/terms.ts';
import {
  EDITION_LOCKS,
  FORMAT_LOCKS,
  LISTING_LOCKS,
  type LocksAt,
  lockedFields,
} from '../../src/rules/locks.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

// Walks every field through every standing and tries to change it with SQL straight at the file: what the policy
// calls locked must be refused there, what it calls open must go through.

/** A changed value for each field, as SQL; lists are changed in their own tables. */
const EDITION_SQL: Record<keyof typeof EDITION_LOCKS, string> = {
  title: "UPDATE edition SET title = 'Other' WHERE id = :edition",
  subtitle: "UPDATE edition SET subtitle = 'Other' WHERE id = :edition",
  number: 'UPDATE edition SET number = 9 WHERE id = :edition',
  statement: "UPDATE edition SET statement = 'Other' WHERE id = :edition",
  contributors: "UPDATE edition_contributor SET name = 'Other' WHERE edition_id = :edition",
  language: "UPDATE edition SET language = 'fre' WHERE id = :edition",
  imprint: "UPDATE edition SET imprint = 'Other' WHERE id = :edition",
  series: "UPDATE edition SET series = 'Other' WHERE id = :edition",
  seriesNumber: "UPDATE edition SET series_number = '9' WHERE id = :edition",
  description: "UPDATE edition SET description = 'Other' WHERE id = :edition",
  keywords: "UPDATE edition_keyword SET keyword = 'other' WHERE edition_id = :edition",
  subjects: "UPDATE edition_subject SET code = 'OTHER' WHERE edition_id = :edition",
  audience: "UPDATE edition SET audience = 'education' WHERE id = :edition",
  ageFrom: 'UPDATE edition SET age_from = 3 WHERE id = :edition',
  ageTo: 'UPDATE edition SET age_to = 99 WHERE id = :edition',
};
const FORMAT_SQL: Record<keyof typeof FORMAT_LOCKS, string> = {
  form: "UPDATE format SET form = 'BE' WHERE id = :format",
  formDetail: "UPDATE format SET form_detail = 'B504' WHERE id = :format",
  caseKind: "UPDATE format SET case_kind = 'cloth' WHERE id = :format",
  largePrint: 'UPDATE format SET large_print = 1 WHERE id = :format',
  publicationDate: "UPDATE format SET publication_date = '2027-01-01' WHERE id = :format",
  onSaleDate: "UPDATE format SET on_sale_date = '2027-01-01' WHERE id = :format",
  trimWidthUm: 'UPDATE format SET trim_width_um = 1000 WHERE id = :format',
  trimHeightUm: 'UPDATE format SET trim_height_um = 1000 WHERE id = :format',
  pages: 'UPDATE format SET pages = 999 WHERE id = :format',
  durationMinutes: 'UPDATE format SET duration_minutes = 999 WHERE id = :format',
  interiorColour: "UPDATE format SET interior_colour = 'premium colour' WHERE id = :format",
  paper: "UPDATE format SET paper = 'other' WHERE id = :format",
  finish: "UPDATE format SET finish = 'uncoated' WHERE id = :format",
  insideCoverPrint: 'UPDATE format SET inside_cover_print = 1 WHERE id = :format',
  rightToLeft: 'UPDATE format SET right_to_left = 1 WHERE id = :format',
  note: "UPDATE format SET note = 'other' WHERE id = :format",
  prices: 'UPDATE format_price SET amount_minor = 1 WHERE format_id = :format',
};
const LISTING_SQL: Record<keyof typeof LISTING_LOCKS, string> = {
  onSaleDate: "UPDATE listing SET on_sale_date = '2027-01-01' WHERE id = :listing",
  discountBp: 'UPDATE listing SET discount_bp = 1 WHERE id = :listing',
  returns: "UPDATE listing SET returns = 'C' WHERE id = :listing",
  printCost: "UPDATE listing SET print_cost_minor = 1, print_cost_currency = 'GBP' WHERE id = :listing",
  reference: "UPDATE listing SET reference = 'other' WHERE id = :listing",
  note: "UPDATE listing SET note = 'other' WHERE id = :listing",
};

interface Subject {
  edition: number;
  format: number;
  listing: number;
}

let catalogue: TestCatalogue;
let raw: Database.Database;
const bare: { prefix: string } = { prefix: '979-8-969999' };

beforeAll(() => {
  catalogue = openTestCatalogue('2026-03-02');
  catalogue.call('blocks.add', bare);
  raw = new Database(catalogue.file);
});
afterAll(() => {
  raw.close();
  catalogue.close();
});

let made = 0;
/** A hardcover of a new edition, listed on a new channel and moved to a standing. */
function subjectAt(standing: ListingStanding, locksMore: string[] = []): Subject {
  made += 1;
  const { editionId } = catalogue.call('works.create', {
    title: `Work ${made}`,
    contributors: [{ role: 'A01', name: 'Maren Oskarsdal' }],
    keywords: ['one'],
    subjects: [{ scheme: 'own', code: 'ONE' }],
  });
  const { formatId } = catalogue.call('formats.create', {
    editionId,
    form: 'BB',
    caseKind: 'laminate',
    trimWidthUm: 129_000,
    trimHeightUm: 198_000,
    prices: [{ currency: 'GBP', amountMinor: 999 }],
  });
  catalogue.call('numbers.assign', { formatId });
  const channel = { name: `Channel ${made}`, locksMore: locksMore as never };
  const { channelId } = catalogue.call('channels.create', channel);
  const { listingId } = catalogue.call('listings.create', { formatId, channelId });
  if (standing !== 'unsent') catalogue.call('listings.move', { id: listingId, to: standing });
  return { edition: editionId, format: formatId, listing: listingId };
}

/** Whether the file itself refuses the change; whatever happens is rolled back. */
function refusedByFile(sql: string, subject: Subject): boolean {
  const filled = sql.replace(/:(edition|format|listing)/g, (_all, name: keyof Subject) =>
    String(subject[name]),
  );
  raw.exec('BEGIN');
  try {
    raw.exec(
      filled.replace(/^UPDATE format SET (form|case_kind) = '(BE|cloth)'/, (all, column) =>
        column === 'form' ? "UPDATE format SET case_kind = NULL, form = 'BE'" : all,
      ),
    );
    return false;
  } catch (error) {
    expect(String(error)).toContain('FIELD_LOCKED');
    return true;
  } finally {
    raw.exec('ROLLBACK');
  }
}

describe.each(LISTING_STANDINGS)('with its only listing %s', (standing) => {
  it('locks in the file exactly what the policy says', () => {
    const subject = subjectAt(standing);
    const submitted = standing !== 'unsent';
    const onSale = ['selling', 'leaving', 'gone'].includes(standing);
    const facts = { submitted, onSale, ended: false, correcting: false, more: [] };
    const check = <F extends string>(
      policy: Record<F, { name: string; at: LocksAt }>,
      sql: Record<F, string>,
      ended: boolean,
    ) => {
      const locked = new Set(lockedFields(policy, { ...facts, ended }));
      for (const field of Object.keys(policy) as F[])
        expect([field, refusedByFile(sql[field], subject)]).toEqual([field, locked.has(field)]);
    };
    check(EDITION_LOCKS, EDITION_SQL, standing === 'gone');
    check(FORMAT_LOCKS, FORMAT_SQL, standing === 'gone');
    check(LISTING_LOCKS, LISTING_SQL, standing === 'gone');
  });
});

it('locks every field of a cancelled format', () => {
  const subject = subjectAt('unsent');
  catalogue.call('formats.cancel', { id: subject.format, reason: 'dropped' });
  for (const [field, sql] of Object.entries(FORMAT_SQL))
    expect([field, refusedByFile(sql, subject)]).toEqual([field, true]);
});

it.each([
  'trimWidthUm',
  'pages',
  'interiorColour',
  'paper',
  'finish',
  'publicationDate',
  'onSaleDate',
  'description',
  'audience',
])('locks %s too where the channel says so, from its submission on', (field) => {
  const sql = { ...FORMAT_SQL, ...EDITION_SQL }[field as keyof typeof FORMAT_SQL];
  const [before, after, elsewhere] = [
    subjectAt('unsent', [field]),
    subjectAt('sent', [field]),
    subjectAt('sent'),
  ];
  expect([before, after, elsewhere].map((subject) => refusedByFile(sql, subject))).toEqual([
    false,
    true,
    false,
  ]);
  const policy = { ...FORMAT_LOCKS, ...EDITION_LOCKS };
  const facts = { submitted: true, onSale: false, ended: false, correcting: false, more: [field as never] };
  expect(lockedFields(policy, facts)).toContain(field);
});

it('opens identity fields once more by a recorded correction, and only then', () => {
  const subject = subjectAt('proof');
  const id = subject.edition;
  expect(catalogue.refusal('editions.correct', { id, reason: 'a misspelt name' }).code).toBe('STEP_REFUSED');
  catalogue.call('listings.move', { id: subject.listing, to: 'unsent', note: 'taken back' });
  expect(catalogue.refusal('editions.update', { id, title: 'Mended' }).message).toContain(
    'record a correction',
  );
  catalogue.call('editions.correct', { id, reason: 'a misspelt name' });
  catalogue.call('editions.update', { id, title: 'Mended' });
  catalogue.call('formats.update', { id: subject.format, caseKind: 'cloth' });
  catalogue.call('listings.move', { id: subject.listing, to: 'sent' });
  expect(catalogue.refusal('editions.update', { id, title: 'Again' }).code).toBe('FIELD_LOCKED');
  catalogue.call('listings.move', { id: subject.listing, to: 'cleared' });
  catalogue.call('listings.move', { id: subject.listing, to: 'unsent' });
  expect(catalogue.refusal('editions.correct', { id, reason: 'too late' }).message).toContain(
    'none ever cleared',
  );
});

it('names as identity what the policy locks at the submission', () => {
  const atSubmission = (policy: Record<string, { at: LocksAt }>) =>
    Object.keys(policy).filter((field) => policy[field]?.at === 'submission');
  expect(atSubmission(EDITION_LOCKS)).toEqual([...EDITION_IDENTITY]);
  expect(atSubmission(FORMAT_LOCKS)).toEqual([...FORMAT_IDENTITY]);
});
