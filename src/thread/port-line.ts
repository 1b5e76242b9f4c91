import type { MessagePort } from 'node:worker_threads';
import type { ClientLine } from './messages.ts';

/** Places for cancelled calls: a busy thread reads no messages, but it can look at memory that both ends share. */
const PLACES = 64;

/** Memory for `cancelPlace` and `portLine`, handed to the thread when it is started. */
export function cancelPlaces(): SharedArrayBuffer {
  return new SharedArrayBuffer(PLACES * Int32Array.BYTES_PER_ELEMENT);
}

/** Writes down that a call is cancelled. */
export function cancelIn(places: SharedArrayBuffer, id: number): void {
  Atomics.store(new Int32Array(places), id % PLACES, id);
}

/** The store's end of a worker thread. */
export function portLine(port: MessagePort, places: SharedArrayBuffer): ClientLine {
  const cancelled = new Int32Array(places);
  return {
    post: (message) => port.postMessage(message),
    onMessage: (listener) => port.on('message', listener),
    cancelled: (id) => Atomics.load(cancelled, id % PLACES) === id,
  };
}
