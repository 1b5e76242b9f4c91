import type { IpcMain, IpcRenderer } from 'electron';
import { expect, test, vi } from 'vitest';
import { makeBridge } from '../../electron/bridge.ts';
import { answerPages } from '../../electron/calls.ts';
import { START_PAGE } from '../../electron/policy.ts';
import { Refusal } from '../../src/contract/refusal.ts';
import { BODY_LIMIT } from '../../src/host/body.ts';

const OWN = { url: START_PAGE, parent: null };

type Handler = (event: object, ...args: unknown[]) => Promise<unknown>;

function answering(
  call = vi.fn(async (name: string, input: unknown) => ({ ok: true as const, value: { name, input } })),
) {
  const handlers = new Map<string, Handler>();
  const ipcMain = { handle: (channel: string, given: Handler) => void handlers.set(channel, given) };
  const openDropped = vi.fn(async (_file: string) => {});
  const dragOut = vi.fn(async () => {});
  const cancel = vi.fn((job: string) => job === 'job-of-mine');
  answerPages(ipcMain as unknown as IpcMain, { call, cancel, openDropped, dragOut });
  const on = (channel: string, senderFrame: unknown, ...args: unknown[]) =>
    handlers.get(channel)?.({ senderFrame }, ...args) ?? Promise.reject(new Error(channel));
  const from = (senderFrame: unknown, ...args: unknown[]) => on('call', senderFrame, ...args);
  const own = (...args: unknown[]) => from(OWN, ...args);
  return { call, cancel, openDropped, dragOut, channels: [...handlers.keys()], on, from, own };
}

test('a call from an own page is answered by the store', async () => {
  expect(await answering().own('works.list', { text: 'salt' })).toEqual({
    ok: true,
    value: { name: 'works.list', input: { text: 'salt' } },
  });
});

test('a message from anywhere else is rejected on every channel before anything is done', async () => {
  const { call, cancel, openDropped, dragOut, channels, on } = answering();
  const foreign = [
    null,
    { url: 'https://site.example/', parent: null },
    { url: START_PAGE, parent: { url: START_PAGE } },
    { url: 'app://edition-ledger.example/', parent: null },
  ];
  expect(channels).toEqual(['call', 'cancel', 'open dropped', 'drag out']);
  for (const channel of channels)
    for (const frame of foreign)
      await expect(on(channel, frame, 'works.list', {})).rejects.toThrow('own pages');
  for (const service of [call, cancel, openDropped, dragOut]) expect(service).not.toHaveBeenCalled();
});

test('only the full path of a catalogue file can be dropped', async () => {
  const { openDropped, on } = answering();
  for (const given of [[], [''], ['a.ledger'], ['/etc/passwd'], ['/a.ledger', 'b'], [7], ['/a.ledger.exe']])
    expect(await on('open dropped', OWN, ...given)).toBe(false);
  expect(openDropped).not.toHaveBeenCalled();
  expect(await on('open dropped', OWN, '/press/Salt.LEDGER')).toBe(true);
  expect(openDropped).toHaveBeenCalledWith('/press/Salt.LEDGER');
});

test('wrong arguments and an oversized input are refused', async () => {
  const { call, own } = answering();
  for (const args of [[], ['works.list', {}, 'more'], [7, {}], ['x'.repeat(101), {}]]) {
    expect(await own(...args)).toMatchObject({ ok: false, error: { code: 'BAD_INPUT' } });
  }
  expect(await own('works.list', 'x'.repeat(BODY_LIMIT))).toMatchObject({
    error: { code: 'BAD_INPUT' },
  });
  expect(await own('works.burn', {})).toMatchObject({ error: { code: 'UNKNOWN_OPERATION' } });
  expect(call).not.toHaveBeenCalled();
});

test('work is called off by its name', async () => {
  const { on } = answering();
  expect(await on('cancel', OWN, 'job-of-mine')).toBe(true);
  expect(await on('cancel', OWN, 7)).toBe(false);
});

test('a dead store is told as a refusal with its code', async () => {
  const { own } = answering(vi.fn().mockRejectedValue(new Refusal('INTERNAL', 'No longer open.')));
  expect(await own('works.list', {})).toEqual({
    ok: false,
    error: { code: 'INTERNAL', message: 'No longer open.' },
  });
});

test('the bridge lets a page choose an operation but no channel, and hands on data without the event', async () => {
  const listeners = new Map<string, (event: unknown, data: unknown) => void>();
  const ipc = {
    invoke: vi.fn().mockResolvedValue({ ok: true, value: 1 }),
    on: (channel: string, listener: (event: unknown, data: unknown) => void) =>
      listeners.set(channel, listener),
    removeListener: (channel: string) => listeners.delete(channel),
  };
  const utils = { getPathForFile: () => '/press/salt.ledger' };
  const bridge = makeBridge(ipc as unknown as IpcRenderer, utils);
  expect(Object.keys(bridge)).toEqual(['call', 'cancel', 'subscribe', 'openDropped', 'dragOut']);
  await bridge.call('works.list', {});
  await bridge.openDropped(new File([], 'salt.ledger'));
  bridge.dragOut('code.svg', new Uint8Array([60]));
  expect(ipc.invoke.mock.calls).toEqual([
    ['call', 'works.list', {}],
    ['open dropped', '/press/salt.ledger'],
    ['drag out', 'code.svg', new Uint8Array([60])],
  ]);
  const seen: unknown[][] = [];
  const stop = bridge.subscribe('changed', (...args) => seen.push(args));
  listeners.get('changed')?.({ sender: 'the wire itself' }, { seq: 4 });
  expect(seen).toEqual([[{ seq: 4 }]]);
  stop();
  expect(listeners.size).toBe(0);
  for (const topic of ['call', 'open dropped', '__proto__'])
    expect(() => bridge.subscribe(topic, () => {})).toThrow('topics');
});
