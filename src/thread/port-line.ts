import type { MessagePort } from 'node:worker_threads';
import type { ClientLine } from './messages.ts';

/** The store's end of a worker thread. */
export function portLine(port: MessagePort): ClientLine {
  return {
    post: (message) => port.postMessage(message),
    onMessage: (listener) => port.on('message', listener),
  };
}
