import { existsSync, rmSync, writeFileSync } from 'node:fs';
import type { UtilityProcess } from 'electron';
import type { ClientLine, StoreLine } from '../src/thread/messages.ts';

/**
 * A process shares no memory with another and reads no messages while it works, so a call is called off by a file:
 * `slips` is a path of this launch alone, and the file `slips-ID` says that call ID is cancelled.
 */
const slipOf = (slips: string, id: number) => `${slips}-${id}`;

/** The client's end of a utility process. */
export function utilityLine(
  child: Pick<UtilityProcess, 'postMessage' | 'on' | 'kill'>,
  slips: string,
): StoreLine {
  return {
    post: (message) => child.postMessage(message),
    cancel: (id) => writeFileSync(slipOf(slips, id), ''),
    onMessage: (listener) => void child.on('message', listener),
    onEnd: (listener) =>
      void child.on('exit', (code) =>
        listener(code === 0 ? 'it was closed' : `its process ended with ${code}`),
      ),
    kill: () => void child.kill(),
  };
}

/** Whether the client has called off a call; the slip has done its work then. */
export function cancelledBySlip(slips: string): ClientLine['cancelled'] {
  return (id) => {
    const slip = slipOf(slips, id);
    if (!existsSync(slip)) return false;
    rmSync(slip, { force: true });
    return true;
  };
}
