import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Host } from '../../src/host/server.ts';
import { ask, enter, windowHeaders } from '../support/ask.ts';
import { type makeStore, startStandIn } from '../support/stand-in-host.ts';

let host: Host;
let store: ReturnType<typeof makeStore>;
let cookie: string;

beforeAll(async () => {
  ({ host, store } = await startStandIn());
  cookie = await enter(host);
});
afterAll(() => host.close());

const post = (headers: Record<string, string>, body = '{}') =>
  ask(host, { method: 'POST', path: '/call/catalogue.info', headers, body });

describe('a foreign Host, with the right key', () => {
  test.each([
    ['another name', () => `edition.example:${host.port}`],
    ['localhost', () => `localhost:${host.port}`],
    ['another port', () => `127.0.0.1:${host.port + 1}`],
    ['no port', () => '127.0.0.1'],
    ['a name that begins alike', () => `127.0.0.1:${host.port}.example`],
    ['a name with user part', () => `127.0.0.1:${host.port}@example`],
  ])('%s is answered 403 or 400', async (_, name) => {
    const before = store.calls.length;
    const headers = { ...windowHeaders(host, cookie), host: name() };
    expect([400, 403]).toContain((await post(headers)).status);
    expect([400, 403]).toContain((await ask(host, { path: '/', headers: { cookie, host: name() } })).status);
    expect(store.calls).toHaveLength(before);
  });
});

describe('a foreign Origin, with the right key', () => {
  test.each([
    ['another site', () => 'https://site.example'],
    ['another port of this address', () => `http://127.0.0.1:${host.port + 1}`],
    ['https', () => `https://127.0.0.1:${host.port}`],
    ['localhost', () => `http://localhost:${host.port}`],
    ['null', () => 'null'],
    ['a longer name', () => `${host.origin}.example`],
    ['none', () => undefined],
  ])('%s is answered 403 on a call', async (_, make) => {
    const before = store.calls.length;
    const { origin: _own, ...rest } = windowHeaders(host, cookie);
    const origin = make();
    const reply = await post(origin === undefined ? rest : { ...rest, origin });
    expect(reply.status).toBe(403);
    expect(reply.headers['access-control-allow-origin']).toBeUndefined();
    expect(store.calls).toHaveLength(before);
  });

  test('an event stream for another origin is answered 403', async () => {
    const reply = await ask(host, { path: '/events', headers: { cookie, origin: 'https://site.example' } });
    expect(reply.status).toBe(403);
  });

  test('a preflight is answered without any permission', async () => {
    const reply = await ask(host, {
      method: 'OPTIONS',
      path: '/call/catalogue.info',
      headers: { cookie, origin: 'https://site.example', 'access-control-request-method': 'POST' },
    });
    expect(reply.status).toBe(403);
    expect(Object.keys(reply.headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
  });
});

describe('a page elsewhere', () => {
  test('may link here but not embed, fetch or post, even from another port of this address', async () => {
    const navigation = { cookie, 'sec-fetch-site': 'cross-site', 'sec-fetch-dest': 'document' };
    expect((await ask(host, { path: '/', headers: navigation })).status).toBe(200);
    for (const site of ['cross-site', 'same-site']) {
      for (const dest of ['iframe', 'script', 'image', 'empty']) {
        const headers = { cookie, 'sec-fetch-site': site, 'sec-fetch-dest': dest };
        expect((await ask(host, { path: '/', headers })).status).toBe(403);
      }
      const headers = {
        ...windowHeaders(host, cookie),
        'sec-fetch-site': site,
        'sec-fetch-dest': 'document',
      };
      expect((await post(headers)).status).toBe(403);
    }
  });

  test('cannot post a form: text/plain, urlencoded and multipart are answered 415 even with Origin and key', async () => {
    const before = store.calls.length;
    const types = [
      'text/plain',
      'application/x-www-form-urlencoded',
      'multipart/form-data; boundary=x',
      'application/jsonp',
      'application/json; charset=utf-16',
      '',
    ];
    for (const type of types) {
      const reply = await post({ ...windowHeaders(host, cookie), 'content-type': type }, '{"a":"="}');
      expect([type, reply.status]).toEqual([type, 415]);
    }
    expect(store.calls).toHaveLength(before);
  });

  test('is told by every answer what the pages may load', async () => {
    const replies = [
      await ask(host, { path: '/', headers: { cookie } }),
      await ask(host, { path: '/nothing', headers: { cookie } }),
      await ask(host, { path: '/' }),
      await post(windowHeaders(host, cookie)),
    ];
    for (const { headers } of replies) {
      expect(headers['content-security-policy']).toBe(
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-src 'none'; frame-ancestors 'none'",
      );
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['cross-origin-resource-policy']).toBe('same-origin');
      expect(headers['x-frame-options']).toBe('DENY');
      expect(headers['cache-control']).toBe('no-store');
      expect(headers['x-powered-by']).toBeUndefined();
    }
  });
});
