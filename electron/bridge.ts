import type { IpcRenderer, WebUtils } from 'electron';
import type { Answer } from '../src/contract/operation.ts';

/** What the pages find as `window.editionLedger`. */
export interface Bridge {
  call(name: string, input: unknown): Promise<Answer<unknown>>;
  /** Calls off the work of this name. */
  cancel(job: string): Promise<unknown>;
  subscribe(topic: string, fn: (data: unknown) => void): () => void;
  /** Opens a catalogue file that was dropped on the window; answers whether it was one. */
  openDropped(file: File): Promise<boolean>;
  /** Begins dragging a file out of the window; call it while a drag starts. */
  dragOut(name: string, bytes: Uint8Array): void;
}

/** What the shell tells the page: that the catalogue changed, how far work has come, which screen the menu asks for. */
const TOPICS = ['changed', 'progress', 'go'];

/**
 * Builds the pages' door. The page chooses an operation, never a channel: each function has its one channel, and
 * the topics are listed. Channel names stand here as text because a sandboxed preload is one file.
 */
export function makeBridge(
  ipc: Pick<IpcRenderer, 'invoke' | 'on' | 'removeListener'>,
  utils: Pick<WebUtils, 'getPathForFile'>,
): Bridge {
  return {
    call: (name, input) => ipc.invoke('call', String(name), input),
    cancel: (job) => ipc.invoke('cancel', String(job)),
    subscribe(topic, fn) {
      if (!TOPICS.includes(topic)) throw new Error(`The topics are ${TOPICS.join(', ')}.`);
      // The event itself would hand the page the sender, so only the data goes on.
      const listener = (_event: unknown, data: unknown) => fn(data);
      ipc.on(topic, listener);
      return () => void ipc.removeListener(topic, listener);
    },
    // Only a File that a person dropped has a path; one made by a script has none.
    openDropped: (file) => ipc.invoke('open dropped', utils.getPathForFile(file)),
    dragOut: (name, bytes) => void ipc.invoke('drag out', String(name), bytes),
  };
}
