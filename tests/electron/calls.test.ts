import type { IpcMain, IpcRenderer } from 'electron';
import { expect, test, vi } from 'vitest';
import { makeBridge } from '../../electron/bridge.ts';
import { answerCalls } from '../../electron/calls.ts';
import { START_PAGE } from '../../electron/policy.ts';
import { Refusal } from '../../src/contract/refusal.ts';

type Handler = (event: object, ...args: unknown[]) => Promise<unknown>;

function answering(
  call = vi.fn(async (name: string, input: unknown) => ({ ok: true as const, value: { name, input } })),
) {
  const handlers = new Map<string, Handler>();
  const ipcMain = { handle: (channel: string, given: Handler) => handlers.set(channel, given) };
  const cancel = vi.fn((job: string) => job === 'job-of-mine');
  answerCalls(ipcMain as unknown as IpcMain, { call, cancel });
  const from = async (senderFrame: unknown, ...args: unknown[]) =>
    handlers.get('call')?.({ senderFrame }, ...args);
  const cancelFrom = async (senderFrame: unknown, job: unknown) =>
    handlers.get('cancel')?.({ senderFrame }, job);
  return {
    call,
    cancel,
    cancelFrom,
    from,
    own: (...args: unknown[]) => from({ url: START_PAGE, parent: null }, ...args),
  };
}

test('a call from an own page is answered by the store', async () => {
  expect(await answering().own('works.list', { text: 'salt' })).toEqual({
    ok: true,
    value: { name: 'works.list', input: { text: 'salt' } },
  });
});

test('a call from anywhere else is rejected before the store hears of it', async () => {
  const { call, from } = answering();
  const foreign = [
    null,
    { url: 'https://site.example/', parent: null },
    { url: START_PAGE, parent: { url: START_PAGE } },
    { url: 'app://edition-ledger.example/', parent: null },
  ];
  for (const frame of foreign) await expect(from(frame, 'works.list', {})).rejects.toThrow('own pages');
  expect(call).not.toHaveBeenCalled();
});

test('wrong arguments and an oversized input are refused', async () => {
  const { call, own } = answering();
  for (const args of [[], ['works.list', {}, 'more'], [7, {}], ['x'.repeat(101), {}]]) {
    expect(await own(...args)).toMatchObject({ ok: false, error: { code: 'BAD_INPUT' } });
  }
  expect(await own('works.list', 'x'.repeat(2 * 1024 * 1024))).toMatchObject({
    error: { code: 'BAD_INPUT' },
  });
  expect(call).not.toHaveBeenCalled();
});

test('only an own page calls work off, by its name', async () => {
  const { cancel, cancelFrom } = answering();
  const own = { url: START_PAGE, parent: null };
  await expect(cancelFrom({ url: 'https://site.example/', parent: null }, 'job-of-mine')).rejects.toThrow(
    'own',
  );
  expect(cancel).not.toHaveBeenCalled();
  expect(await cancelFrom(own, 'job-of-mine')).toBe(true);
  expect(await cancelFrom(own, 7)).toBe(false);
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
  const bridge = makeBridge(ipc as unknown as IpcRenderer);
  expect(Object.keys(bridge)).toEqual(['call', 'cancel', 'subscribe']);
  await bridge.call('works.list', {});
  expect(ipc.invoke).toHaveBeenCalledWith('call', 'works.list', {});
  const seen: unknown[][] = [];
  const stop = bridge.subscribe('changed', (...args) => seen.push(args));
  listeners.get('changed')?.({ sender: 'the wire itself' }, { seq: 4 });
  expect(seen).toEqual([[{ seq: 4 }]]);
  stop();
  expect(listeners.size).toBe(0);
  expect(() => bridge.subscribe('call', () => {})).toThrow('changed');
});
