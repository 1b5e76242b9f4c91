import type { Context } from 'hono';
import { streamSSE } from 'hono/streaming';
import type { StoreClient } from '../thread/client.ts';

const HEARTBEAT_MS = 20_000;

/** The store as the routes need it. */
export type Store = Pick<StoreClient, 'call' | 'cancel' | 'onChange' | 'onProgress'>;

/** Server-sent events, topics 'changed' with `{seq}` and 'progress' of named jobs, until the window or the host goes away. */
export function sendEvents(context: Context, store: Store, stopped: AbortSignal): Response {
  return streamSSE(context, async (stream) => {
    await new Promise<void>((resolve) => {
      const send = (event: string, data: unknown) =>
        void stream.writeSSE({ event, data: JSON.stringify(data) }).catch(end);
      const unsubscribe = [
        store.onChange((seq) => send('changed', { seq })),
        store.onProgress((progress) => send('progress', progress)),
      ];
      // A comment line now and then shows that the line still stands, and makes a dead one fail.
      const beat = setInterval(() => void stream.write(': still here\n\n').catch(end), HEARTBEAT_MS);
      function end(): void {
        clearInterval(beat);
        for (const stop of unsubscribe) stop();
        stopped.removeEventListener('abort', end);
        resolve();
      }
      stream.onAbort(end);
      stopped.addEventListener('abort', end);
      void stream.write(': open\n\n').catch(end);
    });
  });
}
