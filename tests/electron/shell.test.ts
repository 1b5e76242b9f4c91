import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { UtilityProcess } from 'electron';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { startShell } from '../../electron/shell.ts';
import { cancelledBySlip, utilityLine } from '../../electron/store-line.ts';
import { readWindowState } from '../../electron/window-state.ts';
import { defaultCatalogue } from '../../src/host/home.ts';
import { electronStandIn, storeStandIn } from '../support/electron-stand-in.ts';

const FILES = { preload: '/out/preload.cjs', store: '/out/store.js', pages: '/pages', icon: '/icon.png' };
const argv = process.argv;
let userData: string;
/** The shell listens to the whole process and copies its error stream; each test puts back what it found. */
let unlisten: () => void;

beforeEach(() => {
  userData = mkdtempSync(join(tmpdir(), 'edition-ledger-shell-'));
  const { write } = process.stderr;
  const before = new Set(process.listeners('uncaughtException'));
  const beforeRejections = new Set(process.listeners('unhandledRejection'));
  unlisten = () => {
    process.stderr.write = write;
    for (const one of process.listeners('uncaughtException'))
      if (!before.has(one)) process.off('uncaughtException', one);
    for (const one of process.listeners('unhandledRejection'))
      if (!beforeRejections.has(one)) process.off('unhandledRejection', one);
  };
});
afterEach(() => {
  unlisten();
  process.argv = argv;
  vi.restoreAllMocks();
});

/** Starts the shell with stores that open, each told by its file; `refuse` are files that do not. */
async function started(refuse: Record<string, string> = {}) {
  const children: Record<string, ReturnType<typeof storeStandIn>> = {};
  const fork = vi.fn((_path: string, args: string[]): object => {
    const { file } = JSON.parse(args[0] ?? '') as { file: string };
    const child = storeStandIn();
    children[file] = child;
    const message = refuse[file];
    const error = { code: 'CATALOGUE_DAMAGED', message };
    queueMicrotask(() => child.emit('message', message ? { kind: 'refused', error } : { kind: 'open' }));
    return child;
  });
  const stand = electronStandIn(userData, { fork });
  await startShell(stand.seam, FILES);
  return { ...stand, fork, children, window: () => stand.windows.at(-1) };
}

