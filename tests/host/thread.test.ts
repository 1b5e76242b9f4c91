import { afterEach, expect, test, vi } from 'vitest';
import { StoreClient } from '../../src/thread/client.ts';
import type { StoreLine } from '../../src/thread/messages.ts';
import { startStore } from '../../src/thread/start.ts';

const STAND_IN = new URL('../support/stand-in.ts', import.meta.url);
let client: StoreClient | undefined;

async function start(file = 'any'): Promise<StoreClient> {
  client = await startStore({ file }, STAND_IN);
  return client;
}

afterEach(async () => {
  await client?.close();
  client = undefined;
});

test('calls are answered by the thread, refusals as answers', async () => {
  const store = await start();
  expect(await store.call('echo', { a: [1, 'two', null] })).toEqual({
    ok: true,
    value: { name: 'echo', input: { a: [1, 'two', null] } },
  });
  expect(await store.call('refuse', {})).toEqual({
    ok: false,
    error: { code: 'NOT_FOUND', message: 'Not here.' },
  });
});

test('many calls at once each get their own answer', async () => {
  const store = await start();
  const answers = await Promise.all(Array.from({ length: 500 }, (_, n) => store.call('echo', { n })));
  expect(answers.map((answer) => answer.ok && (answer.value as { input: { n: number } }).input.n)).toEqual(
    Array.from({ length: 500 }, (_, n) => n),
  );
});

test('changes are pushed to every listener until it unsubscribes', async () => {
  const store = await start();
  const seen: number[] = [];
  const stop = store.onChange((seq) => seen.push(seq));
  await store.call('change', {});
  await store.call('change', {});
  stop();
  await store.call('change', {});
  expect(seen).toEqual([1, 2]);
});

test('a refusal while opening reaches the caller with its code', async () => {
  await expect(start('in use')).rejects.toMatchObject({ code: 'CATALOGUE_IN_USE' });
});

test('anything else while opening or calling is INTERNAL and keeps its details to the log', async () => {
  const log = vi.spyOn(console, 'error').mockImplementation(() => {});
  await expect(start('broken')).rejects.toMatchObject({ code: 'INTERNAL' });
  const store = await start();
  const answer = await store.call('throw', {});
  expect(answer).toMatchObject({ ok: false, error: { code: 'INTERNAL' } });
  expect(JSON.stringify(answer)).not.toContain('secret');
  log.mockRestore();
});

test('pending calls are rejected with INTERNAL when the thread dies, and so are later ones', async () => {
  const store = await start();
  const slow = store.call('slow', {});
  const dying = store.call('die', {});
  const behind = store.call('echo', {});
  await expect(slow).resolves.toMatchObject({ ok: true });
  await expect(dying).rejects.toMatchObject({ code: 'INTERNAL' });
  await expect(behind).rejects.toMatchObject({ code: 'INTERNAL' });
  await store.ended;
  await expect(store.call('echo', {})).rejects.toMatchObject({ code: 'INTERNAL' });
});

test('closing lets earlier calls finish and refuses later ones', async () => {
  const store = await start();
  const slow = store.call('slow', {});
  const closed = store.close();
  await expect(store.call('echo', {})).rejects.toMatchObject({ code: 'INTERNAL' });
  await expect(slow).resolves.toMatchObject({ ok: true });
  await closed;
  await store.close();
});

test('work that names a job tells how far it is and ends when it is called off', async () => {
  const store = await start();
  const seen: number[] = [];
  store.onProgress(({ job, done }) => job === 'job-of-mine' && seen.push(done));
  const long = store.call('long', { job: 'job-of-mine' });
  await vi.waitFor(() => expect(seen.length).toBeGreaterThan(2));
  expect(store.cancel('no-such-job')).toBe(false);
  expect(store.cancel('job-of-mine')).toBe(true);
  expect(await long).toMatchObject({ ok: false, error: { code: 'CANCELLED' } });
  expect(store.cancel('job-of-mine')).toBe(false);
  expect(await store.call('echo', {})).toMatchObject({ ok: true });
});

test('what is not plain data is refused on either side and the thread lives on', async () => {
  const store = await start();
  expect(await store.call('echo', { f: () => 1 })).toMatchObject({ ok: false, error: { code: 'BAD_INPUT' } });
  expect(await store.call('x'.repeat(101), {})).toMatchObject({ error: { code: 'UNKNOWN_OPERATION' } });
  expect(await store.call('odd', {})).toMatchObject({ ok: false, error: { code: 'INTERNAL' } });
  expect(await store.call('echo', {})).toMatchObject({ ok: true });
});

test('a message of an unknown form from the thread is dropped, never handed on', async () => {
  const log = vi.spyOn(console, 'error').mockImplementation(() => {});
  let receive: (message: unknown) => void = () => {};
  let end: (reason: string) => void = () => {};
  const line: StoreLine = {
    post: (message) => message.kind === 'close' && end('it was closed'),
    onMessage: (listener) => (receive = listener),
    onEnd: (listener) => (end = listener),
    cancel: () => {},
    kill: () => {},
  };
  const connecting = StoreClient.connect(line);
  receive({ kind: 'open' });
  client = await connecting;
  const answer = client.call('echo', {});
  receive({ kind: 'answer', id: 1, answer: { ok: 'yes' } });
  expect(log).toHaveBeenCalledTimes(1);
  receive({ kind: 'answer', id: 1, answer: { ok: true, value: 4 } });
  expect(await answer).toEqual({ ok: true, value: 4 });
  log.mockRestore();
});
