import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import type { BrowserWindow, WebContents } from 'electron';
import { Refusal } from '../src/contract/refusal.ts';
import { StoreClient } from '../src/thread/client.ts';
import { answerPages, CHANGED_CHANNEL, GO_CHANNEL, PROGRESS_CHANNEL } from './calls.ts';
import { Desk } from './desk.ts';
import { DragFiles } from './drag-out.ts';
import { askForCatalogue, askForNewCatalogue } from './file-dialogs.ts';
import { type MenuActions, menuTemplate } from './menu.ts';
import { printPage, savePdf } from './paper.ts';
import { START_PAGE } from './policy.ts';
import { RecentFiles } from './recent.ts';
import type { Seam, ShellFiles } from './seam.ts';
import { utilityLine } from './store-line.ts';
import { openWindow } from './window.ts';

/** The running program: one catalogue, one window, one menu, and what ties them together. */
export class Program {
  readonly #seam: Seam;
  readonly #files: ShellFiles;
  readonly #log: string;
  readonly #recent: RecentFiles;
  readonly #desk: Desk;
  readonly #drags = new DragFiles();
  #window: BrowserWindow | undefined;

  /** `log` is the full path of the error log. */
  constructor(seam: Seam, files: ShellFiles, log: string) {
    this.#seam = seam;
    this.#files = files;
    this.#log = log;
    this.#recent = new RecentFiles(join(seam.app.getPath('userData'), 'recent.json'));
    this.#desk = new Desk((file) => this.#connect(file), {
      changed: (seq) => this.#tell(CHANGED_CHANNEL, { seq }),
      progressed: (progress) => this.#tell(PROGRESS_CHANNEL, progress),
      lost: () => this.#endLost(),
    });
    answerPages(seam.ipcMain, {
      call: (name, input) => this.#desk.call(name, input),
      cancel: (job) => this.#desk.cancel(job),
      openDropped: (file) => this.open(file),
      dragOut: (sender, given) => this.#dragOut(sender, given),
    });
  }

  /** The catalogue that was open last and is still there, if any. */
  get last(): string | undefined {
    return this.#recent.present()[0];
  }

  /** Opens the first catalogue and the window. Rejects with the store's Refusal. */
  async start(file: string): Promise<void> {
    await this.#desk.exchange(file);
    this.#noteOpen(file);
    this.show();
  }

  /** Opens another catalogue in place of the present one; a refusal is shown and changes nothing. */
  async open(file: string): Promise<void> {
    if (this.#desk.file === file) return this.show();
    try {
      await this.#desk.exchange(file);
      this.#noteOpen(file);
      void this.#window?.loadURL(START_PAGE);
      this.show();
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) console.error(thrown);
      const why = thrown instanceof Refusal ? thrown.message : 'The catalogue could not be opened.';
      this.#seam.dialog.showErrorBox(`${basename(file)} is not opened`, why);
    }
  }

  /** Brings the window to the front, anew where it was closed. */
  show(): void {
    const window = this.#window ?? this.#openWindow();
    if (window.isMinimized()) window.restore();
    window.focus();
  }

  /** Closes catalogue and temporary files. */
  async close(): Promise<void> {
    await Promise.all([this.#desk.close(), this.#drags.clear()]);
  }

  #connect(file: string): Promise<StoreClient> {
    const slips = join(tmpdir(), `edition-ledger-${randomUUID()}`);
    const options = JSON.stringify({ file, log: this.#log, slips });
    const child = this.#seam.utilityProcess.fork(this.#files.store, [options], {
      serviceName: 'Edition Ledger catalogue',
      stdio: ['ignore', 'inherit', 'pipe'],
    });
    // What the store tells of trouble goes the same way as the shell's own, into the log.
    child.stderr?.on('data', (part: Buffer) => void process.stderr.write(part));
    return StoreClient.connect(utilityLine(child, slips));
  }

  #openWindow(): BrowserWindow {
    const { app, BrowserWindow, screen } = this.#seam;
    const place = join(app.getPath('userData'), 'window.json');
    const window = openWindow(BrowserWindow, screen, this.#files.preload, place);
    window.on('closed', () => {
      this.#window = undefined;
    });
    this.#window = window;
    this.#name(window);
    return window;
  }

  #name(window: BrowserWindow): void {
    if (process.platform === 'darwin' && this.#desk.file) window.setRepresentedFilename(this.#desk.file);
  }

  #noteOpen(file: string): void {
    this.#recent.add(file);
    this.#seam.app.addRecentDocument(file);
    if (this.#window) this.#name(this.#window);
    this.#drawMenu();
  }

  #drawMenu(): void {
    const { Menu, app } = this.#seam;
    const state = {
      platform: process.platform,
      packaged: app.isPackaged,
      recent: this.#recent.present(),
      actions: this.#actions(),
    };
    Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(state)));
  }

  #actions(): MenuActions {
    const { dialog, shell, app } = this.#seam;
    const near = () => this.#desk.file ?? app.getPath('documents');
    const choose = async (ask: typeof askForCatalogue) => {
      this.show();
      const file = this.#window && (await ask(dialog, this.#window, near()));
      if (file) await this.open(file);
    };
    return {
      newCatalogue: () => void choose(askForNewCatalogue),
      openCatalogue: () => void choose(askForCatalogue),
      openRecent: (file) => void this.open(file),
      clearRecent: () => {
        this.#recent.clear();
        app.clearRecentDocuments();
        this.#drawMenu();
      },
      showInFolder: () => shell.showItemInFolder(near()),
      savePdf: () => void this.#savePdf(),
      print: () => this.#window && printPage(this.#window),
      go: (path) => {
        this.show();
        this.#tell(GO_CHANNEL, { path });
      },
      showLog: () => {
        if (existsSync(this.#log)) return shell.showItemInFolder(this.#log);
        void dialog.showMessageBox({ message: 'The error log is empty.', detail: 'No error was noted yet.' });
      },
    };
  }

  async #savePdf(): Promise<void> {
    if (!this.#window) return;
    try {
      await savePdf(this.#seam.dialog, this.#window, this.#seam.app.getPath('documents'));
    } catch (thrown) {
      console.error(thrown);
      const why = thrown instanceof Error ? thrown.message : String(thrown);
      this.#seam.dialog.showErrorBox('The page is not saved', `${why}. Choose another folder.`);
    }
  }

  async #dragOut(sender: WebContents, given: readonly unknown[]): Promise<void> {
    const file = await this.#drags.write(given);
    if (file) sender.startDrag({ file, icon: this.#files.icon });
  }

  #tell(channel: string, data: object): void {
    if (this.#window && !this.#window.isDestroyed()) this.#window.webContents.send(channel, data);
  }

  #endLost(): void {
    this.#seam.dialog.showErrorBox(
      'Edition Ledger',
      'The catalogue was closed unexpectedly; start Edition Ledger again. What was saved is safe.',
    );
    this.#seam.app.quit();
  }
}
