import { randomUUID } from 'node:crypto';
import type { z } from 'zod';
import { commands } from './commands/index.ts';
import { isOperationName, type OperationName, operations } from './contract/index.ts';
import type { Answer } from './contract/operation.ts';
import { Refusal, type RefusalBody } from './contract/refusal.ts';
import type { QueryContext } from './queries/context.ts';
import { queries } from './queries/index.ts';
import type { CatalogueFile } from './store/catalogue-file.ts';

export interface Clock {
  today(): string;
  now(): Date;
}

/** The first thing wrong with an input as one sentence: where, what, how to mend it. */
function badInput(error: z.ZodError): RefusalBody {
  const issue = error.issues[0];
  const field = issue?.path.map(String).join('.') ?? '';
  const what = issue?.message ?? 'This input cannot be read.';
  return {
    code: 'BAD_INPUT',
    message: field ? `${field}: ${what}` : what,
    ...(field ? { field } : {}),
  };
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

type AnyHandler = (context: unknown, input: unknown) => unknown;

/** Runs operations of the contract on an open file: parse, carry out, check the answer's shape. */
export function dispatcher(
  file: CatalogueFile,
  clock: Clock,
  query: QueryContext,
  changed: (seq: number) => void,
): (name: string, input: unknown) => Answer<unknown> {
  const carryOut = (name: OperationName, input: unknown): unknown => {
    if (operations[name].kind === 'query')
      return (queries as Record<string, AnyHandler>)[name]?.(query, input);
    const command = (commands as Record<string, AnyHandler>)[name];
    const result = file.change(name, clock.now().toISOString(), (db) =>
      command?.({ db, today: clock.today() }, input),
    );
    if (result.seq !== null) changed(result.seq);
    return result.value;
  };
  return (name, input) => {
    if (!isOperationName(name))
      return {
        ok: false,
        error: {
          code: 'UNKNOWN_OPERATION',
          message: `There is no operation called ${name.slice(0, 80)}; 'call --list' shows them all.`,
        },
      };
    const parsed = operations[name].input.safeParse(input ?? {});
    if (!parsed.success) return { ok: false, error: badInput(parsed.error) };
    try {
      return { ok: true, value: operations[name].output.parse(carryOut(name, parsed.data)) };
    } catch (error) {
      return failure(error);
    }
  };
}
