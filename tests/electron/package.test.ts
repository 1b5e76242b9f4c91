import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { builtinModules } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { extractAll, listPackage } from '@electron/asar';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ensurePages } from '../../src/host/build-pages.ts';
import { PROGRAM } from '../../src/host/home.ts';
import { AS_ELECTRON, STORIES } from '../support/electron-module.ts';
import { runNode } from '../support/spawn.ts';

/**
 * What the archive and all that is installed may weigh, without Electron itself. The readers of final files are 9 MB of
 * the archive: WebAssembly for PDF and for bar codes, and their thread.
 */
const ARCHIVE_MB = 22;
const NATIVE_MB = 3;

const work = mkdtempSync(join(tmpdir(), 'edition-ledger-pack-'));
const made = join(work, 'packages/linux-unpacked');
const archive = join(made, 'resources/app.asar');
const unpacked = join(work, 'app');

/** Electron's place is taken by a folder with a program of its name, since its own is not needed to pack. */
function makeStandIn(): string {
  const folder = join(work, 'electron');
  mkdirSync(folder);
  writeFileSync(join(folder, 'electron'), '#!/bin/sh\nexit 0\n');
  writeFileSync(join(folder, 'LICENSE'), 'Electron’s licence');
  writeFileSync(join(folder, 'LICENSES.chromium.html'), 'Chromium’s licences');
  chmodSync(join(folder, 'electron'), 0o755);
  return folder;
}

/** The packaging as it stands, but around the stand-in, with this test's own bundles and without fuses. */
function packingFor(bundles: string): string {
  const config = join(work, 'packing.cjs');
  const base = JSON.stringify(join(PROGRAM, 'electron-builder.cjs'));
  writeFileSync(
    config,
    `const base = require(${base});
    const bundles = { from: ${JSON.stringify(join(bundles, 'electron'))}, to: 'out/electron', filter: ['**'] };
    module.exports = {
      ...base,
      electronDist: ${JSON.stringify(makeStandIn())},
      directories: { ...base.directories, output: ${JSON.stringify(join(work, 'packages'))} },
      electronFuses: undefined,
      extraFiles: base.extraFiles.map((one) => ({ ...one, from: one.from.replace('out/', ${JSON.stringify(`${bundles}/`)}) })),
      linux: { ...base.linux, target: ['dir'], files: [...base.linux.files.filter((one) => one !== 'out/electron/**'), bundles] },
    };`,
  );
  return config;
}

beforeAll(async () => {
  await ensurePages(() => {});
  const bundles = join(PROGRAM, 'test-output/pack');
  const built = await runNode([join(PROGRAM, 'electron/build.ts'), 'test-output/pack']);
  expect(built).toEqual({ code: 0, out: '', err: '' });
  const builder = join(PROGRAM, 'node_modules/electron-builder/cli.js');
  const packed = spawnSync(
    process.execPath,
    [builder, '--linux', 'dir', '--config', packingFor(bundles), '--publish', 'never'],
    { cwd: PROGRAM, encoding: 'utf8', env: { ...process.env, CI: 'true' } },
  );
  expect([packed.status, packed.status === 0 ? '' : packed.stdout + packed.stderr]).toEqual([0, '']);
  extractAll(archive, unpacked);
  // The program finds unpacked files through the archive; without Electron they are laid in their place.
  cpSync(`${archive}.unpacked`, unpacked, { recursive: true });
}, 300_000);
afterAll(() => rmSync(work, { recursive: true, force: true }));

const inArchive = () =>
  listPackage(archive, { isPack: false })
    .map((path) => path.replaceAll('\\', '/').slice(1))
    .filter((path) => !existsSync(join(unpacked, path)) || statSync(join(unpacked, path)).isFile());

test('the archive holds what the program needs and nothing else', () => {
  const KINDS: [string, RegExp][] = [
    ['bundles', /^out\/electron\/((main|store|reader|backup)\.js|preload\.cjs)$/],
    ['readers', /^out\/electron\/(pdfium|zxing_reader)\.wasm$/],
    [
      'pages',
      /^dist\/renderer\/(index\.html|favicon\.svg|licences\.json|assets\/[\w-]+\.(js|css|wasm|woff2))$/,
    ],
    ['migrations', /^migrations\/\d{4}_[\w-]+\.sql$/],
    ['manifest', /^package\.json$/],
    ['fonts', /^resources\/fonts\/([\w-]+\.ttf|OFL\.txt)$/],
    ['icon', /^resources\/icons\/64x64\.png$/],
    [
      'better-sqlite3',
      /^node_modules\/better-sqlite3\/(package\.json|LICENSE|lib\/[\w./-]+\.js|prebuilds\/linux-[\w./-]*\.node)$/,
    ],
  ];
  const files = inArchive();
  const count = Object.fromEntries(
    KINDS.map(([kind, form]) => [kind, files.filter((file) => form.test(file)).length]),
  );
  expect(files.filter((file) => !KINDS.some(([, form]) => form.test(file)))).toEqual([]);
  expect(count).toMatchObject({ bundles: 5, readers: 2, manifest: 1, icon: 1 });
  expect(count.migrations).toBe(readdirSync(join(PROGRAM, 'migrations')).length);
  for (const kind of ['pages', 'better-sqlite3']) expect(count[kind]).toBeGreaterThan(3);
});

