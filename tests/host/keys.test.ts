import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Host } from '../../src/host/server.ts';
import { ask, enter, windowHeaders } from '../support/ask.ts';
import { type makeStore, startStandIn } from '../support/stand-in-host.ts';

let host: Host;
let store: ReturnType<typeof makeStore>;

beforeAll(async () => {
  ({ host, store } = await startStandIn());
});
afterAll(() => host.close());

const callInfo = { method: 'POST', path: '/call/catalogue.info', body: '{}' };

test('the host listens on the loopback address alone', () => {
  expect(host.origin).toBe(`http://127.0.0.1:${host.port}`);
});

test('the start key is 32 random bytes and is exchanged for a strict cookie and a redirect without the key', async () => {
  const url = new URL(host.newStartUrl());
  const key = url.pathname.split('/').at(-1) ?? '';
  expect(Buffer.from(key, 'base64url')).toHaveLength(32);
  const reply = await ask(host, { path: url.pathname });
  expect(reply.status).toBe(303);
  expect(reply.headers.location).toBe('/');
  const [cookie] = reply.headers['set-cookie'] ?? [];
  expect(cookie).toMatch(
    new RegExp(`^edition-ledger-${host.port}=[A-Za-z0-9_-]{43}; Path=/; HttpOnly; SameSite=Strict$`),
  );
  expect(cookie).not.toContain(key);
  expect(reply.headers['referrer-policy']).toBe('no-referrer');
});

test('a start key works once; the second browser is told what to do, the first is sent on', async () => {
  const { pathname } = new URL(host.newStartUrl());
  const first = await ask(host, { path: pathname });
  const cookie = first.headers['set-cookie']?.[0]?.split(';')[0] ?? '';
  const second = await ask(host, { path: pathname, headers: { accept: 'text/html' } });
  expect(second.status).toBe(401);
  expect(second.headers['set-cookie']).toBeUndefined();
  expect(second.text).toContain('used already');
  const again = await ask(host, { path: pathname, headers: { cookie } });
  expect(again.status).toBe(303);
  expect(again.headers['set-cookie']).toBeUndefined();
});

test('asking for the headers of the start address does not use the key up', async () => {
  const { pathname } = new URL(host.newStartUrl());
  expect((await ask(host, { method: 'HEAD', path: pathname })).status).toBe(405);
  expect((await ask(host, { path: pathname })).status).toBe(303);
});

test.each([
  ['no cookie', () => ({})],
  ['an empty cookie', () => ({ cookie: '' })],
  ['a wrong key', () => ({ cookie: `edition-ledger-${host.port}=${'A'.repeat(43)}` })],
  ['the key without its last character', async () => ({ cookie: (await enter(host)).slice(0, -1) })],
  [
    'the key under another name',
    async () => ({ cookie: (await enter(host)).replace('edition-ledger', 'other') }),
  ],
  [
    'the start key itself',
    () => ({ cookie: `edition-ledger-${host.port}=${host.newStartUrl().split('/').at(-1)}` }),
  ],
])('with %s, calls, events and pages are answered 401 and the store hears nothing', async (_, make) => {
  const before = store.calls.length;
  const { cookie } = (await make()) as { cookie?: string };
  const own = { ...windowHeaders(host, ''), ...(cookie === undefined ? {} : { cookie }) };
  if (cookie === undefined) delete (own as Record<string, string>).cookie;
  expect((await ask(host, { ...callInfo, headers: own })).status).toBe(401);
  expect((await ask(host, { path: '/events', headers: own })).status).toBe(401);
  expect((await ask(host, { path: '/', headers: own })).status).toBe(401);
  expect(store.calls).toHaveLength(before);
});

test('a cookie of an earlier launch on the same port is not known to the next one', async () => {
  const earlier = await startStandIn();
  const cookie = await enter(earlier.host);
  const { port } = earlier.host;
  const staleStart = new URL(earlier.host.newStartUrl()).pathname;
  await earlier.host.close();
  const later = await startStandIn({ port });
  try {
    const headers = windowHeaders(later.host, cookie);
    expect((await ask(later.host, { ...callInfo, headers })).status).toBe(401);
    expect((await ask(later.host, { path: staleStart })).status).toBe(401);
  } finally {
    await later.host.close();
  }
});

test('a taken port is refused in one sentence', async () => {
  await expect(startStandIn({ port: host.port })).rejects.toMatchObject({
    code: 'BAD_INPUT',
    message: `Port ${host.port} is taken; choose another with --port, or leave it out.`,
  });
});
