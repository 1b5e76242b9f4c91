import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ensurePages, isStale } from '../../src/host/build-pages.ts';
import { findElectron } from '../../src/host/electron-binary.ts';
import { dataFolder, PROGRAM } from '../../src/host/home.ts';
import { browserCommand } from '../../src/host/open-browser.ts';
import { readStartOptions } from '../../src/host/options.ts';
import { runNode } from '../support/spawn.ts';

const LAUNCH = join(PROGRAM, 'src/host/launch.js');
const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-start-'));
const running: ChildProcess[] = [];

afterAll(() => {
  for (const child of running) child.kill('SIGKILL');
});

interface Started {
  child: ChildProcess;
  url: URL;
  text(): string;
  ended: Promise<number | null>;
}

/** Starts the loopback host as npm start does and waits for its address. */
function start(...args: string[]): Promise<Started> {
  const env = { ...process.env, ELECTRON_OVERRIDE_DIST_PATH: join(folder, 'no electron') };
  const child = spawn(process.execPath, [LAUNCH, '--no-open', ...args], { env });
  running.push(child);
  const ended = new Promise<number | null>((resolve) => child.on('exit', resolve));
  return new Promise((resolve, reject) => {
    let text = '';
    const read = (part: Buffer) => {
      text += part.toString();
      const found = /ready at (\S+)/.exec(text)?.[1];
      if (found !== undefined) resolve({ child, url: new URL(found), text: () => text, ended });
    };
    child.stdout.on('data', read);
    child.stderr.on('data', read);
    child.on('exit', () => reject(new Error(text)));
  });
}

async function openWindow(url: URL): Promise<string> {
  const reply = await fetch(url, { redirect: 'manual' });
  return reply.headers.get('set-cookie')?.split(';')[0] ?? '';
}

async function call(url: URL, cookie: string, name: string, input: unknown): Promise<unknown> {
  const headers = { cookie, origin: url.origin, 'content-type': 'application/json' };
  const body = JSON.stringify(input);
  return (await fetch(`${url.origin}/call/${name}`, { method: 'POST', headers, body })).json();
}

describe('npm start without Electron', () => {
  beforeAll(() => ensurePages(() => {}));
  test.each(['SIGINT', 'SIGTERM'] as const)(
    'serves a catalogue and closes it cleanly on %s',
    async (signal) => {
      const file = join(folder, `${signal}.ledger`);
      const { child, url, text, ended } = await start('--catalogue', file);
      expect(url.hostname).toBe('127.0.0.1');
      expect(text()).toContain('Electron’s program is not installed');
      const cookie = await openWindow(url);
      expect(await call(url, cookie, 'blocks.add', { prefix: '979-8-969999' })).toMatchObject({ ok: true });
      expect((await fetch(url.origin, { headers: { cookie } })).status).toBe(200);
      child.kill(signal);
      expect(await ended).toBe(0);
      expect(existsSync(`${file}-wal`)).toBe(false);
      const again = await start('--catalogue', file);
      const key = await openWindow(again.url);
      const list = await call(again.url, key, 'blocks.list', {});
      expect(list).toMatchObject({ ok: true, value: { blocks: [{ digits: '9798969999' }] } });
      again.child.kill('SIGTERM');
      expect(await again.ended).toBe(0);
    },
  );

  test('a catalogue that is open already is refused in one sentence and the first host goes on', async () => {
    const file = join(folder, 'held.ledger');
    const first = await start('--catalogue', file);
    const second = await start('--catalogue', file).catch((error: Error) => error.message);
    expect(second).toMatch(/already open/);
    expect(second).not.toMatch(/\n\s+at /);
    expect((await fetch(first.url, { redirect: 'manual' })).status).toBe(303);
    first.child.kill('SIGTERM');
    await first.ended;
  });
});

describe('npm start with Electron', () => {
  beforeAll(() => ensurePages(() => {}));
  test('builds the shell and hands the catalogue over to Electron’s program, ending as it ends', async () => {
    if (process.platform === 'win32') return;
    const dist = join(folder, 'electron');
    mkdirSync(dist);
    writeFileSync(join(dist, 'electron'), '#!/bin/sh\nprintf "%s\\n" "$@"\nexit 3\n', { mode: 0o755 });
    const env = { ELECTRON_OVERRIDE_DIST_PATH: dist };
    const ran = await runNode([LAUNCH, '--catalogue', join(folder, 'e.ledger')], { env });
    expect(ran.out.trim().split('\n').slice(-3)).toEqual([PROGRAM, '--catalogue', join(folder, 'e.ledger')]);
    expect(ran.code).toBe(3);
    expect(existsSync(join(PROGRAM, 'out/electron/main.js'))).toBe(true);
  });

  test('its program is found beside its package or where the override says, and only if it is there', () => {
    const packageFolder = join(folder, 'package');
    mkdirSync(join(packageFolder, 'dist'), { recursive: true });
    expect(findElectron(packageFolder, {})).toBeUndefined();
    writeFileSync(join(packageFolder, 'path.txt'), 'electron');
    expect(findElectron(packageFolder, {})).toBeUndefined();
    writeFileSync(join(packageFolder, 'dist/electron'), '');
    expect(findElectron(packageFolder, {})).toBe(join(packageFolder, 'dist/electron'));
    expect(findElectron(packageFolder, { ELECTRON_OVERRIDE_DIST_PATH: '/nowhere' })).toBeUndefined();
  });
});

