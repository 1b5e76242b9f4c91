import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { JobProgress } from '../../src/contract/jobs.ts';
import type { Answer } from '../../src/contract/operation.ts';
import { type Host, type HostOptions, startHost } from '../../src/host/server.ts';

/** A folder of pages with a secret file beside it and a link that leads out. */
export function makePages(): string {
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-pages-'));
  const pages = join(folder, 'renderer');
  mkdirSync(join(pages, 'assets'), { recursive: true });
  writeFileSync(join(pages, 'index.html'), '<!doctype html><title>Pages</title>');
  writeFileSync(join(pages, 'assets/main-A1_b.js'), 'export {};');
  writeFileSync(join(pages, 'notes.unknown'), 'no type');
  writeFileSync(join(folder, 'secret.txt'), 'SECRET');
  mkdirSync(join(folder, 'renderer-other'));
  writeFileSync(join(folder, 'renderer-other/secret.txt'), 'SECRET');
  symlinkSync(join(folder, 'secret.txt'), join(pages, 'link.txt'));
  return pages;
}

/** A store without a thread: counts its calls and lets a test push changes. */
export function makeStore() {
  const listeners = new Set<(seq: number) => void>();
  const followers = new Set<(progress: JobProgress) => void>();
  const cancelled: string[] = [];
  const calls: { name: string; input: unknown }[] = [];
  return {
    calls,
    listeners,
    push: (seq: number) => {
      for (const listener of listeners) listener(seq);
    },
    call: async (name: string, input: unknown): Promise<Answer<unknown>> => {
      calls.push({ name, input });
      if (name === 'works.get') return { ok: false, error: { code: 'NOT_FOUND', message: 'Not here.' } };
      return { ok: true, value: { name, input } };
    },
    cancelled,
    cancel: (job: string) => cancelled.push(job) > 0,
    working: (progress: JobProgress) => {
      for (const listener of followers) listener(progress);
    },
    onProgress: (listener: (progress: JobProgress) => void) => {
      followers.add(listener);
      return () => followers.delete(listener);
    },
    onChange: (listener: (seq: number) => void) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** A host over the stand-in store and pages. */
export async function startStandIn(options: Partial<HostOptions> = {}) {
  const store = makeStore();
  const host: Host = await startHost({ store, pages: makePages(), ...options });
  return { store, host };
}
