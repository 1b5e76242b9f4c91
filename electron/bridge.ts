import type { IpcRenderer } from 'electron';
import type { Answer } from '../src/contract/operation.ts';

/** What the pages find as `window.editionLedger`. */
export interface Bridge {
  call(name: string, input: unknown): Promise<Answer<unknown>>;
  /** Calls off the work of this name. */
  cancel(job: string): Promise<unknown>;
  subscribe(topic: string, fn: (data: unknown) => void): () => void;
}

/**
 * Builds the pages' door. The page chooses an operation, never a channel: `call` always goes to 'call', and
 * 'changed' and 'progress' are the topics. Channel names stand here as text because a sandboxed preload is one file.
 */
export function makeBridge(ipc: Pick<IpcRenderer, 'invoke' | 'on' | 'removeListener'>): Bridge {
  return {
    call: (name, input) => ipc.invoke('call', String(name), input),
    cancel: (job) => ipc.invoke('cancel', String(job)),
    subscribe(topic, fn) {
      if (topic !== 'changed' && topic !== 'progress')
        throw new Error('The topics are "changed" and "progress".');
      // The event itself would hand the page the sender, so only the data goes on.
      const listener = (_event: unknown, data: unknown) => fn(data);
      ipc.on(topic, listener);
      return () => void ipc.removeListener(topic, listener);
    },
  };
}
