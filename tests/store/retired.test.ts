import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

// A retired format can be read for ever and changed never: every column of it, of its edition and of its listing is
// attacked with plain SQL. What stays open on purpose is named here, and must go through.

const TODAY = '2026-03-02';
let catalogue: TestCatalogue;
let raw: Database.Database;
let at: { edition: number; format: number; listing: number; unsent: number };

beforeAll(() => {
  catalogue = openTestCatalogue(TODAY);
  const { call } = catalogue;
  call('blocks.add', { prefix: '979-8-969999' });
  const edition = call('works.create', {
    title: 'The Salt Almanac',
    contributors: [{ role: 'A01', name: 'Maren Oskarsdal' }],
    keywords: ['salt'],
    subjects: [{ scheme: 'own', code: 'NOVEL' }],
  }).editionId;
  const format = call('formats.create', {
    editionId: edition,
    form: 'BB',
    prices: [{ currency: 'GBP', amountMinor: 999 }],
  }).formatId;
  call('numbers.assign', { formatId: format });
  const list = (name: string) =>
    call('listings.create', {
      formatId: format,
      channelId: call('channels.create', { name }).channelId,
      returns: 'Y',
    }).listingId;
  const listing = list('Printworks Direct');
  const unsent = list('Broadside Wholesale');
  call('listings.move', { id: listing, to: 'proof' });
  const amount = { amountMinor: 2500, currency: 'GBP' };
  call('proofs.record', {
    listingId: listing,
    outcome: 'clear for sale',
    proof: 'electronic',
    costs: [{ kind: 'upload', amount }],
  });
  call('listings.move', { id: listing, to: 'leaving' });
  call('retirement.promise', { listingId: listing, promisedBy: '2026-03-09' });
  call('retirement.gone', { listingId: listing, evidence: 'looked' });
  call('retirement.returns', { listingId: listing, until: '2026-06-01' });
  call('retirement.count', { formatId: format, place: 'Cellar', copies: 4 });
  call('retirement.outOfPrint', { editionId: edition });
  aliveBeside(edition);
  at = { edition, format, listing, unsent };
  raw = new Database(catalogue.file);
});
afterAll(() => {
  raw.close();
  catalogue.close();
});

/** A second work, format, listing, round and edition, so that every reference could lead elsewhere. */
function aliveBeside(edition: number): void {
  const { call } = catalogue;
  const other = call('works.create', { title: 'Fen Light' }).editionId;
  expect(other).toBe(edition + 1);
  const formatId = call('formats.create', { editionId: other, form: 'BC' }).formatId;
  call('numbers.assign', { formatId });
  for (const channelId of [1, 2, call('channels.create', { name: 'Lanternshelf' }).channelId]) {
    const { listingId } = call('listings.create', { formatId, channelId });
    for (let round = 0; round < 2; round += 1) {
      call('listings.move', { id: listingId, to: 'proof' });
      call('proofs.record', { listingId, outcome: 'new file needed', proof: 'electronic' });
    }
  }
}

/** What the file answers; whatever happens is rolled back. */
function attempt(sql: string): string {
  raw.exec('BEGIN');
  try {
    raw.exec(sql);
    return 'done';
  } catch (error) {
    return String(error);
  } finally {
    raw.exec('ROLLBACK');
  }
}

const REFUSED = /FIELD_LOCKED|STEP_REFUSED|NUMBER_|IN_USE|ALREADY_EXISTS/;

interface Column {
  name: string;
  type: string;
  hidden: number;
  pk: number;
}

const columnsOf = (table: string) =>
  (raw.pragma(`table_xinfo(${table})`) as Column[]).filter(({ hidden, pk }) => hidden === 0 && pk === 0);

/** A changed value for a column, as SQL. */
function other({ name, type }: Column): string {
  if (type === 'INTEGER') return `coalesce("${name}", 0) + 1`;
  return name.endsWith('_on') || name.endsWith('_date') ? "'2020-01-01'" : "'B999'";
}

/** The tables that tell of a format, with which row is its own. */
const TABLES: [table: string, where: (column: string) => string][] = [
  ['edition', () => `id = ${at.edition}`],
  ['edition_contributor', () => `edition_id = ${at.edition}`],
  ['edition_subject', () => `edition_id = ${at.edition}`],
  ['edition_keyword', () => `edition_id = ${at.edition}`],
  ['format', () => `id = ${at.format}`],
  ['format_price', () => `format_id = ${at.format}`],
  ['listing', () => `id = ${at.listing}`],
  ['listing', () => `id = ${at.unsent}`],
  ['listing_step', () => `listing_id = ${at.listing}`],
  ['submission', () => `listing_id = ${at.listing}`],
  ['proof_round', () => `listing_id = ${at.listing}`],
  ['cost', () => `format_id = ${at.format}`],
  ['removal_event', () => `listing_id = ${at.listing}`],
  ['stock_count', () => `format_id = ${at.format}`],
  ['agency_record', () => `format_id = ${at.format}`],
];

