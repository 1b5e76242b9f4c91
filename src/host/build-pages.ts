import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { Refusal } from '../contract/refusal.ts';
import { PAGES, PROGRAM } from './home.ts';

/** What the pages are built from. */
const PAGE_SOURCES = [
  'renderer',
  'src/contract',
  'src/rules',
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

/** Builds the pages with Vite unless they are newer than their sources; says so first in one line. */
export async function ensurePages(say: (line: string) => void): Promise<void> {
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
    await vite.build({ configFile: join(PROGRAM, 'vite.config.ts'), logLevel: 'warn' });
  } catch (error) {
    const why = error instanceof Error ? error.message.split('\n')[0] : String(error);
    throw new Refusal(
      'DISK_TROUBLE',
      `The pages could not be built (${why}); run npm run build to see the whole report.`,
    );
  }
}
