import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import module from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';

// Plain JavaScript: this file must still speak on a Node that cannot read the rest.

/** First Node that reads TypeScript files as they are, without a flag. */
const NEEDED = '22.18';

/**
 * Whether a Node version such as '20.20.2' is new enough.
 * @param {string} version
 * @returns {boolean}
 */
export function isNewEnough(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  return major > 22 || (major === 22 && minor >= 18);
}

/**
 * The Node program that `npm ci` brought along, if any.
 * @returns {string | undefined}
 */
function broughtNode() {
  const windows = process.platform === 'win32';
  const names = [`node-${windows ? 'win' : process.platform}-${process.arch}`, 'node'];
  return names
    .map((name) => new URL(`../../node_modules/${name}/bin/node${windows ? '.exe' : ''}`, import.meta.url))
    .map((url) => fileURLToPath(url))
    .find((path) => existsSync(path));
}

/**
 * Runs the file with another Node in the same terminal and ends as it ends, signals passed on.
 * @param {string} node
 * @param {string} entry
 */
function handOver(node, entry) {
  const child = spawn(node, [entry, ...process.argv.slice(2)], { stdio: 'inherit' });
  /** @type {NodeJS.Signals[]} */
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'];
  for (const signal of signals) process.on(signal, () => child.kill(signal));
  child.on('error', (error) => {
    process.stderr.write(
      `The Node that came along cannot be started (${error.message}); run npm ci again.\n`,
    );
    process.exitCode = 2;
  });
  child.on('exit', (code) => {
    process.exitCode = code === null ? 2 : code;
  });
}

/**
 * Runs a TypeScript file of this program with the arguments of this process: here if this Node is new enough,
 * else with the one that came along, else says in a sentence what is needed and ends with 2.
 * @param {string} entry absolute path
 * @param {{ version?: string, brought?: string | null | undefined }} [found] what was found here; given in tests
 * @returns {Promise<void>}
 */
export async function runWithNode(entry, found = {}) {
  const version = found.version || process.versions.node;
  const brought = 'brought' in found ? found.brought : broughtNode();
  if (isNewEnough(version)) {
    // Keeps what was read and compiled for the next start; inside the program's folder, so nobody else's to write.
    module.enableCompileCache?.(
      fileURLToPath(new URL('../../node_modules/.cache/compiled', import.meta.url)),
    );
    await import(pathToFileURL(entry).href);
  } else if (brought) handOver(brought, entry);
  else {
    process.stderr.write(
      `Edition Ledger needs Node ${NEEDED} or newer and this is ${version}; run npm ci, which brings one along, or install a newer Node.\n`,
    );
    process.exitCode = 2;
  }
}