test('the native part lies unpacked beside the archive, for this system alone', () => {
  const native = readdirSync(join(`${archive}.unpacked`, 'node_modules/better-sqlite3/prebuilds'), {
    recursive: true,
  });
  expect(native.length).toBeGreaterThan(0);
  for (const name of native) expect(String(name)).toMatch(new RegExp(`^linux-${process.arch}`));
});

test('the licences lie beside the program', () => {
  expect(readFileSync(join(made, 'LICENSES.packages.txt'), 'utf8')).toContain('better-sqlite3 ');
  expect(readFileSync(join(made, 'LICENSE.edition-ledger.txt'), 'utf8')).toContain('MIT License');
  expect(existsSync(join(made, 'LICENSES.chromium.html'))).toBe(true);
});

test('the packed manifest has no scripts and no development packages', () => {
  const manifest = JSON.parse(readFileSync(join(unpacked, 'package.json'), 'utf8')) as Record<
    string,
    unknown
  >;
  expect(manifest.main).toBe('out/electron/main.js');
  expect(manifest.devDependencies).toBeUndefined();
  expect(manifest.scripts).toBeUndefined();
});

test('the package stays within its size', () => {
  const megabytes = (path: string) => statSync(path).size / 1_000_000;
  const native = readdirSync(`${archive}.unpacked`, { recursive: true })
    .map((name) => join(`${archive}.unpacked`, String(name)))
    .filter((path) => statSync(path).isFile());
  const sizes = {
    archive: megabytes(archive),
    native: native.reduce((sum, path) => sum + megabytes(path), 0),
  };
  console.log(
    `Package without Electron: archive ${sizes.archive.toFixed(2)} of ${ARCHIVE_MB} MB, native parts ${sizes.native.toFixed(2)} of ${NATIVE_MB} MB.`,
  );
  expect(sizes.archive).toBeLessThan(ARCHIVE_MB);
  expect(sizes.native).toBeLessThan(NATIVE_MB);
});

test('the packed bundles ask for no module of Node that speaks to a network', () => {
  const NETWORK = /^(node:)?(net|tls|http|https|http2|dgram|dns|dns\/promises|inspector|cluster)$/;
  for (const name of ['main.js', 'store.js', 'reader.js', 'backup.js', 'preload.cjs']) {
    const text = readFileSync(join(unpacked, 'out/electron', name), 'utf8');
    const asked = [...text.matchAll(/(?:from|require\(|import\()\s*"([^"\n]+)"/g)].map(
      (match) => match[1] ?? '',
    );
    const modules = asked.filter((one) => one.startsWith('node:') || builtinModules.includes(one));
    expect([name, modules.filter((one) => NETWORK.test(one))]).toEqual([name, []]);
  }
});

test('the packed program runs the demo press under Node, from the shell’s start to its end', async () => {
  const data = mkdtempSync(join(work, 'data-'));
  const catalogue = join(data, 'demo.ledger');
  const ran = await runNode(
    [...AS_ELECTRON, join(unpacked, 'out/electron/main.js'), '--catalogue', catalogue],
    {
      env: { USER_DATA: data, STORY: join(STORIES, 'demo.ts') },
    },
  );
  expect([ran.code, ran.err]).toEqual([0, '']);
  const told = JSON.parse(ran.out) as Record<string, unknown>;
  expect(told).toMatchObject({
    start: { status: 200, policy: expect.stringMatching(/^default-src 'none'; script-src 'self';/) },
    outside: 404,
    demo: { works: 4 },
    audited: true,
    sound: true,
    backup: true,
    refused: { ok: false, error: { code: 'BAD_INPUT' } },
    unknown: { ok: false, error: { code: 'UNKNOWN_OPERATION' } },
    seen: [{ seq: expect.any(Number) }],
    menu: ['&File', 'editMenu', '&Go', '&View', 'windowMenu', 'help'],
  });
  for (const file of told.files as { status: number; some: boolean }[])
    expect(file).toMatchObject({ status: 200, some: true });
  expect(existsSync(`${catalogue}-wal`)).toBe(false);
  expect(readFileSync(join(data, 'recent.json'), 'utf8')).toContain('demo.ledger');
});
