import { parentPort, workerData } from 'node:worker_threads';
import type { App } from '../../src/app.ts';
import type { Follower } from '../../src/contract/jobs.ts';
import type { Answer } from '../../src/contract/operation.ts';
import { Refusal } from '../../src/contract/refusal.ts';
import { portLine } from '../../src/thread/port-line.ts';
import { serveStore } from '../../src/thread/serve.ts';

/** Works until it is called off, or for ten seconds. */
function longWork(follower: Follower | undefined): Answer<unknown> {
  const end = performance.now() + 10_000;
  for (let done = 0; performance.now() < end; done += 1) {
    follower?.progress({ done, total: null, what: 'turns' });
    if (follower?.cancelled())
      return { ok: false, error: { code: 'CANCELLED', message: 'Called off; nothing was changed.' } };
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 10);
  }
  return { ok: true, value: 'never called off' };
}

/** A store without a file, run in a worker: echoes, changes, throws, dies or is refused, as its caller asks. */
function standIn(file: string): App {
  if (file === 'in use') throw new Refusal('CATALOGUE_IN_USE', 'The catalogue is already open elsewhere.');
  if (file === 'broken') throw new Error('a secret detail');
  const listeners = new Set<(seq: number) => void>();
  let seq = 0;
  return {
    call(name, input, follower) {
      if (name === 'long') return longWork(follower);
      if (name === 'throw') throw new Error('a secret detail');
      if (name === 'die') process.exit(7);
      if (name === 'slow') Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 300);
      if (name === 'odd') return { ok: true, value: () => 1 };
      if (name === 'refuse') return { ok: false, error: { code: 'NOT_FOUND', message: 'Not here.' } };
      if (name === 'change') for (const listener of listeners) listener(++seq);
      return { ok: true, value: { name, input } };
    },
    read: async (name, input) => ({ ok: true, value: { name, input } }),
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    advance: () => true,
    close() {},
  };
}

if (parentPort !== null)
  serveStore(portLine(parentPort, workerData.places), workerData, ({ file }) => standIn(file));
