import type { Context } from 'hono';
import { streamSSE } from 'hono/streaming';
import type { StoreClient } from '../thread/client.ts';

const HEARTBEAT_MS = 20_000;

/** The store as the routes need it. */
export type Store = Pick<StoreClient, 'call' | 'onChange'>;

/** Server-sent events, topic 'changed' with `{seq}`, until the window or the host goes away. */
export function sendEvents(context: Context, store: Store, stopped: AbortSignal): Response {
  return streamSSE(context, async (stream) => {
    await new Promise<void>((resolve) => {
      const unsubscribe = store.onChange((seq) => {
        void stream.writeSSE({ event: 'changed', data: JSON.stringify({ seq }) }).catch(end);
      });
      // A comment line now and then shows that the line still stands, and makes a dead one fail.
      const beat = setInterval(() => void stream.write(': still here\n\n').catch(end), HEARTBEAT_MS);
      function end(): void {
        clearInterval(beat);
        unsubscribe();
        stopped.removeEventListener('abort', end);
        resolve();
      }
      stream.onAbort(end);
      stopped.addEventListener('abort', end);
      void stream.write(': open\n\n').catch(end);
    });
  });
}
