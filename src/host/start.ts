import { execFileSync, spawn } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { Refusal } from '../contract/refusal.ts';
import type { StoreClient } from '../thread/client.ts';
import { startStore } from '../thread/start.ts';
import { ensurePages } from './build-pages.ts';
import { findElectron } from './electron-binary.ts';
import { dataFolder, PAGES, PROGRAM } from './home.ts';
import { captureErrors, ErrorLog, LOG_NAME } from './log.ts';
import { openBrowser } from './open-browser.ts';
import { readStartOptions, START_USAGE, type StartOptions } from './options.ts';
import { type Host, startHost } from './server.ts';

const say = (line: string) => console.log(line);

/** Runs the desktop window and ends as it ends. */
async function startElectron(program: string, options: StartOptions): Promise<void> {
  await ensurePages(say);
  // The shell's own build is a program beside it: nothing imports electron/.
  execFileSync(process.execPath, [join(PROGRAM, 'electron/build.ts')], { stdio: 'inherit' });
  const child = spawn(program, [PROGRAM, '--catalogue', options.catalogue], { stdio: 'inherit' });
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => child.kill(signal));
  child.on('error', (error) => {
    console.error(`Electron cannot be started (${error.message}).`);
    process.exitCode = 2;
  });
  child.on('exit', (code) => {
    process.exitCode = code ?? 2;
  });
}

/** The shell that npm puts between itself and this process ends on a signal without passing it on. */
function onOrphaned(stop: () => void): void {
  if (process.env.npm_lifecycle_event === undefined) return;
  const parent = process.ppid;
  setInterval(() => process.ppid !== parent && stop(), 500).unref();
}

/** Closes host and store once, on a signal, when npm goes away or when the store's thread dies. Answers the way to do so. */
function stopCleanly(host: Host, store: StoreClient): () => void {
  let stopping = false;
  const stop = async (exitCode: number) => {
    if (stopping) return;
    stopping = true;
    await host.close();
    await store.close();
    process.exit(exitCode);
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => void stop(0));
  onOrphaned(() => void stop(0));
  void store.ended.then(() => {
    if (!stopping)
      console.error('The catalogue’s thread ended; start Edition Ledger again. What was saved is safe.');
    return stop(2);
  });
  return () => void stop(0);
}

/** A person at the terminal gets a fresh start address by pressing Enter, for a second browser or a lost window. */
function offerNewAddress(host: Host): void {
  if (!process.stdin.isTTY) return;
  say('Press Enter for a new start address, Ctrl+C to stop.');
  createInterface({ input: process.stdin }).on('line', () => say(host.newStartUrl()));
}

/** Errors go to a file on this computer and nowhere else. Answers its path. */
function keepLog(): string {
  const file = join(dataFolder(), 'logs', LOG_NAME);
  const heading = `Edition Ledger, loopback host, Node ${process.versions.node}, ${process.platform} ${process.arch}`;
  captureErrors(new ErrorLog({ file, heading }), () => process.exit(1));
  return file;
}

async function startLoopback(options: StartOptions): Promise<void> {
  await ensurePages(say);
  const store = await startStore({ file: options.catalogue, log: keepLog() });
  let stop = () => {};
  const idle = options.idle && { idle: { ms: options.idle * 60_000, stop: () => stop() } };
  const host = await startHost({ store, pages: PAGES, port: options.port ?? 0, ...idle }).catch(
    async (error) => {
      await store.close();
      throw error;
    },
  );
  stop = stopCleanly(host, store);
  const url = host.newStartUrl();
  say(`Catalogue: ${options.catalogue}`);
  say(`Edition Ledger is ready at ${url}`);
  offerNewAddress(host);
  if (!options['no-open'] && !process.env.CI) openBrowser(url);
}

async function main(): Promise<void> {
  const options = readStartOptions(process.argv.slice(2));
  if (options.help) return say(START_USAGE);
  const electron = findElectron(join(PROGRAM, 'node_modules/electron'));
  if (electron !== undefined) return startElectron(electron, options);
  say(
    'Electron’s program is not installed (npx install-electron fetches it), so the same pages are served to your browser.',
  );
  await startLoopback(options);
}

await main().catch((error: unknown) => {
  console.error(error instanceof Refusal ? error.message : error);
  process.exitCode = 2;
});
