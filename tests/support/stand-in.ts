import { parentPort, workerData } from 'node:worker_threads';
import type { App } from '../../src/app.ts';
import { Refusal } from '../../src/contract/refusal.ts';
import { portLine } from '../../src/thread/port-line.ts';
import { serveStore } from '../../src/thread/serve.ts';

/** A store without a file, run in a worker: echoes, changes, throws, dies or is refused, as its caller asks. */
function standIn(file: string): App {
  if (file === 'in use') throw new Refusal('CATALOGUE_IN_USE', 'The catalogue is already open elsewhere.');
  if (file === 'broken') throw new Error('a secret detail');
  const listeners = new Set<(seq: number) => void>();
  let seq = 0;
  return {
    call(name, input) {
      if (name === 'throw') throw new Error('a secret detail');
      if (name === 'die') process.exit(7);
      if (name === 'slow') Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 300);
      if (name === 'odd') return { ok: true, value: () => 1 };
      if (name === 'refuse') return { ok: false, error: { code: 'NOT_FOUND', message: 'Not here.' } };
      if (name === 'change') for (const listener of listeners) listener(++seq);
      return { ok: true, value: { name, input } };
    },
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close() {},
  };
}

if (parentPort !== null) serveStore(portLine(parentPort), workerData, ({ file }) => standIn(file));
