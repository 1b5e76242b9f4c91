import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import type { Measured } from './onix/export.ts';

// A catalogue of 100,000 formats as one ONIX message, set against the same records, ready in memory, through the same
// writer into a file (npm run bench -- onix [FORMATS]): processor time of both, in one process of its own, and the
// memory the export takes at its most. Bundled first, as the program is given out: unbuilt sources take 200 MB by themselves.

const FORMATS = Number(process.argv[3] ?? 100_000);
/** As deep as the sources lie, so that the bundle finds migrations/. */
const BUNDLE = join(import.meta.dirname, '../../out/bench');

/** Prints processor time of export and bare writing, their ratio, and the memory at its most. */
export async function bench(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-bench-'));
  const program = join(BUNDLE, `onix-${process.pid}.mjs`);
  await build({
    entryPoints: [join(import.meta.dirname, 'onix/export.ts')],
    outfile: program,
    bundle: true,
    platform: 'node',
    target: 'node24',
    format: 'esm',
    external: ['better-sqlite3'],
    logLevel: 'error',
    banner: {
      js: "import { createRequire as requireFor } from 'node:module'; const require = requireFor(import.meta.url);",
    },
  });
  const run = (what: string) =>
    execFileSync(process.execPath, [program, what, folder, String(FORMATS)], { encoding: 'utf8' });
  try {
    run('lay');
    const { records, bytes, exported, written, memoryBefore, memoryPeak }: Measured = JSON.parse(
      run('measure'),
    );
    console.log(`${records.toLocaleString('en')} records, ${(bytes / 1_000_000).toFixed(0)} MB`);
    console.log(
      `export ${exported.toFixed(0)} ms, bare writing ${written.toFixed(0)} ms of processor time: export at ${((written / exported) * 100).toFixed(0)} % of the speed of bare writing (at least 50 % is wanted)`,
    );
    console.log(
      `peak memory ${memoryPeak.toFixed(0)} MB during the export, ${memoryBefore.toFixed(0)} MB before it (under 300 is wanted)`,
    );
  } finally {
    rmSync(program, { force: true });
    rmSync(folder, { recursive: true });
  }
}
