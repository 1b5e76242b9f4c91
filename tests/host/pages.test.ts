import { connect } from 'node:net';
import { sep } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { pagePath, readPage } from '../../src/host/pages/page-file.ts';
import type { Host } from '../../src/host/server.ts';
import { enter } from '../support/ask.ts';
import { makePages, startStandIn } from '../support/stand-in-host.ts';

let host: Host;
let cookie: string;

beforeAll(async () => {
  ({ host } = await startStandIn());
  cookie = await enter(host);
});
afterAll(() => host.close());

/** The request line exactly as written: clients would tidy the path up. */
function raw(path: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(host.port, '127.0.0.1');
    let text = '';
    socket.on('data', (data) => (text += data.toString()));
    socket.on('close', () => resolve(text));
    socket.on('error', reject);
    const lines = `host: 127.0.0.1:${host.port}\r\ncookie: ${cookie}\r\nconnection: close\r\n\r\n`;
    socket.write(`GET ${path} HTTP/1.1\r\n${lines}`);
  });
}

test('the pages are served with their types, and / is index.html', async () => {
  expect(await raw('/')).toMatch(/^HTTP\/1.1 200 [\s\S]*text\/html; charset=utf-8[\s\S]*<title>Pages/i);
  expect(await raw('/assets/main-A1_b.js')).toMatch(/^HTTP\/1.1 200 [\s\S]*text\/javascript/i);
});

test.each([
  '/../secret.txt',
  '/assets/../../secret.txt',
  '/%2e%2e/secret.txt',
  '/%2e%2e%2fsecret.txt',
  '/..%2fsecret.txt',
  '/..%5csecret.txt',
  '/..\\secret.txt',
  '/%252e%252e%252fsecret.txt',
  '/assets/%2e%2e/%2e%2e/secret.txt',
  '/../renderer-other/secret.txt',
  '/link.txt',
  '//etc/passwd',
  '/etc/passwd',
  '/index.html%00.js',
  '/assets',
  '/assets/',
  '/notes.unknown',
  '/works/1',
  '/%',
  '/%ff',
  '/....//secret.txt',
  '/C:/secret.txt',
  'http://127.0.0.1/../secret.txt',
])('%s is answered without a file from outside', async (path) => {
  const reply = await raw(path);
  expect(reply).toMatch(/^HTTP\/1.1 40[034] /);
  expect(reply).not.toContain('SECRET');
  expect(reply).not.toContain('root:');
});

test('any text whatever gives either no path or a path below the root', () => {
  const nasty = fc.array(
    fc.constantFrom('.', '..', '/', '\\', '%2e', '%2f', '%5c', '%00', 'a', 'index.html', ':', '%', '~', ' '),
    { maxLength: 12 },
  );
  fc.assert(
    fc.property(
      fc.oneof(
        nasty.map((parts) => `/${parts.join('')}`),
        fc.string(),
      ),
      (path) => {
        const relative = pagePath(path);
        if (relative === undefined) return;
        expect(relative.split('/')).not.toContain('..');
        expect(relative).not.toMatch(/^[/\\]|\\|:|\0/);
        expect(relative.startsWith(sep)).toBe(false);
      },
    ),
    { numRuns: 2000 },
  );
});

test('a link that leads out of the folder is not followed, one file beside it is read', async () => {
  const pages = makePages();
  expect(await readPage(pages, '/link.txt')).toBeUndefined();
  expect(await readPage(pages, '/index.html')).toMatchObject({ type: 'text/html; charset=utf-8' });
});
