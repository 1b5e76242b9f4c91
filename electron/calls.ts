import { isAbsolute } from 'node:path';
import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import { z } from 'zod';
import { isOperationName } from '../src/contract/index.ts';
import type { Answer } from '../src/contract/operation.ts';
import { Refusal, type RefusalBody } from '../src/contract/refusal.ts';
import { BODY_LIMIT } from '../src/host/body.ts';
import { isCatalogueName } from './argv.ts';
import { isTrustedSender } from './policy.ts';

/** The channels between window and shell; pages cannot name any other. */
export const CALL_CHANNEL = 'call';
export const CANCEL_CHANNEL = 'cancel';
export const DROP_CHANNEL = 'open dropped';
export const DRAG_CHANNEL = 'drag out';
export const CHANGED_CHANNEL = 'changed';
export const PROGRESS_CHANNEL = 'progress';
export const GO_CHANNEL = 'go';

const callArguments = z.tuple([z.string().max(100), z.unknown()]);
const droppedArguments = z.tuple([z.string().min(1).max(4096).refine(isAbsolute).refine(isCatalogueName)]);

/** What the shell does for its page. */
export interface PageServices {
  call(name: string, input: unknown): Promise<Answer<unknown>>;
  /** Whether there was work of this name to call off. */
  cancel(job: string): boolean;
  openDropped(file: string): Promise<void>;
  dragOut(sender: IpcMainInvokeEvent['sender'], given: readonly unknown[]): Promise<void>;
}

function refused(code: RefusalBody['code'], message: string): Answer<never> {
  return { ok: false, error: { code, message } };
}

async function answerCall(services: PageServices, given: readonly unknown[]): Promise<Answer<unknown>> {
  const parsed = callArguments.safeParse(given);
  if (!parsed.success) return refused('BAD_INPUT', 'A call is a name and an input.');
  const [name, input] = parsed.data;
  if (!isOperationName(name)) return refused('UNKNOWN_OPERATION', 'There is no operation of that name.');
  if ((JSON.stringify(input) ?? '').length > BODY_LIMIT) {
    return refused('BAD_INPUT', 'The input is larger than 8 MiB; send it in parts.');
  }
  try {
    return await services.call(name, input);
  } catch (thrown) {
    if (thrown instanceof Refusal) return { ok: false, error: thrown.body() };
    throw thrown;
  }
}

/**
 * Answers the window's messages. One from anywhere but the main frame of an own page is rejected with an error;
 * malformed arguments and a dead store come back as refusals, since errors lose their code on this way.
 */
export function answerPages(ipcMain: Pick<IpcMain, 'handle'>, services: PageServices): void {
  const answer = (
    channel: string,
    fn: (event: IpcMainInvokeEvent, given: readonly unknown[]) => Promise<unknown>,
  ) =>
    ipcMain.handle(channel, async (event, ...given: unknown[]) => {
      if (!isTrustedSender(event.senderFrame)) throw new Error('Only Edition Ledger’s own pages may call.');
      return fn(event, given);
    });
  answer(CALL_CHANNEL, (_event, given) => answerCall(services, given));
  answer(CANCEL_CHANNEL, async (_event, [job]) => typeof job === 'string' && services.cancel(job));
  answer(DROP_CHANNEL, async (_event, given) => {
    const parsed = droppedArguments.safeParse(given);
    if (parsed.success) await services.openDropped(parsed.data[0]);
    return parsed.success;
  });
  answer(DRAG_CHANNEL, (event, given) => services.dragOut(event.sender, given));
}
