import { randomUUID } from 'node:crypto';
import { Worker } from 'node:worker_threads';
import type { z } from 'zod';
import { Refusal } from '../contract/refusal.ts';
import type { ReadingContext } from './context.ts';
import { fromReader, type ReaderTask, type readSummary } from './messages.ts';

type Read = z.infer<typeof readSummary>;

/** Milliseconds between two looks at whether the work was called off. */
const LOOK_MS = 50;

/** Room for JavaScript calls within calls: a file that nests deeper ends its thread. */
const STACK_MB = 4;

/** Files read at once, since each may take its whole memory. */
const AT_ONCE = 2;
let running = 0;

const NOTHING_CHANGED = 'Nothing was changed.';

/** Why a thread ended before its time, in a sentence. */
function broken(error: unknown, heapMb: number): Refusal {
  if ((error as { code?: unknown }).code === 'ERR_WORKER_OUT_OF_MEMORY')
    return new Refusal(
      'BAD_INPUT',
      `Reading this file took more than ${heapMb} MB of memory, so it was broken off. ${NOTHING_CHANGED} Make the file smaller or simpler and check it again.`,
      'file',
    );
  const id = randomUUID().slice(0, 8);
  console.error(`[${id}]`, error);
  return new Refusal(
    'BAD_INPUT',
    `The reader broke off at this file (id ${id} in the log), so it may be damaged. ${NOTHING_CHANGED} Make the file anew and check it again.`,
    'file',
  );
}

const calledOff = () => new Refusal('CANCELLED', 'Called off; nothing was changed.');

function tooLate(timeMs: number): Refusal {
  const most = Math.round(timeMs / 1_000);
  return new Refusal(
    'BAD_INPUT',
    `Reading this file took longer than ${most} seconds, so it was broken off. ${NOTHING_CHANGED} Make it simpler and check it again.`,
    'file',
  );
}

/** Takes what a thread tells: progress is passed on, anything else settles the work. */
function hear(
  raw: unknown,
  context: ReadingContext,
  settle: { read: (read: Read) => void; refuse: (refusal: Refusal) => void },
): void {
  const message = fromReader.safeParse(raw);
  if (!message.success) {
    settle.refuse(broken(message.error, context.reader.heapMb));
    return;
  }
  const { data } = message;
  if (data.say === 'progress') {
    const { done, total, what } = data;
    context.follower?.progress({ done, total, what });
  } else if (data.say === 'refused') {
    const { code, message: sentence, field } = data.error;
    settle.refuse(new Refusal(code, sentence, field));
  } else {
    const { fileName, bytes, sha256 } = data;
    settle.read({ fileName, bytes, sha256 });
  }
}

/** Starts the thread and watches it until it is settled, the first word of all that could settle it counting. */
function watch(
  context: ReadingContext,
  task: ReaderTask,
  settled: { read: (read: Read) => void; refuse: (refusal: Refusal) => void },
): void {
  const { reader, follower, closing } = context;
  const worker = new Worker(reader.entry, {
    workerData: task,
    resourceLimits: { maxOldGenerationSizeMb: reader.heapMb, stackSizeMb: STACK_MB },
  });
  let over = false;
  const once = (work: () => void) => {
    if (over) return;
    over = true;
    clearInterval(look);
    clearTimeout(late);
    closing.removeEventListener('abort', close);
    void worker.terminate();
    work();
  };
  const close = () => once(() => settled.refuse(calledOff()));
  const fail = (error: unknown) => once(() => settled.refuse(broken(error, reader.heapMb)));
  const look = setInterval(() => follower?.cancelled() && close(), LOOK_MS);
  const late = setTimeout(() => once(() => settled.refuse(tooLate(reader.timeMs))), reader.timeMs);
  closing.addEventListener('abort', close);
  worker.on('message', (raw) => {
    if (!over)
      hear(raw, context, {
        read: (read) => once(() => settled.read(read)),
        refuse: (refusal) => once(() => settled.refuse(refusal)),
      });
  });
  worker.on('error', fail);
  worker.on('exit', (code) => fail(new Error(`The reader ended with ${code} before it was done.`)));
}

/**
 * Has a file read in a thread of its own, with bounded memory and time, while the catalogue goes on answering. The
 * thread is ended when the work is called off, takes too long, or the catalogue is closed. Rejects with a Refusal.
 */
export async function readInThread(context: ReadingContext, task: ReaderTask): Promise<Read> {
  if (context.closing.aborted) throw calledOff();
  if (running >= AT_ONCE)
    throw new Refusal(
      'IN_USE',
      `${AT_ONCE} files are being read already; wait until one of them is done.`,
      'file',
    );
  running += 1;
  try {
    return await new Promise((read, refuse) => watch(context, task, { read, refuse }));
  } finally {
    running -= 1;
  }
}
