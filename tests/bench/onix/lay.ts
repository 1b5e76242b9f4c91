import Database from 'better-sqlite3';
import { openCatalogueFile } from '../../../src/store/catalogue-file.ts';
import { dropJournalTriggers, raiseJournalTriggers } from '../../../src/store/journal-triggers.ts';
import { markOf, noteMark } from '../../../src/store/left-as.ts';

/** A number outside every block, with its check digit (ISO 2108: weights 1 and 3). */
function isbn(count: number): string {
  const first = `978${String(count).padStart(9, '0')}`;
  const sum = [...first].reduce((total, digit, at) => total + Number(digit) * (at % 2 === 0 ? 1 : 3), 0);
  return `${first}${(10 - (sum % 10)) % 10}`;
}

function layEdition(raw: Database.Database, id: number): void {
  const run = (sql: string, ...values: unknown[]) => raw.prepare(sql).run(...values);
  run('INSERT INTO work (id, title) VALUES (?, ?)', id, `Salt Almanac ${id}`);
  run(
    `INSERT INTO edition (id, work_id, number, title, subtitle, language, imprint, series, series_number, description)
     VALUES (?, ?, 1, ?, 'A year on the marsh', 'eng', 'Halyard & Fen', 'Fen Books', ?, ?)`,
    id,
    id,
    `Salt Almanac ${id}`,
    String(id),
    'A year on the salt marsh, day by day: a drowned village & a stubborn aunt.\n\n'.repeat(4),
  );
  const list = (table: string, columns: string, ...rows: unknown[][]) => {
    for (const [at, row] of rows.entries())
      run(
        `INSERT INTO ${table} (edition_id, position, ${columns}) VALUES (?, ?, ${row.map(() => '?').join(', ')})`,
        id,
        at + 1,
        ...row,
      );
  };
  list('edition_contributor', 'role, name', ['A01', 'Maren Oskarsdal'], ['A12', 'Ilse Quayle']);
  list('edition_subject', 'scheme, code', ['thema', 'FB'], ['thema', '1DDU'], ['bisac', 'FIC000000']);
  list('edition_keyword', 'keyword', ['salt marsh'], ['almanac'], ['coast'], ['family']);
}

function layFormat(raw: Database.Database, id: number): void {
  const run = (sql: string, ...values: unknown[]) => raw.prepare(sql).run(...values);
  const print = id % 2 === 0;
  run(
    `INSERT INTO format (id, edition_id, form, form_detail, trim_width_um, trim_height_um, pages, publication_date, on_sale_date, planned_on)
     VALUES (?, ?, ?, ?, ?, ?, 288, '2027-05-06', '2027-05-06', '2026-01-05')`,
    id,
    Math.ceil(id / 2),
    print ? 'BC' : 'ED',
    print ? null : 'E101',
    print ? 129_000 : null,
    print ? 198_000 : null,
  );
  run("INSERT INTO number (isbn13, format_id, assigned_on) VALUES (?, ?, '2026-01-05')", isbn(id), id);
  for (const currency of ['EUR', 'GBP'])
    run('INSERT INTO format_price (format_id, currency, amount_minor) VALUES (?, ?, 1299)', id, currency);
}

/**
 * Lays a catalogue of formats, two an edition, into a new file: plain rows without their journal, since reading them is
 * what is measured. The numbers are invented and never printed.
 */
export function lay(file: string, formats: number): void {
  openCatalogueFile(file, { at: '2026-01-05T10:00:00.000Z' }).close();
  const raw = new Database(file);
  raw.pragma('synchronous = OFF');
  dropJournalTriggers(raw);
  const prepared = new Map<string, Database.Statement>();
  const prepare = raw.prepare.bind(raw);
  raw.prepare = ((sql: string) => {
    const known = prepared.get(sql) ?? prepare(sql);
    prepared.set(sql, known);
    return known;
  }) as typeof raw.prepare;
  raw.transaction(() => {
    for (let id = 1; id <= formats / 2; id += 1) layEdition(raw, id);
    for (let id = 1; id <= formats; id += 1) layFormat(raw, id);
  })();
  raiseJournalTriggers(raw);
  raw.close();
  // Noted as it was left, so that it is not held against the journal that it does not have.
  const side = new Database(`${file}-hold`);
  noteMark(side, markOf(file));
  side.close();
}
