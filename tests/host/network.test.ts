import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ensurePages } from '../../src/host/build-pages.ts';
import { PAGES, PROGRAM } from '../../src/host/home.ts';
import { CONTENT_SECURITY_POLICY } from '../../src/host/pages/headers.ts';

/** Words in the program's own code that open a line to somewhere. */
const LINES: [string, RegExp][] = [
  [
    'a network module of Node',
    /from '(?:node:)?(?:net|tls|https?|http2|dgram|dns(?:\/promises)?|inspector)'/,
  ],
  ['a network package', /from '(?:undici|ws|axios|got|node-fetch|@hono\/node-server|hono\/[\w-]*client)'/],
  ['fetch', /(?<![\w.$'’])fetch\(/],
  [
    'another line of a page',
    /\b(?:XMLHttpRequest|WebSocket|WebTransport|RTCPeerConnection|sendBeacon|importScripts)\b/,
  ],
  ['an event stream', /new EventSource\(/],
  ['a service worker', /serviceWorker/],
  [
    'a line of Electron',
    /\b(?:autoUpdater|netLog|ClientRequest|uploadToServer: true|loadURL\((?!START_PAGE))/,
  ],
  ['an upload of crashes', /submitURL/],
];

/** Where such a word stands for a reason: the file, the word, and what follows it. */
const ALLOWED: Record<string, RegExp> = {
  'src/host/server.ts': /^import .*from 'node:(?:http|net)';$|from '@hono\/node-server'/,
  'renderer/transport.ts': /fetch\(`\/(?:call|cancel)\/\$\{|new EventSource\('\/events'\)/,
  'renderer/screens/settings/program-part.tsx': /fetch\('\.\/licences\.json'\)/,
};

function sources(folder: string): string[] {
  return readdirSync(join(PROGRAM, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .filter((name) => /\.(ts|tsx|js)$/.test(name));
}

test('no line of the program opens a way to a network, but for the loopback host and its pages’ own calls', () => {
  const found: string[] = [];
  for (const file of ['src', 'electron', 'renderer'].flatMap(sources)) {
    for (const line of readFileSync(join(PROGRAM, file), 'utf8').split('\n')) {
      if (/^\s*(?:\/\/|\*|\/\*\*)/.test(line)) continue;
      for (const [what, form] of LINES) {
        if (form.test(line) && !ALLOWED[file]?.test(line.trim()))
          found.push(`${file}: ${what}: ${line.trim()}`);
      }
    }
  }
  expect(found).toEqual([]);
});

test('the scan finds what it is to find', () => {
  const planted = [
    "import { connect } from 'node:net';",
    "import https from 'https';",
    "import { request } from 'undici';",
    "await fetch('https://site.example/');",
    'new XMLHttpRequest()',
    "navigator.sendBeacon('/x')",
    "new EventSource('https://site.example/')",
    'autoUpdater.checkForUpdates()',
    "window.loadURL('https://site.example/')",
    "submitURL: 'https://site.example/'",
  ];
  for (const line of planted) expect([line, LINES.some(([, form]) => form.test(line))]).toEqual([line, true]);
});

test('the pages may connect to where they come from and to nowhere else', () => {
  expect(CONTENT_SECURITY_POLICY).toContain("connect-src 'self'");
  expect(CONTENT_SECURITY_POLICY).not.toMatch(/unsafe|\*|https?:|wss?:/);
});

test('no built script of the pages asks an address outside', () => {
  const assets = join(PAGES, 'assets');
  for (const name of readdirSync(assets).filter((one) => one.endsWith('.js'))) {
    const text = readFileSync(join(assets, name), 'utf8');
    const asked = [
      ...text.matchAll(/(?:fetch|import|EventSource|open)\(\s*["'`](https?:|wss?:|\/\/)[^"'`]*/g),
    ];
    expect([name, asked.map(([line]) => line)]).toEqual([name, []]);
  }
});

/** Put in front of a program: writes down every socket, server, datagram and name look-up that Node begins. */
const WATCH = `
  import net from 'node:net'; import dgram from 'node:dgram'; import dns from 'node:dns'; import tls from 'node:tls';
  import { appendFileSync } from 'node:fs';
  const note = (kind, what) => appendFileSync(process.env.NOTED, kind + ' ' + what + '\\n');
  const { connect } = net.Socket.prototype;
  net.Socket.prototype.connect = function (...args) {
    const [to] = Array.isArray(args[0]) ? args[0] : args;
    note('connect', typeof to === 'object' && to !== null ? (to.path ?? to.host + ':' + to.port) : String(to));
    return connect.apply(this, args);
  };
  const { listen } = net.Server.prototype;
  net.Server.prototype.listen = function (...args) {
    note('listen', typeof args[1] === 'string' ? args[1] : JSON.stringify(args[0]));
    return listen.apply(this, args);
  };
  for (const [of, name] of [[dgram, 'createSocket'], [tls, 'connect'], [dns, 'lookup'], [dns, 'resolve']]) {
    const before = of[name];
    of[name] = (...args) => { note(name, String(args[0]?.host ?? args[0]?.type ?? args[0])); return before(...args); };
  }
  const { fetch } = globalThis;
  globalThis.fetch = (...args) => { note('fetch', String(args[0])); return fetch(...args); };
`;
const watching = ['--import', `data:text/javascript,${encodeURIComponent(WATCH)}`];
const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-network-'));
const noted = join(folder, 'noted.txt');
const running: ChildProcess[] = [];

const linesNoted = () => {
  try {
    return readFileSync(noted, 'utf8').trim().split('\n');
  } catch {
    return [];
  }
};

describe('while it runs', () => {
  beforeAll(() => ensurePages(() => {}));
  afterAll(() => {
    for (const child of running) child.kill('SIGKILL');
  });

  test('the loopback host listens on 127.0.0.1 alone and connects to nothing, through a whole story', async () => {
    const env = { ...process.env, NOTED: noted, ELECTRON_OVERRIDE_DIST_PATH: '/none', CI: 'true' };
    const start = join(PROGRAM, 'src/host/start.ts');
    const child = spawn(
      process.execPath,
      [...watching, start, '--no-open', '--catalogue', join(folder, 'a.ledger')],
      {
        env,
      },
    );
    running.push(child);
    const url = await new Promise<URL>((resolve, reject) => {
      let told = '';
      const read = (part: Buffer) => {
        told += part.toString();
        const found = /ready at (\S+)/.exec(told)?.[1];
        if (found) resolve(new URL(found));
      };
      child.stdout.on('data', read);
      child.stderr.on('data', read);
      child.on('exit', () => reject(new Error(told)));
    });
    const cookie = (await fetch(url, { redirect: 'manual' })).headers.get('set-cookie')?.split(';')[0] ?? '';
    const call = async (name: string, input: object) => {
      const headers = { cookie, origin: url.origin, 'content-type': 'application/json' };
      const reply = await fetch(`${url.origin}/call/${name}`, {
        method: 'POST',
        headers,
        body: JSON.stringify(input),
      });
      return (await reply.json()) as { ok: boolean };
    };
    for (const name of [
      'catalogue.demo',
      'catalogue.status',
      'works.list',
      'tasks.list',
      'audit.run',
      'catalogue.check',
      'backups.make',
      'ranges.get',
      'program.log',
    ])
      expect([name, (await call(name, {})).ok]).toEqual([name, true]);
    const ended = new Promise((resolve) => child.on('exit', resolve));
    child.kill('SIGTERM');
    expect(await ended).toBe(0);
    // Node looks the address up before it listens on it; a look-up of a number asks nobody.
    expect([...new Set(linesNoted())].sort()).toEqual(['listen 127.0.0.1', 'lookup 127.0.0.1']);
  });
});
