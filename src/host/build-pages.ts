import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync, utimesSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { stripVTControlCharacters } from 'node:util';
import { Refusal } from '../contract/refusal.ts';
import { PAGES, PROGRAM } from './home.ts';

/** What the pages are built from. */
const PAGE_SOURCES = [
  'renderer',
  'src/contract',
  'src/rules',
  'src/host/pages',
  'resources',
  'vite.config.ts',
  'package-lock.json',
];

function newest(path: string): number {
  if (!existsSync(path)) return 0;
  const facts = statSync(path);
  if (!facts.isDirectory()) return facts.mtimeMs;
  return readdirSync(path).reduce(
    (latest, name) => Math.max(latest, newest(join(path, name))),
    facts.mtimeMs,
  );
}

/** Whether `output` is missing or older than any file of its sources. */
export function isStale(output: string, sources: readonly string[]): boolean {
  if (!existsSync(output)) return true;
  const built = statSync(output).mtimeMs;
  return sources.some((source) => newest(source) > built);
}

/**
 * Builds beside the old pages and swaps them in, so that a host that is already serving never sees half a build
 * and two builds at once do not disturb each other. The pages count as old as the moment building began.
 */
async function build(vite: typeof import('vite'), began: Date): Promise<void> {
  const fresh = `${PAGES}-new-${process.pid}`;
  const old = `${PAGES}-old-${process.pid}`;
  // Vite keeps a NODE_ENV that is set, and under any but this React's larger development build would be taken.
  const { NODE_ENV: before } = process.env;
  process.env.NODE_ENV = 'production';
  try {
    await vite.build({
      configFile: join(PROGRAM, 'vite.config.ts'),
      build: { outDir: fresh, emptyOutDir: true },
      logLevel: 'error',
    });
    utimesSync(join(fresh, 'index.html'), began, began);
    mkdirSync(dirname(PAGES), { recursive: true });
    if (existsSync(PAGES)) renameSync(PAGES, old);
    renameSync(fresh, PAGES);
  } finally {
    if (before === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = before;
    for (const folder of [fresh, old]) rmSync(folder, { recursive: true, force: true });
  }
}

/** Builds the pages with Vite unless they are newer than their sources; says so first in one line. */
export async function ensurePages(say: (line: string) => void): Promise<void> {
  const began = new Date();
  const sources = PAGE_SOURCES.map((source) => join(PROGRAM, source));
  if (!isStale(join(PAGES, 'index.html'), sources)) return;
  say('Building the pages; this takes some seconds and is needed once after a change.');
  const vite = await import('vite').catch(() => undefined);
  if (vite === undefined) {
    throw new Refusal(
      'DISK_TROUBLE',
      'The pages are not built and Vite is missing; run npm ci, then start again.',
    );
  }
  try {
    await build(vite, began);
  } catch (error) {
    const text = stripVTControlCharacters(error instanceof Error ? error.message : String(error));
    const why = text
      .split('\n')
      .filter((line) => line.trim())
      .slice(0, 2)
      .join(' ');
    throw new Refusal(
      'DISK_TROUBLE',
      `The pages could not be built (${why}); run npm run build to see the whole report.`,
    );
  }
}
