import type { UtilityProcess } from 'electron';
import type { StoreLine } from '../src/thread/messages.ts';

/** The client's end of a utility process. */
export function utilityLine(child: Pick<UtilityProcess, 'postMessage' | 'on' | 'kill'>): StoreLine {
  return {
    post: (message) => child.postMessage(message),
    onMessage: (listener) => void child.on('message', listener),
    onEnd: (listener) =>
      void child.on('exit', (code) =>
        listener(code === 0 ? 'it was closed' : `its process ended with ${code}`),
      ),
    kill: () => void child.kill(),
  };
}
