import Database from 'better-sqlite3';
import { dropJournalTriggers, raiseJournalTriggers } from '../../src/store/journal-triggers.ts';

/** The nth number for measuring, with its check digit by ISO 2108 (weights 1 and 3). */
export function isbnOf(n: number): string {
  const first = `979896${String(n).padStart(6, '0')}`;
  const sum = [...first].reduce((total, digit, at) => total + Number(digit) * (at % 2 === 0 ? 1 : 3), 0);
  return `${first}${(10 - (sum % 10)) % 10}`;
}

const WORDS = '\'["Salt","Almanac","Lantern","Knots","Harbour","Fen","Tide","Rope","Keeper","Wick"]\'';
const word = (n: string) => `json_extract(${WORDS}, '$[' || ((${n}) % 10) || ']')`;

/**
 * Fills a new catalogue file with formats for measuring, four a work, with a price and a number each and one channel.
 * The journal's triggers are out of the way meanwhile: what is measured is reading, and a million entries take minutes.
 * The numbers are invented and never printed.
 */
export function growLarge(file: string, formats: number): void {
  const raw = new Database(file);
  raw.pragma('synchronous = OFF');
  raw.function('isbn_of', (n) => isbnOf(Number(n)));
  raw.exec('BEGIN');
  dropJournalTriggers(raw);
  const count = (to: number) =>
    `WITH RECURSIVE c (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM c WHERE n < ${to})`;
  const works = Math.ceil(formats / 4);
  raw.exec(`
    INSERT INTO channel (name) VALUES ('Printworks Direct');
    ${count(works)} INSERT INTO work (id, title) SELECT n, ${word('n')} || ' ' || ${word('n / 10')} || ' ' || n FROM c;
    INSERT INTO edition (id, work_id, title, language, imprint) SELECT id, id, title, 'eng', 'Halyard & Fen' FROM work;
    INSERT INTO edition_contributor (edition_id, position, role, name)
      SELECT id, 1, 'A01', 'Person ' || (id % 900) || ' ' || ${word('id')} FROM work;
    ${count(works * 4)} INSERT INTO format (id, edition_id, form, planned_on, on_sale_date)
      SELECT n, 1 + (n - 1) / 4, CASE n % 4 WHEN 0 THEN 'BC' WHEN 1 THEN 'BB' WHEN 2 THEN 'ED' ELSE 'AJ' END,
        '2026-01-02', '20' || (10 + (n % 15)) || '-05-01' FROM c;
    INSERT INTO format_price (format_id, currency, amount_minor) SELECT id, 'EUR', 500 + id % 3000 FROM format;
    INSERT INTO number (isbn13, format_id, assigned_on) SELECT isbn_of(id), id, '2026-01-05' FROM format;
    INSERT INTO listing (format_id, channel_id) SELECT id, 1 FROM format WHERE id % 2 = 0;`);
  raiseJournalTriggers(raw);
  raw.exec('COMMIT');
  raw.close();
}
