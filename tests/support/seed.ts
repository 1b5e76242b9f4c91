import type { ListingStanding } from '../../src/contract/terms.ts';
import type { WriteDb } from '../../src/store/connection.ts';

/** Rows for tests, written straight into the tables: each function gives the new row's id. */

export function seedEdition(
  db: WriteDb,
  given: { title?: string; number?: number; replacesId?: number; workId?: number } = {},
): number {
  const title = given.title ?? 'The Salt Almanac';
  const workId =
    given.workId ?? db.run("INSERT INTO work (title, note) VALUES (?, '')", title).lastInsertRowid;
  return db.run(
    "INSERT INTO edition (work_id, number, title, language, replaces_id) VALUES (?, ?, ?, 'eng', ?)",
    workId,
    given.number ?? null,
    title,
    given.replacesId ?? null,
  ).lastInsertRowid;
}

/** A number outside every block, with its check digit by ISO 2108 (weights 1 and 3). */
export function seedNumber(db: WriteDb, formatId: number): string {
  const taken = db.one<{ n: number }>('SELECT count(*) AS n FROM number')?.n ?? 0;
  const first = `979896999${String(taken).padStart(3, '0')}`;
  const sum = [...first].reduce((total, digit, at) => total + Number(digit) * (at % 2 === 0 ? 1 : 3), 0);
  const isbn13 = `${first}${(10 - (sum % 10)) % 10}`;
  db.run("INSERT INTO number (isbn13, format_id, assigned_on) VALUES (?, ?, '2026-01-05')", isbn13, formatId);
  return isbn13;
}

export function seedFormat(
  db: WriteDb,
  editionId: number,
  given: { form?: string; formDetail?: string; number?: boolean } = {},
): number {
  const id = db.run(
    "INSERT INTO format (edition_id, form, form_detail, planned_on) VALUES (?, ?, ?, '2026-01-02')",
    editionId,
    given.form ?? 'BC',
    given.formDetail ?? null,
  ).lastInsertRowid;
  if (given.number !== false) seedNumber(db, id);
  return id;
}

export function seedChannel(
  db: WriteDb,
  name: string,
  given: {
    proof?: 'none' | 'electronic' | 'physical';
    leadDays?: number;
    removalDays?: number;
    contact?: string;
    requestTemplate?: string;
  } = {},
): number {
  return db.run(
    'INSERT INTO channel (name, proof, lead_days, removal_days, contact, request_template) VALUES (?, ?, ?, ?, ?, ?)',
    name,
    given.proof ?? 'electronic',
    given.leadDays ?? 3,
    given.removalDays ?? 7,
    given.contact ?? '',
    given.requestTemplate ?? '',
  ).lastInsertRowid;
}

const ORDER = ['unsent', 'sent', 'proof', 'cleared', 'selling', 'leaving', 'gone'] as const;

/** A listing brought to a standing by recorded steps, all on one day. */
export function seedListing(
  db: WriteDb,
  formatId: number,
  channelId: number,
  given: { standing?: ListingStanding; on?: string; returns?: 'Y' | 'N' | 'C' | 'S' } = {},
): number {
  const id = db.run(
    'INSERT INTO listing (format_id, channel_id, returns) VALUES (?, ?, ?)',
    formatId,
    channelId,
    given.returns ?? null,
  ).lastInsertRowid;
  for (let at = 1; at <= ORDER.indexOf(given.standing ?? 'unsent'); at += 1)
    db.run(
      'INSERT INTO listing_step (listing_id, from_standing, to_standing, on_date) VALUES (?, ?, ?, ?)',
      id,
      ORDER[at - 1],
      ORDER[at],
      given.on ?? '2026-02-02',
    );
  return id;
}

export function standingOf(db: Pick<WriteDb, 'one'>, listingId: number): string | undefined {
  return db.one<{ standing: string }>('SELECT standing FROM listing WHERE id = ?', listingId)?.standing;
}

/** The choices of a release that nobody made. */
export const AS_USUAL = { printedProof: null, onSaleFixed: true };
