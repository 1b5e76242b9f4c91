import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { openApp } from '../../src/app.ts';
import { blockNumber } from '../../src/rules/isbn/index.ts';
import { raiseJournalTriggers } from '../../src/store/journal-triggers.ts';

// A block of a million numbers on a real file: opening it, finding its next free number and reading a page of it,
// with 10², 10⁴ and 10⁶ numbers taken. The numbers are laid in without the journal, which is not what is measured.

const PREFIX = '978-0-14';
const BLOCK = { digits: '978014', publicationDigits: 6 };

function lay(file: string, taken: number): void {
  const raw = new Database(file);
  raw.exec('DROP TRIGGER journal_number_added');
  const insert = raw.prepare(
    "INSERT INTO number (isbn13, block_id, block_index, reserved_for, reserved_on) VALUES (?, 1, ?, 'bench', '2020-01-01')",
  );
  raw.transaction(() => {
    for (let index = 0; index < taken; index += 1) insert.run(blockNumber(BLOCK, index), index);
  })();
  raiseJournalTriggers(raw);
  raw.close();
}

/** Median of some timings, in milliseconds. */
function median(work: () => void, times = 15): number {
  const taken = Array.from({ length: times }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return taken[Math.floor(times / 2)] ?? 0;
}

function measure(taken: number): Record<string, number> {
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-bench-'));
  const file = join(folder, 'block.ledger');
  const first = openApp({ file });
  first.call('blocks.add', { prefix: PREFIX });
  first.close();
  lay(file, taken);
  const app = openApp({ file });
  const ask = (name: string, input: object) => () => {
    const answer = app.call(name, input);
    if (!answer.ok) throw new Error(answer.error.message);
  };
  const timings = {
    'open the block and find its next free number': median(ask('blocks.list', {})),
    'read a page of 100 in its middle': median(
      ask('numbers.list', { blockId: 1, from: 500_000, count: 100 }),
    ),
    'read the first 100 free numbers': median(
      ask('numbers.list', { blockId: 1, standing: 'free', count: 100 }),
    ),
    'reserve the next free number': median(ask('numbers.reserve', { blockId: 1, reservedFor: 'bench' }), 9),
  };
  app.close();
  rmSync(folder, { recursive: true });
  return timings;
}

/** Prints the timings at each size and their ratio to the smallest. */
export function bench(): void {
  const sizes = [100, 10_000, 999_900];
  const results = sizes.map(measure);
  console.log(
    'A block of 1,000,000 numbers; ratios to the same with 100 numbers taken, side by side in one run.',
  );
  console.log(['taken'.padEnd(48), ...sizes.map((size) => size.toLocaleString('en').padStart(18))].join(''));
  for (const line of Object.keys(results[0] ?? {})) {
    const base = results[0]?.[line] ?? 1;
    const cells = results.map(
      (result) => `${(result[line] ?? 0).toFixed(2)} ms ×${((result[line] ?? 0) / base).toFixed(1)}`,
    );
    console.log([line.padEnd(48), ...cells.map((cell) => cell.padStart(18))].join(''));
  }
}
