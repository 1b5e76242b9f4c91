import { randomUUID } from 'node:crypto';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import type * as electron from 'electron';
import { Refusal } from '../src/contract/refusal.ts';
import { defaultCatalogue } from '../src/host/home.ts';
import { StoreClient } from '../src/thread/client.ts';
import { answerCalls, CHANGED_CHANNEL, PROGRESS_CHANNEL } from './calls.ts';
import { guardContents, guardSession } from './guards.ts';
import { menuTemplate } from './menu.ts';
import { pageHandler } from './pages.ts';
import { SCHEME } from './policy.ts';
import { utilityLine } from './store-line.ts';
import { openWindow } from './window.ts';

/** The parts of Electron the shell uses: the one seam, so that tests can stand in for it. */
export type Seam = Pick<
  typeof electron,
  | 'app'
  | 'BrowserWindow'
  | 'dialog'
  | 'ipcMain'
  | 'Menu'
  | 'protocol'
  | 'screen'
  | 'session'
  | 'shell'
  | 'utilityProcess'
>;

/** Where the shell's own files lie. */
export interface ShellFiles {
  preload: string;
  store: string;
  pages: string;
}

/** The catalogue named after `--catalogue` among Electron's own arguments, or the default one. */
export function catalogueOf(argv: string[]): string {
  const { values } = parseArgs({
    args: argv.slice(1),
    options: { catalogue: { type: 'string' } },
    strict: false,
    allowPositionals: true,
  });
  return typeof values.catalogue === 'string' ? resolve(values.catalogue) : defaultCatalogue();
}

function registerScheme({ app, protocol, shell }: Seam): void {
  app.enableSandbox();
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
  app.on('web-contents-created', (_event, contents) =>
    guardContents(contents, (address) => void shell.openExternal(address)),
  );
}

/** Quitting waits until the catalogue is closed: what was acknowledged is on disk already, this tidies up. */
function closeStoreFirst({ app }: Seam, store: StoreClient): void {
  let closed = false;
  app.on('will-quit', (event) => {
    if (closed) return;
    event.preventDefault();
    void store.close().finally(() => {
      closed = true;
      app.quit();
    });
  });
}

async function openShell(seam: Seam, files: ShellFiles): Promise<void> {
  const { app, BrowserWindow, dialog, ipcMain, Menu, protocol, screen, session, utilityProcess } = seam;
  guardSession(session.defaultSession);
  protocol.handle(SCHEME, pageHandler(files.pages));
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(process.platform, app.isPackaged)));
  const slips = join(tmpdir(), `edition-ledger-${randomUUID()}`);
  const options = JSON.stringify({ file: catalogueOf(process.argv), slips });
  const store = await StoreClient.connect(utilityLine(utilityProcess.fork(files.store, [options]), slips));
  answerCalls(ipcMain, store);
  closeStoreFirst(seam, store);
  const window = openWindow(
    BrowserWindow,
    screen,
    files.preload,
    join(app.getPath('userData'), 'window.json'),
  );
  const send = (channel: string, data: unknown) => {
    if (!window.isDestroyed()) window.webContents.send(channel, data);
  };
  store.onChange((seq) => send(CHANGED_CHANNEL, { seq }));
  store.onProgress((progress) => send(PROGRESS_CHANNEL, progress));
  app.on('second-instance', () => {
    if (window.isMinimized()) window.restore();
    window.focus();
  });
  void store.ended.then(() => {
    if (window.isDestroyed()) return;
    dialog.showErrorBox(
      'Edition Ledger',
      'The catalogue was closed unexpectedly; start Edition Ledger again. What was saved is safe.',
    );
    app.quit();
  });
}

/** Starts the shell; must be called before Electron is ready. A second instance hands over to the first. */
export async function startShell(seam: Seam, files: ShellFiles): Promise<void> {
  const { app, dialog } = seam;
  if (!app.requestSingleInstanceLock()) return app.quit();
  registerScheme(seam);
  app.on('window-all-closed', () => app.quit());
  await app.whenReady();
  try {
    await openShell(seam, files);
  } catch (thrown) {
    console.error(thrown);
    const why = thrown instanceof Refusal ? thrown.message : 'Edition Ledger could not start.';
    dialog.showErrorBox('Edition Ledger', why);
    app.exit(2);
  }
}
