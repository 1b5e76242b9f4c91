import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { EXCHANGE } from './scale/exchange.ts';
import type { Line } from './scale/line.ts';
import { READING } from './scale/reading.ts';
import { compare, growth, type Measured } from './scale/turns.ts';
import { WHOLE } from './scale/whole.ts';
import { type World, worldOf } from './scale/world.ts';
import { WRITING } from './scale/writing.ts';

// One table: what the program takes against a bare way to the same rows, side by side in one run, at four sizes of a
// generated catalogue. `npm run bench -- scale [SIZES] [--only WORDS]`: `npm run bench -- scale 100,1000 --only audit`.

const LINES: readonly Line[] = [...READING, ...WRITING, ...WHOLE, ...EXCHANGE];
const SIZES = [100, 1_000, 10_000, 100_000];

interface Row {
  line: Line;
  cells: (Measured | null)[];
  rate: string;
}

function asked(): { sizes: number[]; only: string } {
  const words = process.argv.slice(2).filter((word) => word !== 'scale');
  const at = words.indexOf('--only');
  const only = at < 0 ? '' : (words[at + 1] ?? '');
  const sizes = (words.find((word) => /^[\d,]+$/.test(word)) ?? SIZES.join(',')).split(',').map(Number);
  return { sizes, only };
}

function measure(rows: Row[], world: World): void {
  for (const row of rows) {
    const { line } = row;
    if (line.upTo !== undefined && world.formats > line.upTo) {
      row.cells.push(null);
      continue;
    }
    const measured = compare(line.sides(world));
    row.cells.push(measured);
    row.rate = line.rate?.(world, measured.ours) ?? '';
    process.stderr.write(`${world.formats} ${line.name}: ${shown(measured)}\n`);
  }
}

const amount = (ms: number): string => (ms >= 100 ? ms.toFixed(0) : ms.toFixed(ms >= 10 ? 1 : 2));
const shown = (cell: Measured | null): string =>
  cell ? `${amount(cell.ours)} ms ×${cell.ratio.toFixed(1)}` : '—';

/** What a line reached of its goal, in words. */
function verdict({ line, cells }: Row, exponent: number | null): string {
  const last = cells.findLast((cell) => cell !== null);
  const { ratio, growth: most } = line.most;
  if (ratio !== undefined)
    return last && last.ratio <= ratio ? `holds: at most ×${ratio}` : `MISSED: at most ×${ratio}`;
  if (most !== undefined && exponent !== null)
    return exponent <= most ? `holds: grows at most n^${most}` : `MISSED: grows at most n^${most}`;
  return '';
}

function print(rows: readonly Row[], sizes: readonly number[]): void {
  console.log(
    'Processor time of the program, and × the bare side; medians of turns taken side by side in one run.',
  );
  console.log(
    ['formats'.padEnd(54), ...sizes.map((size) => size.toLocaleString('en').padStart(18))].join(''),
  );
  for (const row of rows) {
    const known = row.cells.flatMap((cell, at) => (cell ? [[sizes[at] ?? 0, cell.ours] as const] : []));
    const exponent =
      known.length > 1
        ? growth(
            known.map(([size]) => size),
            known.map(([, cost]) => cost),
          )
        : null;
    const grows = exponent === null ? '' : `n^${exponent.toFixed(2)}`;
    const cells = row.cells.map((cell) => shown(cell).padStart(18));
    console.log(
      [
        row.line.name.padEnd(54),
        ...cells,
        `  ${grows.padEnd(8)}`,
        verdict(row, exponent),
        row.rate && ` (${row.rate})`,
      ].join(''),
    );
  }
  console.log('\nThe bare sides:');
  for (const [against, lines] of Map.groupBy(rows, ({ line }) => line.against))
    console.log(`  ${against}: ${lines.map(({ line }) => line.name).join('; ')}`);
  console.log(
    '\nBy name, npm run bench -- NAME: isbn (numbers against isbn3), blocks (a block of a million numbers), csv and onix (imports and exports with their memory and more sides), proof (final files), scroll and screen (frames, typing, memory in Chromium), start (cold start in a browser).',
  );
}

/** Prints the table. */
export function bench(): void {
  const { sizes, only } = asked();
  const rows = LINES.filter(({ name }) => name.includes(only)).map(
    (line): Row => ({ line, cells: [], rate: '' }),
  );
  for (const size of sizes) {
    const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-bench-'));
    const world = worldOf(size, folder);
    try {
      measure(rows, world);
    } finally {
      world.close();
      rmSync(folder, { recursive: true });
    }
  }
  print(rows, sizes);
}
