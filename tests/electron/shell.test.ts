import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { UtilityProcess } from 'electron';
import { afterEach, expect, test, vi } from 'vitest';
import { catalogueOf, startShell } from '../../electron/shell.ts';
import { cancelledBySlip, utilityLine } from '../../electron/store-line.ts';
import { readWindowState } from '../../electron/window-state.ts';
import { defaultCatalogue } from '../../src/host/home.ts';
import { electronStandIn } from '../support/electron-stand-in.ts';

const FILES = { preload: '/out/preload.cjs', store: '/out/store.js', pages: '/pages' };
const userData = mkdtempSync(join(tmpdir(), 'edition-ledger-shell-'));

afterEach(() => vi.restoreAllMocks());

async function started() {
  const stand = electronStandIn(userData);
  const starting = startShell(stand.seam, FILES);
  await vi.waitFor(() => expect(stand.fork).toHaveBeenCalled());
  stand.child.emit('message', { kind: 'open' });
  await starting;
  return stand;
}

test('scheme and sandbox come before readiness, guards and store before the window', async () => {
  const { order, windows } = await started();
  expect(order).toEqual([
    'enableSandbox',
    'scheme',
    'ready',
    'guard session',
    'pages',
    'fork',
    'calls',
    'calls',
    'window',
  ]);
  expect((windows[0] as { loaded: string[] }).loaded).toEqual(['app://edition-ledger/']);
});

test('the scheme is standard and secure and may not pass the content policy by', async () => {
  const { parts } = await started();
  expect(parts.protocol.registerSchemesAsPrivileged.mock.calls[0]?.[0]).toEqual([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
});

test('every page that comes to be is guarded', async () => {
  const { app } = await started();
  const contents = { on: vi.fn(), setWindowOpenHandler: vi.fn() };
  app.emit('web-contents-created', {}, contents);
  expect(contents.on.mock.calls.map(([event]) => event)).toEqual([
    'will-frame-navigate',
    'will-redirect',
    'will-attach-webview',
  ]);
});

test('a second instance hands over: it opens nothing, and the first comes to the front', async () => {
  const second = electronStandIn(userData, false);
  await startShell(second.seam, FILES);
  expect(second.order).toEqual(['quit']);
  const { app, windows } = await started();
  app.emit('second-instance');
  expect((windows[0] as unknown as { focus: ReturnType<typeof vi.fn> }).focus).toHaveBeenCalled();
});

test('changes reach the window', async () => {
  const { child, windows } = await started();
  child.emit('message', { kind: 'changed', topic: 'changed', seq: 12 });
  expect(windows[0]?.webContents.send).toHaveBeenCalledWith('changed', { seq: 12 });
});

test('a busy store is told by a slip of paper that work is called off', async () => {
  const child = { postMessage: vi.fn(), on: vi.fn(), kill: vi.fn() };
  const slips = join(userData, 'slips');
  const line = utilityLine(child as unknown as UtilityProcess, slips);
  const cancelled = cancelledBySlip(slips);
  expect(cancelled(3)).toBe(false);
  line.cancel(3);
  expect([cancelled(2), cancelled(3), cancelled(3)]).toEqual([false, true, false]);
});

test('a catalogue that cannot be opened is told in the store’s own sentence and ends with 2', async () => {
  vi.spyOn(console, 'error').mockImplementation(() => {});
  const stand = electronStandIn(userData);
  const starting = startShell(stand.seam, FILES);
  await vi.waitFor(() => expect(stand.fork).toHaveBeenCalled());
  const error = { code: 'CATALOGUE_IN_USE', message: 'The catalogue is already open elsewhere.' };
  stand.child.emit('message', { kind: 'refused', error });
  await starting;
  expect(stand.parts.dialog.showErrorBox).toHaveBeenCalledWith('Edition Ledger', error.message);
  expect(stand.app.exit).toHaveBeenCalledWith(2);
  expect(stand.windows).toEqual([]);
});

test('quitting waits until the store has closed', async () => {
  const { app, child, order } = await started();
  const preventDefault = vi.fn();
  app.emit('will-quit', { preventDefault });
  expect(preventDefault).toHaveBeenCalled();
  await vi.waitFor(() => expect(order.at(-1)).toBe('quit'));
  expect(child.postMessage).toHaveBeenCalledWith({ kind: 'close' });
  const again = vi.fn();
  app.emit('will-quit', { preventDefault: again });
  expect(again).not.toHaveBeenCalled();
});

test('the window leaves its place behind', async () => {
  const { windows } = await started();
  windows[0]?.emit('close');
  expect(readWindowState(join(userData, 'window.json'))).toMatchObject({
    x: 1,
    width: 900,
    maximized: false,
  });
});

test('the catalogue is the named one, or the same as everywhere', () => {
  expect(catalogueOf(['electron', '.', '--catalogue', '/a/b.ledger'])).toBe('/a/b.ledger');
  expect(catalogueOf(['electron', '--no-sandbox', '.', '--catalogue=/a/b.ledger'])).toBe('/a/b.ledger');
  expect(catalogueOf(['edition-ledger'])).toBe(defaultCatalogue());
});
