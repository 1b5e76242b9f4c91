import { randomUUID } from 'node:crypto';
import type { App, OpenOptions } from '../app.ts';
import { isReadingName } from '../contract/index.ts';
import type { Follower } from '../contract/jobs.ts';
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

/** Answers one call: at once, or later where a file is read meanwhile. */
function answerOn(line: ClientLine, app: App, id: number, name: string, input: unknown): void {
  const post = (answer: Answer<unknown>) => {
    try {
      line.post({ kind: 'answer', id, answer });
    } catch (thrown) {
      // A value that is not plain data cannot cross; the caller must not wait for ever.
      line.post({ kind: 'answer', id, answer: { ok: false, error: asBody(thrown) } });
    }
  };
  const follower: Follower = {
    progress: (progress) => line.post({ kind: 'progress', id, ...progress }),
    cancelled: () => line.cancelled(id),
  };
  try {
    if (isReadingName(name)) void app.read(name, input, follower).then(post);
    else post(app.call(name, input, follower));
  } catch (thrown) {
    post({ ok: false, error: asBody(thrown) });
  }
}

/**
 * Works today's audit out part by part while nobody calls; `begin` is to be called whenever it may have become out of
 * date, by a change or by a new day. Should it fail, whoever asks for the audit hears why.
 */
function auditBetweenCalls(app: App): { begin(): void; end(): void } {
  let next: NodeJS.Immediate | undefined;
  const part = () => {
    next = undefined;
    try {
      if (!app.advance()) next = setImmediate(part);
    } catch (thrown) {
      console.error('The audit could not be worked out between calls.', thrown);
    }
  };
  const begin = () => {
    next ??= setImmediate(part);
  };
  begin();
  return { begin, end: () => clearImmediate(next) };
}

/**
 * Opens the catalogue and answers calls one after the other until it is told to close; only readings of files, which
 * have threads of their own, are answered as they come. Runs inside the store's own thread; `open` is `openApp`. A
 * refusal while opening is posted instead; the client ends the thread then, as it does after 'closed', so that no
 * last message is lost.
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
  const audit = auditBetweenCalls(app);
  const close = () => {
    try {
      audit.end();
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
    answerOn(line, app, id, name, input);
    audit.begin();
  });
  line.post({ kind: 'open' });
}
