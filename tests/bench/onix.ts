import { closeSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { openApp } from '../../src/app.ts';
import { type MessageTerms, writeProduct } from '../../src/exchange/onix/write.ts';
import { xmlOut } from '../../src/exchange/onix/xml-out.ts';
import { houseOf, recordPage } from '../../src/queries/onix-records.ts';
import { wrap } from '../../src/store/connection.ts';
import { dropJournalTriggers, raiseJournalTriggers } from '../../src/store/journal-triggers.ts';

// A catalogue of 100,000 formats as one ONIX message, set against the same records, ready in memory, through the same
// writer into a file (npm run bench -- onix [FORMATS]): processor time of both, in turns of one run. The rows are laid in without the journal.

const FORMATS = Number(process.argv[3] ?? 100_000);
/** Ready records written again and again for the other side of the ratio: as many as stand in memory with ease. */
const READY = 2_000;
const TERMS: MessageTerms = { version: '3.1', tags: 'reference', content: 'full' };

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

function lay(file: string): void {
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
    for (let id = 1; id <= FORMATS / 2; id += 1) layEdition(raw, id);
    for (let id = 1; id <= FORMATS; id += 1) layFormat(raw, id);
  })();
  raiseJournalTriggers(raw);
  raw.close();
}

/** Processor time of some work, in milliseconds. */
function cpu(work: () => void): number {
  const begun = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(begun);
  return (user + system) / 1000;
}

/** The same bytes from ready records, through the same writer, into a file. */
function writeReady(file: string, path: string): () => void {
  const raw = new Database(file, { readonly: true });
  const db = wrap(raw);
  const house = houseOf(db, '2026-11-25');
  const { records } = recordPage(db, { kind: 'all' }, 0, READY);
  raw.close();
  return () => {
    const handle = openSync(path, 'w');
    const out = xmlOut(TERMS.tags);
    for (let done = 0; done < FORMATS; done += READY) {
      for (const [index, record] of records.entries()) {
        writeProduct(out, TERMS, house, record);
        if (index % 100 === 99) writeSync(handle, out.take());
      }
    }
    closeSync(handle);
  };
}

/** Prints processor time of export and bare writing, their ratio, and the memory at its most. */
export function bench(): void {
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-bench-'));
  const file = join(folder, 'onix.ledger');
  openApp({ file }).close();
  lay(file);
  const app = openApp({ file, today: () => '2026-11-25' });
  const exportAll = () => {
    const answer = app.call('exports.make', { as: 'onix' });
    if (!answer.ok) throw new Error(answer.error.message);
    const { file: made, records, bytes } = answer.value as { file: string; records: number; bytes: number };
    console.log(`${records.toLocaleString('en')} records, ${(bytes / 1_000_000).toFixed(0)} MB`);
    app.call('files.drop', { file: made });
  };
  const ready = writeReady(file, join(folder, 'ready.xml'));
  const [full, bare] = [cpu(exportAll), cpu(ready)];
  const peak = process.resourceUsage().maxRSS / 1024;
  app.close();
  rmSync(folder, { recursive: true });
  console.log(`export ${full.toFixed(0)} ms, bare writing ${bare.toFixed(0)} ms of processor time`);
  console.log(
    `export at ${((bare / full) * 100).toFixed(0)} % of the speed of bare writing (at least 50 % is wanted)`,
  );
  console.log(`peak memory of the whole process ${peak.toFixed(0)} MB (under 300 is wanted)`);
}