describe('what is written after npm start --', () => {
  test('is read, with the default catalogue in the user’s data folder', () => {
    expect(readStartOptions(['--catalogue', '/a.ledger', '--port', '8123', '--no-open'])).toMatchObject({
      catalogue: '/a.ledger',
      port: 8123,
      'no-open': true,
    });
    expect(readStartOptions([]).catalogue).toMatch(/edition-ledger[/\\]catalogue\.ledger$/);
  });

  test.each([
    [['--port', '99999'], 'Write the port as a number from 0 to 65535'],
    [['--port', 'http'], 'Write the port as a number from 0 to 65535'],
    [['--catalogue', ''], 'Name a file after --catalogue'],
    [['--open'], "Unknown option '--open'"],
    [['file.ledger'], 'Unexpected argument'],
  ])('%j is refused in one sentence', (args, sentence) => {
    expect(() => readStartOptions(args)).toThrow(sentence);
  });

  test('wrong options end npm start with 2', async () => {
    const ran = await runNode([LAUNCH, '--port', 'http']);
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.err.trim().split('\n')).toHaveLength(1);
  });
});

test('the data folder follows the system’s custom', () => {
  const home = '/home/someone';
  const on = (platform: NodeJS.Platform, env = {}) =>
    dataFolder({ platform, env, home }).replaceAll('\\', '/');
  expect(on('linux')).toBe('/home/someone/.local/share/edition-ledger');
  expect(on('linux', { XDG_DATA_HOME: '/data' })).toBe('/data/edition-ledger');
  expect(on('linux', { XDG_DATA_HOME: 'relative' })).toBe('/home/someone/.local/share/edition-ledger');
  expect(on('darwin')).toBe('/home/someone/Library/Application Support/edition-ledger');
  expect(on('win32')).toBe('/home/someone/AppData/Local/edition-ledger');
});

test('pages are stale when missing or older than any source', () => {
  const [output, source] = [join(folder, 'built.html'), join(folder, 'sources')];
  mkdirSync(join(source, 'deep'), { recursive: true });
  writeFileSync(join(source, 'deep/a.ts'), '');
  const at = (path: string, seconds: number) => utimesSync(path, seconds, seconds);
  for (const path of [join(source, 'deep/a.ts'), join(source, 'deep'), source]) at(path, 1000);
  expect(isStale(output, [source])).toBe(true);
  writeFileSync(output, '');
  at(output, 2000);
  expect(isStale(output, [source])).toBe(false);
  at(join(source, 'deep/a.ts'), 3000);
  expect(isStale(output, [source])).toBe(true);
});

test('the browser is opened by the system’s own means, the address never read by a shell', () => {
  expect(browserCommand('http://127.0.0.1:1/start/k', 'linux')).toEqual([
    'xdg-open',
    ['http://127.0.0.1:1/start/k'],
  ]);
  expect(browserCommand('http://127.0.0.1:1/', 'darwin')[0]).toBe('open');
  expect(browserCommand('http://127.0.0.1:1/', 'win32')[0]).toBe('cmd');
});

describe('the launcher', () => {
  const runner = JSON.stringify(new URL('../../src/host/run-with-node.js', import.meta.url).href);
  const entry = join(folder, 'entry.ts');
  writeFileSync(entry, 'const told: string[] = process.argv.slice(2);\nconsole.log("ran", ...told);\n');
  const launch = (found: object) =>
    runNode([
      '--input-type=module',
      '-e',
      `const { runWithNode } = await import(${runner}); await runWithNode(${JSON.stringify(entry)}, ${JSON.stringify(found)});`,
      'one',
      'two words',
    ]);

  test('runs here on a Node that is new enough', async () => {
    for (const version of ['22.18.0', '23.0.0', '24.21.0']) {
      expect((await launch({ version })).out.split('\n')[0]).toMatch(/^ran/);
    }
  });

  test('hands an older Node’s arguments over to the Node that came along', async () => {
    const ran = await launch({ version: '20.20.2', brought: process.execPath });
    expect(ran).toMatchObject({ code: 0, err: '' });
    expect(ran.out).toMatch(/^ran .*two words\n$/);
  });

  test('says in one sentence what is needed when there is none', async () => {
    const ran = await launch({ version: '18.0.0', brought: null });
    expect(ran).toEqual({
      code: 2,
      out: '',
      err: 'Edition Ledger needs Node 22.18 or newer and this is 18.0.0; run npm ci, which brings one along, or install a newer Node.\n',
    });
  });
});
