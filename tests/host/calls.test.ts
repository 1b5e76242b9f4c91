import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { BODY_LIMIT } from '../../src/host/body.ts';
import type { Host } from '../../src/host/server.ts';
import { ask, enter, windowHeaders } from '../support/ask.ts';
import { type makeStore, startStandIn } from '../support/stand-in-host.ts';

let host: Host;
let store: ReturnType<typeof makeStore>;
let cookie: string;

beforeAll(async () => {
  ({ host, store } = await startStandIn({ headersMs: 400, requestMs: 800 }));
  cookie = await enter(host);
});
afterAll(() => host.close());

const post = (path: string, body: string | Uint8Array, extra: Record<string, string> = {}) =>
  ask(host, { method: 'POST', path, body, headers: { ...windowHeaders(host, cookie), ...extra } });

test('a call carries name and input to the store and its answer back', async () => {
  const reply = await post('/call/works.list', '{"text":"Salt – 潮"}');
  expect(reply.status).toBe(200);
  expect(reply.headers['content-type']).toMatch(/^application\/json/);
  expect(JSON.parse(reply.text)).toEqual({
    ok: true,
    value: { name: 'works.list', input: { text: 'Salt – 潮' } },
  });
});

test('a refusal is an answer like any other', async () => {
  const reply = await post('/call/works.get', '{"id":9}');
  expect(reply.status).toBe(200);
  expect(JSON.parse(reply.text)).toEqual({ ok: false, error: { code: 'NOT_FOUND', message: 'Not here.' } });
});

test('200 connections at once are all answered', async () => {
  const replies = await Promise.all(
    Array.from({ length: 200 }, (_, n) => post('/call/works.list', JSON.stringify({ n }))),
  );
  expect(replies.map((reply) => JSON.parse(reply.text).value.input.n)).toEqual(
    Array.from({ length: 200 }, (_, n) => n),
  );
});

