import type { IpcMain } from 'electron';
import { z } from 'zod';
import type { Answer } from '../src/contract/operation.ts';
import { Refusal, type RefusalBody } from '../src/contract/refusal.ts';
import { isTrustedSender } from './policy.ts';

/** The channels between window and shell; pages cannot name any other. */
export const CALL_CHANNEL = 'call';
export const CHANGED_CHANNEL = 'changed';
export const PROGRESS_CHANNEL = 'progress';
export const CANCEL_CHANNEL = 'cancel';

/** As much as the loopback host takes in one call. */
const SIZE_LIMIT = 2 * 1024 * 1024;

const callArguments = z.tuple([z.string().max(100), z.unknown()]);

function refused(code: RefusalBody['code'], message: string): Answer<never> {
  return { ok: false, error: { code, message } };
}

/**
 * Answers the window's calls. A message from anywhere but the main frame of an own page is rejected with an
 * error; malformed arguments and a dead store come back as refusals, since errors lose their code on this way.
 */
export function answerCalls(
  ipcMain: Pick<IpcMain, 'handle'>,
  store: { call(name: string, input: unknown): Promise<Answer<unknown>>; cancel(job: string): boolean },
): void {
  ipcMain.handle(CANCEL_CHANNEL, (event, job: unknown): boolean => {
    if (!isTrustedSender(event.senderFrame)) throw new Error('Only Edition Ledger’s own pages may call.');
    return typeof job === 'string' && store.cancel(job);
  });
  ipcMain.handle(CALL_CHANNEL, async (event, ...given: unknown[]): Promise<Answer<unknown>> => {
    if (!isTrustedSender(event.senderFrame)) throw new Error('Only Edition Ledger’s own pages may call.');
    const parsed = callArguments.safeParse(given);
    if (!parsed.success) return refused('BAD_INPUT', 'A call is a name and an input.');
    const [name, input] = parsed.data;
    if ((JSON.stringify(input) ?? '').length > SIZE_LIMIT) {
      return refused('BAD_INPUT', 'The input is larger than 2 MiB; send it in parts.');
    }
    try {
      return await store.call(name, input);
    } catch (thrown) {
      if (thrown instanceof Refusal) return { ok: false, error: thrown.body() };
      throw thrown;
    }
  });
}