it.each(TABLES)('%s refuses every changed column, and to be removed', (table, where) => {
  const condition = where('');
  const id = raw.prepare(`SELECT id FROM "${table}" WHERE ${condition}`).pluck().get() as number;
  for (const column of columnsOf(table)) {
    if (table === 'edition' && column.name === 'replaces_id') continue;
    const sql = `UPDATE "${table}" SET "${column.name}" = ${other(column)} WHERE id = ${id}`;
    expect(attempt(sql), sql).toMatch(REFUSED);
  }
  expect(attempt(`DELETE FROM "${table}" WHERE id = ${id}`)).toMatch(REFUSED);
});

it.each([
  ['edition_contributor', "(edition_id, position, role, name) VALUES (:edition, 9, 'A01', 'x')"],
  ['edition_subject', "(edition_id, position, scheme, code) VALUES (:edition, 9, 'own', 'x')"],
  ['edition_keyword', "(edition_id, position, keyword) VALUES (:edition, 9, 'x')"],
  ['format_price', "(format_id, currency, amount_minor) VALUES (:format, 'EUR', 1)"],
  [
    'listing_step',
    "(listing_id, from_standing, to_standing, on_date) VALUES (:unsent, 'unsent', 'sent', '2026-03-02')",
  ],
  [
    'submission',
    `(listing_id, on_date, taken_on, sheet) VALUES (:listing, '2026-03-02', '2026-03-02', '{"items":[]}')`,
  ],
  [
    'proof_round',
    "(listing_id, on_date, proof, outcome) VALUES (:listing, '2026-03-02', 'physical', 'clear for sale')",
  ],
  [
    'cost',
    "(format_id, kind, amount_minor, currency, on_date) VALUES (:format, 'other', 1, 'GBP', '2026-03-02')",
  ],
  ['removal_event', "(listing_id, kind, on_date) VALUES (:listing, 'chased', '2026-03-02')"],
  ['agency_record', "(format_id, out_of_print_on) VALUES (:format, '2026-03-02')"],
] as const)('%s takes no further row', (table, rest) => {
  const filled = rest.replace(/:(edition|format|listing|unsent)/g, (_all, name: keyof typeof at) =>
    String(at[name]),
  );
  expect(attempt(`INSERT INTO "${table}" ${filled}`), filled).toMatch(REFUSED);
});

it('stays open for what goes on after the end: returns, counts of copies, bills that come later, the link to what it replaced', () => {
  expect(
    attempt(`UPDATE returns_window SET until = '2026-09-01', note = 'x' WHERE listing_id = ${at.listing}`),
  ).toBe('done');
  expect(attempt(`UPDATE returns_window SET listing_id = ${at.unsent}`)).toMatch(REFUSED);
  expect(attempt('DELETE FROM returns_window')).toMatch(REFUSED);
  expect(
    attempt(
      `INSERT INTO stock_count (format_id, place, copies, counted_on) VALUES (${at.format}, 'Cellar', 3, '2026-03-09')`,
    ),
  ).toBe('done');
  expect(
    attempt(
      `INSERT INTO cost (format_id, kind, amount_minor, currency, on_date) VALUES (${at.format}, 'other', 1, 'GBP', '2026-03-09')`,
    ),
  ).toBe('done');
  expect(
    attempt(`INSERT INTO edition (id, work_id, title, language) VALUES (99, 1, 'The Salt Almanac', 'eng');
      UPDATE edition SET replaces_id = 99 WHERE id = ${at.edition}`),
  ).toBe('done');
});

it('refuses the same through the operations, with a sentence', () => {
  expect(catalogue.refusal('editions.update', { id: at.edition, description: 'x' }).code).toBe(
    'FIELD_LOCKED',
  );
  expect(catalogue.refusal('formats.update', { id: at.format, note: 'x' }).code).toBe('FIELD_LOCKED');
  expect(catalogue.refusal('listings.update', { id: at.listing, note: 'x' }).code).toBe('FIELD_LOCKED');
  expect(catalogue.refusal('listings.update', { id: at.unsent, note: 'x' }).code).toBe('FIELD_LOCKED');
  expect(catalogue.refusal('listings.remove', { id: at.unsent }).code).toBe('FIELD_LOCKED');
});
