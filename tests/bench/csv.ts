import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bareInserts, importCsv, TABLES } from './csv/import.ts';

// A CSV of formats taken over by sheets.import (read, grouped, checked, recorded, journal sealed) against bare prepared
// inserts of the very same rows, in one transaction, into the same kind of file under the same settings: with the file's
// own triggers, which write the journal and the search; without triggers, but with the sealed journal as it came to be;
// and without either. Processor time, since other work on the machine stretches any other. `npm run bench -- csv [ROWS]`.

const SIZES = process.argv[3] === undefined ? [1_000, 10_000, 100_000] : [Number(process.argv[3])];

interface Measured {
  rows: number;
  taken: number;
  withTriggers: number;
  withJournal: number;
  plain: number;
}

function measure(rows: number): Measured {
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-bench-'));
  const file = join(folder, 'import.ledger');
  const taken = importCsv(file, rows);
  const measured = {
    rows,
    taken,
    withTriggers: bareInserts(folder, file, true, TABLES),
    withJournal: bareInserts(folder, file, false, [...TABLES, 'search_entry', 'journal']),
    plain: bareInserts(folder, file, false, TABLES),
  };
  rmSync(folder, { recursive: true });
  return measured;
}

/** Prints the timings of each size, their ratios, and how the import grows from one size to the next. */
export function bench(): void {
  let before: Measured | undefined;
  for (const rows of SIZES) {
    const now = measure(rows);
    const line = (what: string, ms: number) =>
      console.log(
        `  ${what.padEnd(60)} ${(ms / 1000).toFixed(2).padStart(8)} s  ×${(now.taken / ms).toFixed(2)}`,
      );
    console.log(`A CSV of ${rows.toLocaleString('en')} rows; × is the import's processor time against it.`);
    line('import: read, grouped, checked, recorded, sealed', now.taken);
    line("bare prepared inserts of the same rows, the file's triggers on", now.withTriggers);
    line('the same rows and the sealed journal, no triggers', now.withJournal);
    line('the same rows alone, no triggers and no journal', now.plain);
    const growth = before && Math.log(now.taken / before.taken) / Math.log(now.rows / before.rows);
    if (growth !== undefined) console.log(`  grows with the ${growth.toFixed(2)}th power of the rows`);
    before = now;
  }
  console.log(`Peak memory ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB, the bare rows in it.`);
}