test('scheme and sandbox come before readiness, guards and store before the window', async () => {
  const { order, windows, parts } = await started();
  expect(order).toEqual(['enableSandbox', 'scheme', 'ready', 'guard session', 'pages', 'fork', 'window']);
  expect(windows[0]?.loaded).toEqual(['app://edition-ledger/']);
  expect(parts.protocol.registerSchemesAsPrivileged.mock.calls[0]?.[0]).toEqual([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
});

test('every page that comes to be is guarded, and its troubles are noted', async () => {
  const { app } = await started();
  const contents = { on: vi.fn(), setWindowOpenHandler: vi.fn() };
  app.emit('web-contents-created', {}, contents);
  expect(contents.on.mock.calls.map(([event]) => event)).toEqual([
    'will-frame-navigate',
    'will-redirect',
    'will-attach-webview',
    'console-message',
    'preload-error',
    'unresponsive',
    'render-process-gone',
  ]);
});

test('dumps of a crash stay on this computer', async () => {
  const { parts } = await started();
  expect(parts.crashReporter.start.mock.calls).toEqual([[{ uploadToServer: false }]]);
});

test('what a store tells of trouble stands in the log, with its moment and what ran', async () => {
  const { children } = await started();
  const write = vi.spyOn(process.stderr, 'write');
  children[defaultCatalogue()]?.stderr.emit('data', Buffer.from('[ab12cd34] TypeError: deep inside\n'));
  expect(write).toHaveBeenCalled();
  const log = readFileSync(join(userData, 'errors.log'), 'utf8');
  expect(log).toMatch(/^\n\d{4}-\d\d-\d\dT\S+Z Edition Ledger 0\.0\.0, Electron/);
  expect(log).toContain('Z [ab12cd34] TypeError: deep inside');
});

test('a second instance opens nothing itself', async () => {
  const second = electronStandIn(userData, { first: false });
  await startShell(second.seam, FILES);
  expect(second.order).toEqual(['quit']);
});

test('a second instance’s file is opened here, in the folder where it was named', async () => {
  const { app, children, window } = await started();
  app.emit('second-instance', {}, ['edition-ledger', '--flag', 'salt.ledger'], '/press');
  await vi.waitFor(() => expect(window()?.loaded).toHaveLength(2));
  expect(Object.keys(children)).toEqual([defaultCatalogue(), '/press/salt.ledger']);
  expect(children[defaultCatalogue()]?.postMessage).toHaveBeenCalledWith({ kind: 'close' });
  expect(window()?.focus).toHaveBeenCalled();
  app.emit('second-instance', {}, ['edition-ledger'], '/press');
  expect(Object.keys(children)).toHaveLength(2);
});

test('a file that the system hands over is opened, also before the program is ready', async () => {
  process.argv = ['edition-ledger', '/press/first.ledger'];
  const { app, children, window } = await started();
  expect(Object.keys(children)).toEqual(['/press/first.ledger']);
  const preventDefault = vi.fn();
  app.emit('open-file', { preventDefault }, '/press/next.ledger');
  expect(preventDefault).toHaveBeenCalled();
  await vi.waitFor(() => expect(window()?.loaded).toHaveLength(2));
  expect(Object.keys(children)).toEqual(['/press/first.ledger', '/press/next.ledger']);
});

test('a file that is refused is told of, and the open catalogue stays', async () => {
  const { app, children, window, parts } = await started({ '/press/letter.ledger': 'This is no catalogue.' });
  app.emit('open-file', { preventDefault() {} }, '/press/letter.ledger');
  await vi.waitFor(() => expect(parts.dialog.showErrorBox).toHaveBeenCalled());
  expect(parts.dialog.showErrorBox).toHaveBeenCalledWith(
    'letter.ledger is not opened',
    'This is no catalogue.',
  );
  expect(children[defaultCatalogue()]?.postMessage).not.toHaveBeenCalledWith({ kind: 'close' });
  expect(window()?.loaded).toHaveLength(1);
});

test('the catalogue that was open last opens again, as long as it is there', async () => {
  const salt = join(userData, 'salt.ledger');
  writeFileSync(salt, '');
  const first = await started();
  first.app.emit('second-instance', {}, ['edition-ledger', salt], '/');
  await vi.waitFor(() => expect(first.app.addRecentDocument).toHaveBeenCalledWith(salt));
  unlisten();
  expect(Object.keys((await started()).children)).toEqual([salt]);
});

test('the File menu makes, opens and lists catalogues, and never replaces one', async () => {
  const { press, parts, children, window } = await started();
  const salt = join(userData, 'salt.ledger');
  writeFileSync(salt, '');
  parts.dialog.showOpenDialog.mockResolvedValueOnce({ filePaths: [salt] });
  press('Open…');
  await vi.waitFor(() => expect(window()?.loaded).toHaveLength(2));
  parts.dialog.showSaveDialog.mockResolvedValueOnce({ filePath: join(userData, 'new') });
  press('New Catalogue…');
  await vi.waitFor(() => expect(children[join(userData, 'new.ledger')]).toBeDefined());
  await vi.waitFor(() => expect(window()?.loaded).toHaveLength(3));
  parts.dialog.showSaveDialog.mockResolvedValueOnce({ filePath: salt });
  parts.dialog.showMessageBox.mockResolvedValueOnce({ response: 1 });
  press('New Catalogue…');
  await vi.waitFor(() => expect(parts.dialog.showMessageBox).toHaveBeenCalled());
  expect(window()?.loaded).toHaveLength(3);
  press(salt);
  await vi.waitFor(() => expect(window()?.loaded).toHaveLength(4));
  press('Clear the List');
  expect(parts.app.clearRecentDocuments).toHaveBeenCalled();
  expect(() => press(salt)).toThrow('no menu item');
});

test('the menu prints, saves as PDF, leads to a screen and to the log', async () => {
  const { press, parts, window } = await started();
  press('Print…');
  expect(window()?.webContents.print).toHaveBeenCalled();
  const file = join(userData, 'page');
  parts.dialog.showSaveDialog.mockResolvedValueOnce({ filePath: file });
  press('Save the Page as PDF…');
  await vi.waitFor(() => expect(readFileSync(`${file}.pdf`, 'utf8')).toBe('%PDF-1.7'));
  press('Agenda');
  expect(window()?.webContents.send).toHaveBeenLastCalledWith('go', { path: '/agenda' });
  press('Show the Error Log');
  expect(parts.dialog.showMessageBox).toHaveBeenCalled();
  expect(parts.shell.showItemInFolder).not.toHaveBeenCalled();
  writeFileSync(join(userData, 'errors.log'), 'x');
  press('Show the Error Log');
  expect(parts.shell.showItemInFolder).toHaveBeenCalledWith(join(userData, 'errors.log'));
});

test('a PDF that cannot be written is told of and leaves nothing half', async () => {
  vi.spyOn(console, 'error').mockImplementation(() => {});
  const { press, parts } = await started();
  parts.dialog.showSaveDialog.mockResolvedValueOnce({ filePath: join(userData, 'away/page.pdf') });
  press('Save the Page as PDF…');
  await vi.waitFor(() => expect(parts.dialog.showErrorBox).toHaveBeenCalled());
  expect(parts.dialog.showErrorBox.mock.calls[0]?.[1]).toMatch(/Choose another folder/);
});

test('changes reach the window', async () => {
  const { children, window } = await started();
  children[defaultCatalogue()]?.emit('message', { kind: 'changed', topic: 'changed', seq: 12 });
  expect(window()?.webContents.send).toHaveBeenCalledWith('changed', { seq: 12 });
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

test('a store that dies is told of, and the program ends', async () => {
  const { children, parts, order } = await started();
  children[defaultCatalogue()]?.emit('exit', 139);
  await vi.waitFor(() => expect(order.at(-1)).toBe('quit'));
  expect(parts.dialog.showErrorBox.mock.calls[0]?.[1]).toMatch(/What was saved is safe/);
});

test('a first catalogue that cannot be opened is told in the store’s own sentence and ends with 2', async () => {
  vi.spyOn(console, 'error').mockImplementation(() => {});
  const message = 'The catalogue is already open elsewhere.';
  const { parts, app, windows } = await started({ [defaultCatalogue()]: message });
  expect(parts.dialog.showErrorBox).toHaveBeenCalledWith('Edition Ledger', message);
  expect(app.exit).toHaveBeenCalledWith(2);
  expect(windows).toEqual([]);
});

test('quitting waits until the store has closed', async () => {
  const { app, children, order } = await started();
  const preventDefault = vi.fn();
  app.emit('will-quit', { preventDefault });
  expect(preventDefault).toHaveBeenCalled();
  await vi.waitFor(() => expect(order.at(-1)).toBe('quit'));
  expect(children[defaultCatalogue()]?.postMessage).toHaveBeenCalledWith({ kind: 'close' });
  const again = vi.fn();
  app.emit('will-quit', { preventDefault: again });
  expect(again).not.toHaveBeenCalled();
});

test('the window leaves its place behind and comes anew when it was closed', async () => {
  const { app, windows, window } = await started();
  window()?.emit('close');
  window()?.emit('closed');
  expect(readWindowState(join(userData, 'window.json'))).toMatchObject({
    x: 1,
    width: 900,
    maximized: false,
  });
  app.emit('activate');
  expect(windows).toHaveLength(2);
});
