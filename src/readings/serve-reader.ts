import { writeFileSync } from 'node:fs';
import { type MessagePort, parentPort, workerData } from 'node:worker_threads';
import type { Step } from '../contract/jobs.ts';
import { type Reading, reading } from '../contract/proof-checks/facts.ts';
import { Refusal } from '../contract/refusal.ts';
import type { FileKind } from '../contract/terms.ts';
import { type FromReader, readerTask } from './messages.ts';

/** Reads a final file: looks at its first bytes, and calls the reader that knows its kind. */
export type ReadFile = (
  path: string,
  options: { kind: FileKind; fileName: string; step: Step },
) => Promise<Reading>;

/** Milliseconds between two words about how far it has come. */
const PACE_MS = 100;

async function carryOut(port: MessagePort, given: unknown, readFile: ReadFile): Promise<void> {
  const say = (message: FromReader) => port.postMessage(message);
  const { path, name, kind, to } = readerTask.parse(given);
  let last = 0;
  const step: Step = (done, total, what) => {
    if (performance.now() - last < PACE_MS && done !== total) return;
    last = performance.now();
    say({ say: 'progress', done, total, what });
  };
  try {
    // The file lies ready under a name of ours; the user's own is what the check is kept under.
    const read = reading.parse(await readFile(path, { kind, step, fileName: name }));
    writeFileSync(to, JSON.stringify(read));
    say({ say: 'read', fileName: read.fileName, bytes: read.bytes, sha256: read.sha256 });
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    say({ say: 'refused', error: error.body() });
  }
}

/** The whole of a reader's thread: one file, then it ends. What is thrown ends it too, and is told by its other end. */
export async function serveReader(readFile: ReadFile): Promise<void> {
  if (parentPort === null)
    throw new Error('This file is a thread of Edition Ledger; start src/host/start.ts.');
  await carryOut(parentPort, workerData, readFile);
  parentPort.close();
}
