import { Worker } from 'node:worker_threads';
import { StoreClient } from './client.ts';
import type { StoreLine, StoreOptions } from './messages.ts';
import { cancelIn, cancelPlaces } from './port-line.ts';

/** The client's end of a worker thread. */
export function workerLine(worker: Worker, places: SharedArrayBuffer): StoreLine {
  let reason: string | undefined;
  worker.on('error', (error) => {
    console.error('The store’s thread failed.', error);
    reason = `its thread failed: ${error instanceof Error ? error.message : String(error)}`;
  });
  return {
    post: (message) => worker.postMessage(message),
    cancel: (id) => cancelIn(places, id),
    onMessage: (listener) => worker.on('message', listener),
    onEnd: (listener) =>
      worker.on('exit', (code) => listener(reason ?? (code === 0 ? 'it was closed' : 'its thread ended'))),
    kill: () => void worker.terminate(),
  };
}

/**
 * Opens a catalogue in a worker thread of this process. Rejects with the store's `Refusal` when it cannot be
 * opened. `entry` is the worker's file; tests give a stand-in.
 */
export function startStore(
  options: StoreOptions,
  entry: URL = new URL('./worker.ts', import.meta.url),
): Promise<StoreClient> {
  const places = cancelPlaces();
  return StoreClient.connect(workerLine(new Worker(entry, { workerData: { ...options, places } }), places));
}
