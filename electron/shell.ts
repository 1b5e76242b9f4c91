import { join } from 'node:path';
import { Refusal } from '../src/contract/refusal.ts';
import { defaultCatalogue } from '../src/host/home.ts';
import { captureErrors, ErrorLog, LOG_NAME } from '../src/host/log.ts';
import { catalogueIn } from './argv.ts';
import { guardDownloads } from './downloads.ts';
import { guardContents, guardSession } from './guards.ts';
import { pageHandler } from './pages.ts';
import { SCHEME } from './policy.ts';
import { Program } from './program.ts';
import type { Seam, ShellFiles } from './seam.ts';
import { noteTroubles } from './troubles.ts';

/** As the packages name the program to Windows, for its notifications and its list of recent files. */
const PROGRAM_ID = 'org.edition-ledger.app';

/** What must happen before Electron is ready: sandbox, scheme, and guards on every page that will ever be. */
function prepare({ app, dialog, protocol, shell }: Seam): void {
  app.enableSandbox();
  if (process.platform === 'win32') app.setAppUserModelId(PROGRAM_ID);
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
  app.on('web-contents-created', (_event, contents) => {
    guardContents(contents, (address) => void shell.openExternal(address));
    noteTroubles(contents, dialog);
  });
  app.on('child-process-gone', (_event, { type, name, reason, exitCode }) => {
    if (reason !== 'clean-exit') console.error(`${name ?? type} ended: ${reason} (${exitCode}).`);
  });
}

/** Errors go to a file on this computer and nowhere else; so do the dumps of a crash. Answers the log's path. */
function keepLog({ app, crashReporter, dialog }: Seam): string {
  crashReporter.start({ uploadToServer: false });
  const file = join(app.getPath('logs'), LOG_NAME);
  const heading = `Edition Ledger ${app.getVersion()}, Electron ${process.versions.electron}, ${process.platform} ${process.arch}`;
  captureErrors(new ErrorLog({ file, heading }), () => {
    dialog.showErrorBox(
      'Edition Ledger',
      `Something went wrong and Edition Ledger must end; what was saved is safe. ${file} says more.`,
    );
    app.exit(1);
  });
  return file;
}

/** Quitting waits until the catalogue is closed: what was acknowledged is on disk already, this tidies up. */
function closeFirst({ app }: Seam, program: Program): void {
  let closed = false;
  app.on('will-quit', (event) => {
    if (closed) return;
    event.preventDefault();
    void program.close().finally(() => {
      closed = true;
      app.quit();
    });
  });
}

/** Files that are to be opened before the program can, and the way they take afterwards. */
interface Asked {
  file: string | undefined;
  open(file: string): void;
}

async function run(seam: Seam, files: ShellFiles, log: string, asked: Asked): Promise<void> {
  const { app, protocol, session } = seam;
  guardSession(session.defaultSession);
  guardDownloads(session.defaultSession, app.getPath('downloads'));
  protocol.handle(SCHEME, pageHandler(files.pages));
  const program = new Program(seam, files, log);
  closeFirst(seam, program);
  const first = asked.file ?? program.last ?? defaultCatalogue();
  await program.start(first);
  asked.open = (file) => void program.open(file);
  if (asked.file !== undefined && asked.file !== first) asked.open(asked.file);
  app.on('second-instance', (_event, argv, folder) => {
    const file = catalogueIn(argv, folder);
    if (file) void program.open(file);
    else program.show();
  });
  // On macOS a program stays when its last window is closed, and comes back at a click on its icon.
  app.on('activate', () => program.show());
}

/**
 * Starts the shell; must be called before Electron is ready. A second instance hands the file it was started with
 * over to the first and ends.
 */
export async function startShell(seam: Seam, files: ShellFiles): Promise<void> {
  const { app, dialog } = seam;
  if (!app.requestSingleInstanceLock()) return app.quit();
  const asked: Asked = {
    file: catalogueIn(process.argv, process.cwd()),
    open: (file) => {
      asked.file = file;
    },
  };
  // macOS tells of a double-clicked file by an event, which may come before the program is ready.
  app.on('open-file', (event, file) => {
    event.preventDefault();
    asked.open(file);
  });
  prepare(seam);
  app.on('window-all-closed', () => {
    if (process.platform !== 'darwin') app.quit();
  });
  const log = keepLog(seam);
  await app.whenReady();
  try {
    await run(seam, files, log, asked);
  } catch (thrown) {
    console.error(thrown);
    const why = thrown instanceof Refusal ? thrown.message : 'Edition Ledger could not start.';
    dialog.showErrorBox('Edition Ledger', why);
    app.exit(2);
  }
}
