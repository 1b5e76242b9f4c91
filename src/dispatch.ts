import { randomUUID } from 'node:crypto';
import { commands } from './commands/index.ts';
import { badInput } from './contract/bad-input.ts';
import { isOperationName, isReadingName, type OperationName, operations } from './contract/index.ts';
import type { Follower, Step } from './contract/jobs.ts';
import type { Answer } from './contract/operation.ts';
import { Refusal, type RefusalBody } from './contract/refusal.ts';
import { Rehearsal } from './contract/rehearsal.ts';
import type { ErrandContext } from './errands/context.ts';
import { errands } from './errands/index.ts';
import type { QueryContext } from './queries/context.ts';
import { queries } from './queries/index.ts';
import type { ReaderOptions } from './readings/context.ts';
import { readings } from './readings/index.ts';
import type { CatalogueFile } from './store/catalogue-file.ts';
import { refusalOf } from './store/sqlite-errors.ts';
import type { Staging } from './store/staging.ts';

export interface Clock {
  today(): string;
  now(): Date;
}

/** Whatever was thrown, as a plain refusal; the unexpected gets an id and goes to the log. */
function failure(error: unknown): { ok: false; error: RefusalBody } {
  if (error instanceof Refusal) return { ok: false, error: error.body() };
  const id = randomUUID().slice(0, 8);
  console.error(`[${id}]`, error);
  return {
    ok: false,
    error: {
      code: 'INTERNAL',
      message: `Something unexpected went wrong (id ${id}); nothing was saved. The log shows more.`,
    },
  };
}

/** Milliseconds between two words about how far work has come. */
const PACE_MS = 100;

/** The step that a follower hears of; without one it does nothing. */
function stepper(follower: Follower | undefined): Step {
  if (follower === undefined) return () => {};
  let last = performance.now();
  return (done, total, what) => {
    const now = performance.now();
    if (now - last < PACE_MS && done !== total) return;
    last = now;
    if (follower.cancelled()) throw new Refusal('CANCELLED', 'Called off; nothing was changed.');
    follower.progress({ done, total, what });
  };
}

type AnyHandler = (context: unknown, input: unknown) => unknown;

/** An open catalogue as the dispatcher needs it; a restore puts another file in its place. */
export interface Session {
  readonly file: CatalogueFile;
  readonly query: QueryContext;
  readonly files: Staging;
  /** Full path of the program's error log, where it keeps one. */
  readonly log: string | null;
  /** How files are read, and what ends it when the catalogue is closed. */
  readonly reader: ReaderOptions;
  readonly closing: AbortSignal;
  exchange(swap: { to: string }): void;
  /** Called before each command: a new day gets its backup first. */
  beforeCommand(): void;
  changed(seq: number): void;
}

/** Carries out a parsed operation. An answer of a wrong shape undoes the command: it is checked before the commit. */
function carryOut(
  session: Session,
  clock: Clock,
  name: OperationName,
  input: unknown,
  follower?: Follower,
): unknown {
  const { kind, output } = operations[name];
  const at = clock.now().toISOString();
  const { files } = session;
  if (kind === 'reading') throw new Error(`${name} is answered later; ask for it by \`read\`.`);
  const step = stepper(follower);
  if (kind === 'query')
    return output.parse(
      (queries as Record<string, AnyHandler>)[name]?.({ ...session.query, files, step }, input),
    );
  if (kind === 'errand') {
    const { file, log } = session;
    const context: ErrandContext = { file, files, at, log, exchange: (swap) => session.exchange(swap) };
    return output.parse((errands as Record<string, AnyHandler>)[name]?.(context, input));
  }
  session.beforeCommand();
  const { audit } = session.query;
  const command = (commands as Record<string, AnyHandler>)[name];
  const { value, seq } = session.file.change(
    name,
    at,
    (db) => output.parse(command?.({ db, audit, today: clock.today(), files, step }, input)),
    step,
  );
  if (seq !== null) session.changed(seq);
  return value;
}

type Asked = { ok: true; name: OperationName; input: unknown } | { ok: false; error: RefusalBody };

/** The operation that is asked for with its parsed input, or why there is none. */
function asked(name: string, input: unknown): Asked {
  if (!isOperationName(name))
    return failure(
      new Refusal(
        'UNKNOWN_OPERATION',
        `There is no operation called ${name.slice(0, 80)}; 'call --list' shows them all.`,
      ),
    );
  const parsed = operations[name].input.safeParse(input ?? {});
  return parsed.success
    ? { ok: true, name, input: parsed.data }
    : { ok: false, error: badInput(parsed.error) };
}

/** Runs operations of the contract on an open file: parse, carry out, check the answer's shape. */
export function dispatcher(
  session: Session,
  clock: Clock,
): (name: string, input: unknown, follower?: Follower) => Answer<unknown> {
  return (name, input, follower) => {
    const call = asked(name, input);
    if (!call.ok) return call;
    try {
      return { ok: true, value: carryOut(session, clock, call.name, call.input, follower) };
    } catch (error) {
      if (error instanceof Rehearsal)
        return { ok: true, value: operations[call.name].output.parse(error.value) };
      return failure(refusalOf(error));
    }
  };
}

/** Runs readings of the contract, which are answered later; other names are refused. Never rejects. */
export function readingDispatcher(
  session: Session,
): (name: string, input: unknown, follower?: Follower) => Promise<Answer<unknown>> {
  return async (name, input, follower) => {
    const call = asked(name, input);
    if (!call.ok) return call;
    try {
      if (!isReadingName(call.name)) throw new Error(`${name} is answered at once; ask for it by \`call\`.`);
      const { files, reader, closing } = session;
      const handler = (readings as Record<string, AnyHandler>)[call.name];
      const value = await handler?.({ files, reader, closing, follower }, call.input);
      return { ok: true, value: operations[call.name].output.parse(value) };
    } catch (error) {
      return failure(refusalOf(error));
    }
  };
}
