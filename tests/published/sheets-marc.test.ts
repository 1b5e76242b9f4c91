import { existsSync } from 'node:fs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { openTestCatalogue } from '../support/catalogue.ts';
import { type MarcRecord, marcRecords } from '../support/marc.ts';
import { exported, imported } from '../support/staged.ts';

/** lcnetdev/marc2bibframe2 @ 69fd54e8, CC0 1.0 (STANDARDS H, data/marc): records of two national libraries. */
const FILES = [
  { file: 'marc2bibframe2__loc_general.xml', numbers: 158, editions: 20 },
  { file: 'marc2bibframe2__british_library.xml', numbers: 130, editions: 31 },
];
const folder = new URL('../../../shared/data/marc/', import.meta.url);

/** The thirteen digits of a number as it was typed, worked out by ISO 2108 and apart from the program. */
function digitsOf(typed: string): string {
  const bare = /^[0-9Xx-]+/.exec(typed)?.[0].replaceAll('-', '') ?? '';
  if (bare.length === 13) return bare;
  const twelve = `978${bare.slice(0, 9)}`;
  const sum = [...twelve].reduce((total, digit, at) => total + Number(digit) * (at % 2 === 0 ? 1 : 3), 0);
  return `${twelve}${(10 - (sum % 10)) % 10}`;
}

/** The product form by the remark behind a number; a book of no told binding is code BA of ONIX List 150. */
function formOf(typed: string): string {
  if (/pbk|paper\b|\bsc\b/i.test(typed)) return 'paperback';
  if (/hbk|hc|cased|cloth|hardcover|bdg|binding/i.test(typed)) return 'hardcover';
  return 'BA';
}

const COLUMNS = ['Title', 'Subtitle', 'Author', 'Edition statement', 'Format', 'ISBN'];
const rowOf = (record: MarcRecord, isbn: string) => [
  record.title,
  record.subtitle,
  record.author,
  record.edition,
  formOf(isbn),
  isbn,
];

describe.each(FILES)('the records of $file as a table', ({ file, numbers, editions }) => {
  const path = new URL(file, folder);
  const present = existsSync(path);
  if (!present) console.log(`skipped: ${path.pathname} is not there`);

  it.skipIf(!present)('arrive with their numbers and edition statements, each number once', () => {
    const records = marcRecords(path);
    expect(records.filter(({ edition }) => edition !== '')).toHaveLength(editions);
    const typed = records.flatMap((record) => record.isbns.map((isbn) => ({ record, isbn })));
    expect(typed).toHaveLength(numbers);
    const catalogue = openTestCatalogue('2026-11-25');
    const csv = Papa.unparse([COLUMNS, ...typed.map(({ record, isbn }) => rowOf(record, isbn))]);
    const told = imported(catalogue, csv, { goodRowsOnly: true });

    // A number that stands in the record twice, as ISBN-10 and ISBN-13 or typed again, is taken once and named once.
    const first = new Map<string, number>();
    const again: number[] = [];
    for (const [at, { isbn }] of typed.entries()) {
      const digits = digitsOf(isbn);
      if (first.has(digits)) again.push(at + 2);
      else first.set(digits, at + 2);
    }
    expect(told.problems.map(({ row }) => row)).toEqual(again);
    for (const { row, message } of told.problems)
      expect(message).toBe(
        `This ISBN stands in row ${first.get(digitsOf(typed[row - 2]?.isbn ?? ''))} already; one number belongs to one format.`,
      );
    expect(told.made.numbers).toBe(first.size);

    const sheet = Papa.parse<Record<string, string>>(exported(catalogue, 'csv').toString('utf8').slice(1), {
      header: true,
      skipEmptyLines: true,
    }).data;
    const arrived = new Map(sheet.map((row) => [row.ISBN?.replaceAll('-', '') ?? '', row]));
    expect([...arrived.keys()].sort()).toEqual([...first.keys()].sort());
    for (const { record, isbn } of typed)
      expect(arrived.get(digitsOf(isbn)), isbn).toMatchObject({
        Title: record.title,
        'Edition statement': record.edition,
      });
    console.log(
      `${file}: ${typed.length} fields 020, ${first.size} numbers, ${again.length} of them typed twice`,
    );
    catalogue.close();
  });

  it.skipIf(!present)('name each number with a wrong digit, and record none of it', () => {
    const typed = marcRecords(path).flatMap((record) => record.isbns.map((isbn) => ({ record, isbn })));
    const wrong = typed.map(({ record, isbn }) => {
      const bare = /^[0-9Xx-]+/.exec(isbn)?.[0] ?? '';
      const check = bare.at(-1) === '7' ? '8' : '7';
      return rowOf(record, `${bare.slice(0, -1)}${check}${isbn.slice(bare.length)}`);
    });
    const catalogue = openTestCatalogue('2026-11-25');
    const told = imported(catalogue, Papa.unparse([COLUMNS, ...wrong]), { dryRun: true });
    expect(told.counts).toEqual({ new: 0, changed: 0, same: 0, refused: wrong.length });
    expect(told.problemsTotal).toBe(wrong.length);
    for (const { header, message } of told.problems) {
      expect(header).toBe('ISBN');
      expect(message).toMatch(/digit/i);
    }
    catalogue.close();
  });
});