describe('bodies', () => {
  test('10,000 texts fit', async () => {
    const texts = Array.from({ length: 10_000 }, () => '979-8-969999-00-0 and some words');
    expect((await post('/call/isbns.check', JSON.stringify({ texts }))).status).toBe(200);
  });

  test('a body of the limit is read, one byte more is answered 413', async () => {
    const json = (size: number) => `"${'x'.repeat(size - 2)}"`;
    expect((await post('/call/works.list', json(BODY_LIMIT))).status).toBe(200);
    expect((await post('/call/works.list', json(BODY_LIMIT + 1))).status).toBe(413);
  });

  test('a body without a stated length is cut off at the limit as well', async () => {
    const before = store.calls.length;
    const sendOver = () =>
      new Promise<string>((resolve) => {
        const socket = connect(host.port, '127.0.0.1');
        const headers = { ...windowHeaders(host, cookie), host: `127.0.0.1:${host.port}` };
        const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`);
        socket.write(`POST /call/works.list HTTP/1.1\r\n${lines.join('')}transfer-encoding: chunked\r\n\r\n`);
        const chunk = `10000\r\n${'x'.repeat(0x10000)}\r\n`;
        let sent = 0;
        const more = () => {
          while (sent < BODY_LIMIT * 2 && !socket.destroyed && socket.write(chunk)) sent += 0x10000;
        };
        socket.on('drain', more);
        socket.on('error', () => {});
        socket.on('data', (data) => {
          resolve(data.toString());
          socket.destroy();
        });
        socket.on('close', () => resolve(''));
        more();
      });
    // Who is still writing when the connection is cut may lose the answer with it.
    let reply = '';
    for (let turn = 0; reply === '' && turn < 20; turn += 1) reply = await sendOver();
    expect(reply).toMatch(/^HTTP\/1.1 413 /);
    expect(store.calls).toHaveLength(before);
  });

  test.each([
    ['nothing', ''],
    ['half an object', '{"a":'],
    ['two values', '{}{}'],
    ['a comment', '{/* */}'],
    ['a form', 'a=1&b=2'],
    ['bytes that are not UTF-8', new Uint8Array([0x22, 0xc3, 0x28, 0x22])],
  ])('%s is answered 400 with one sentence and never reaches the store', async (_, body) => {
    const before = store.calls.length;
    const reply = await post('/call/works.list', body);
    expect(reply.status).toBe(400);
    expect(JSON.parse(reply.text)).toMatchObject({ ok: false, error: { code: 'BAD_INPUT' } });
    expect(store.calls).toHaveLength(before);
  });

  test('a body that breaks off leaves the host answering', async () => {
    const socket = connect(host.port, '127.0.0.1');
    const headers = { ...windowHeaders(host, cookie), host: `127.0.0.1:${host.port}` };
    const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`);
    socket.write(`POST /call/works.list HTTP/1.1\r\n${lines.join('')}content-length: 100\r\n\r\n{"a":`);
    await new Promise((resolve) => setTimeout(resolve, 50));
    socket.destroy();
    expect((await post('/call/works.list', '{}')).status).toBe(200);
  });
});

test('a client that never finishes its headers is cut off', async () => {
  const begun = Date.now();
  const ended = await new Promise<string>((resolve) => {
    const socket = connect(host.port, '127.0.0.1');
    let text = '';
    socket.on('data', (data) => (text += data.toString()));
    socket.on('close', () => resolve(text));
    socket.write('GET / HTTP/1.1\r\nhost: 127');
  });
  expect(ended).toMatch(/^HTTP\/1.1 408 /);
  expect(Date.now() - begun).toBeLessThan(3_000);
});

test('methods other than GET and POST, and POST elsewhere, are answered 405', async () => {
  for (const method of ['PUT', 'DELETE', 'PATCH', 'OPTIONS', 'TRACE']) {
    const reply = await ask(host, { method, path: '/call/works.list', headers: windowHeaders(host, cookie) });
    expect([method, reply.status]).toEqual([method, 405]);
  }
  expect((await post('/', '{}')).status).toBe(405);
  expect((await ask(host, { path: '/call/works.list', headers: { cookie } })).status).toBe(404);
});

test('work is called off by its name, by an own window alone', async () => {
  const reply = await post('/cancel/job-of-mine', '');
  expect(JSON.parse(reply.text)).toEqual({ ok: true, value: { cancelled: true } });
  expect(store.cancelled).toEqual(['job-of-mine']);
  const stranger = { ...windowHeaders(host, cookie), origin: 'https://site.example' };
  const path = '/cancel/job-of-mine';
  expect((await ask(host, { method: 'POST', path, body: '', headers: stranger })).status).toBe(403);
  const { cookie: _none, ...keyless } = windowHeaders(host, cookie);
  expect((await ask(host, { method: 'POST', path, body: '', headers: keyless })).status).toBe(401);
  expect((await ask(host, { path, headers: { cookie } })).status).toBe(404);
  expect(store.cancelled).toHaveLength(1);
});

test('changes and progress reach an open event stream as topics of their own; a closed one is forgotten', async () => {
  const away = new AbortController();
  const reply = await fetch(`${host.origin}/events`, { headers: { cookie }, signal: away.signal });
  expect(reply.headers.get('content-type')).toMatch(/^text\/event-stream/);
  const reader = (reply.body as ReadableStream<Uint8Array>).getReader();
  let text = '';
  while (!text.includes(': open')) text += new TextDecoder().decode((await reader.read()).value);
  expect(store.listeners.size).toBe(1);
  store.push(41);
  while (!text.includes('}\n\n')) {
    text += new TextDecoder().decode((await reader.read()).value);
  }
  expect(text).toContain('event: changed\ndata: {"seq":41}\n\n');
  store.working({ job: 'job-of-mine', done: 3, total: 9, what: 'rows read' });
  while (!text.includes('rows read')) text += new TextDecoder().decode((await reader.read()).value);
  expect(text).toContain(
    'event: progress\ndata: {"job":"job-of-mine","done":3,"total":9,"what":"rows read"}',
  );
  away.abort();
  await expect.poll(() => store.listeners.size).toBe(0);
});

test('closing the host ends open event streams and frees the port', async () => {
  const other = await startStandIn();
  const key = await enter(other.host);
  const reply = await fetch(`${other.host.origin}/events`, { headers: { cookie: key } });
  const drained = reply.text();
  await other.host.close();
  expect(await drained).toContain(': open');
  expect(other.store.listeners.size).toBe(0);
  await expect(fetch(other.host.origin)).rejects.toThrow();
});
