import { fork } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { UtilityProcess } from 'electron';
import { beforeAll, expect, test } from 'vitest';
import { utilityLine } from '../../electron/store-line.ts';
import { PROGRAM } from '../../src/host/home.ts';
import { StoreClient } from '../../src/thread/client.ts';
import { packed, SALT_ALMANAC } from '../support/proof-files/epub.ts';
import { runNode } from '../support/spawn.ts';

const out = (name: string) => join(PROGRAM, 'test-output/electron', name);

beforeAll(async () => {
  const built = await runNode([join(PROGRAM, 'electron/build.ts'), 'test-output']);
  expect(built).toEqual({ code: 0, out: '', err: '' });
});

test('the bundles ask for nothing but Electron, Node and better-sqlite3', () => {
  const known = new Set([...builtinModules, ...builtinModules.map((name) => `node:${name}`)]);
  for (const name of ['main.js', 'store.js', 'reader.js', 'backup.js', 'preload.cjs']) {
    const text = readFileSync(out(name), 'utf8');
    const asked = [...text.matchAll(/^(?:import .*|\}) from "([^"]+)";$|\brequire\("([^"]+)"\)/gm)].map(
      (m) => m[1] ?? m[2] ?? '',
    );
    const foreign = [...new Set(asked)].filter((module) => !known.has(module));
    expect([name, foreign]).toEqual([
      name,
      {
        'main.js': ['electron'],
        'store.js': ['better-sqlite3'],
        'reader.js': [],
        'backup.js': ['better-sqlite3'],
        'preload.cjs': ['electron'],
      }[name],
    ]);
  }
});

test('the preload is one CommonJS file without Node modules, as the sandbox demands', () => {
  const text = readFileSync(out('preload.cjs'), 'utf8');
  expect(text).not.toMatch(/^import /m);
  expect(text).not.toContain('node:');
  expect(text).toContain('exposeInMainWorld("editionLedger"');
});

/** The bundled store as a child process: Node's own stands in for Electron's utility process. */
async function bundledStore(): Promise<{ store: StoreClient; file: string }> {
  const shim = `process.parentPort = {
    postMessage: (message) => process.send(message),
    on: (_event, listener) => process.on('message', (data) => listener({ data })),
  };`;
  const file = join(mkdtempSync(join(tmpdir(), 'edition-ledger-bundle-')), 'catalogue.ledger');
  const slips = join(dirname(file), 'slips');
  const child = fork(out('store.js'), [JSON.stringify({ file, slips })], {
    execArgv: ['--import', `data:text/javascript,${encodeURIComponent(shim)}`],
  });
  const process = {
    postMessage: (message: object) => void child.send(message),
    on: child.on.bind(child),
    kill: child.kill.bind(child),
  };
  const line = utilityLine(process as unknown as UtilityProcess, slips);
  return { store: await StoreClient.connect(line), file };
}

test('the bundled store opens a real catalogue, migrations included, and closes it', async () => {
  const { store, file } = await bundledStore();
  const seqs: number[] = [];
  store.onChange((seq) => seqs.push(seq));
  expect(await store.call('catalogue.demo', {})).toMatchObject({ ok: true, value: { works: 4 } });
  expect(await store.call('audit.run', {})).toMatchObject({ ok: true, value: { demo: true } });
  expect(seqs).toHaveLength(1);
  await store.close();
  expect(existsSync(`${file}-wal`)).toBe(false);
});

test('the bundled store has a file read by the bundled reader, and calls it off by a slip', async () => {
  const { store } = await bundledStore();
  const part = Buffer.from(packed(SALT_ALMANAC)).toString('base64');
  const put = await store.call('files.put', { name: 'almanac.epub', part });
  const { file } = (put as { value: { file: string } }).value;
  expect(await store.call('proofChecks.read', { file, kind: 'e-book' })).toMatchObject({
    ok: true,
    value: { fileName: 'almanac.epub' },
  });
  const job = 'read-and-called-off';
  const reading = store.call('proofChecks.read', { file, kind: 'e-book', job });
  expect(store.cancel(job)).toBe(true);
  expect(await reading).toMatchObject({ ok: false, error: { code: 'CANCELLED' } });
  await store.close();
});
