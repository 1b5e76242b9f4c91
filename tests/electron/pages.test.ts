import { expect, test } from 'vitest';
import { pageHandler } from '../../electron/pages.ts';
import { START_PAGE } from '../../electron/policy.ts';
import { makePages } from '../support/stand-in-host.ts';

const handle = pageHandler(makePages());

test('own pages are served with their type and the content policy', async () => {
  const start = await handle(new Request(START_PAGE));
  expect(start.status).toBe(200);
  expect(start.headers.get('content-type')).toBe('text/html; charset=utf-8');
  expect(start.headers.get('content-security-policy')).toMatch(/^default-src 'none'; script-src 'self';/);
  expect(await start.text()).toContain('<title>Pages');
  expect((await handle(new Request(`${START_PAGE}assets/main-A1_b.js`))).status).toBe(200);
});

test.each([
  'app://edition-ledger/../secret.txt',
  'app://edition-ledger/%2e%2e/secret.txt',
  'app://edition-ledger/..%2fsecret.txt',
  'app://edition-ledger/..%5csecret.txt',
  'app://edition-ledger/../renderer-other/secret.txt',
  'app://edition-ledger/link.txt',
  'app://edition-ledger//etc/passwd',
  'app://edition-ledger/works/1',
  'app://other/index.html',
])('%s is answered with nothing', async (url) => {
  const reply = await handle(new Request(url));
  expect(reply.status).toBe(404);
  expect(await reply.text()).toBe('');
});

test('nothing can be sent to the pages', async () => {
  expect((await handle(new Request(START_PAGE, { method: 'POST', body: '{}' }))).status).toBe(405);
});
