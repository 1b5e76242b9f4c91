import { randomUUID } from 'node:crypto';
import type { App, OpenOptions } from '../app.ts';
import type { Answer } from '../contract/operation.ts';
import { Refusal, type RefusalBody } from '../contract/refusal.ts';
import { type ClientLine, type StoreOptions, storeOptions, toStore } from './messages.ts';

/** Plain form of anything thrown; what is not a refusal is logged under an id that the sentence names. */
function asBody(thrown: unknown): RefusalBody {
  if (thrown instanceof Refusal) return thrown.body();
  const id = randomUUID().slice(0, 8);
  console.error(`[${id}]`, thrown);
  return {
    code: 'INTERNAL',
    message: `Something went wrong inside; nothing was changed. The log shows it under ${id}.`,
  };
}

function openOptions(plain: StoreOptions): OpenOptions {
  const { file, readOnly, log, today } = plain;
  return {
    file,
    ...(readOnly === undefined ? {} : { readOnly }),
    ...(log === undefined ? {} : { log }),
    ...(today === undefined ? {} : { today: () => today }),
  };
}

/**
 * Opens the catalogue and answers calls one after the other until it is told to close. Runs inside the
 * store's own thread; `open` is `openApp`. A refusal while opening is posted
 * instead; the client ends the thread then, as it does after 'closed', so that no last message is lost.
 */
export function serveStore(line: ClientLine, options: unknown, open: (options: OpenOptions) => App): void {
  let app: App;
  try {
    app = open(openOptions(storeOptions.parse(options)));
  } catch (thrown) {
    line.post({ kind: 'refused', error: asBody(thrown) });
    return;
  }
  app.onChange((seq) => line.post({ kind: 'changed', topic: 'changed', seq }));
  const answer = (id: number, name: string, input: unknown): Answer<unknown> => {
    try {
      return app.call(name, input, {
        progress: (progress) => line.post({ kind: 'progress', id, ...progress }),
        cancelled: () => line.cancelled(id),
      });
    } catch (thrown) {
      return { ok: false, error: asBody(thrown) };
    }
  };
  const close = () => {
    try {
      app.close();
    } finally {
      line.post({ kind: 'closed' });
    }
  };
  line.onMessage((raw) => {
    const message = toStore.safeParse(raw);
    if (!message.success) {
      console.error('The store was sent a message it does not know.', message.error.message);
      return;
    }
    if (message.data.kind === 'close') return close();
    const { id, name, input } = message.data;
    try {
      line.post({ kind: 'answer', id, answer: answer(id, name, input) });
    } catch (thrown) {
      // A value that is not plain data cannot cross; the caller must not wait for ever.
      line.post({ kind: 'answer', id, answer: { ok: false, error: asBody(thrown) } });
    }
  });
  line.post({ kind: 'open' });
}
