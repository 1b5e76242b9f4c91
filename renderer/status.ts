import { useSyncExternalStore } from 'react';

/** `done` is announced politely and fades; `refused` is announced at once and stays until dismissed. */
export type StatusTone = 'done' | 'refused';

/** The one message the window shows at its foot. */
export interface StatusMessage {
  id: number;
  tone: StatusTone;
  text: string;
  /** The command that can be taken back from the message: its first entry in the journal. */
  undo?: number | undefined;
}

/** A screen reader drops text that is set while a closing dialog still makes the page inert. */
const SETTLE_MS = 120;
const FADE_MS = 12_000;
/** One that offers something to press stays longer. */
const FADE_WITH_UNDO_MS = 30_000;

let current: StatusMessage | undefined;
let nextId = 1;
let timer: number | undefined;
const watchers = new Set<() => void>();

function show(message: StatusMessage | undefined): void {
  current = message;
  for (const watcher of watchers) watcher();
}

/** Says one sentence to everybody: at the foot of the window and through the live region. */
export function announce(text: string, tone: StatusTone = 'done', undo?: number): void {
  window.clearTimeout(timer);
  show(undefined);
  const message: StatusMessage = { id: nextId, tone, text, undo };
  nextId += 1;
  timer = window.setTimeout(() => {
    show(message);
    const fade = undo === undefined ? FADE_MS : FADE_WITH_UNDO_MS;
    if (tone === 'done') timer = window.setTimeout(() => show(undefined), fade);
  }, SETTLE_MS);
}

/** Takes the message away. */
export function dismissStatus(): void {
  window.clearTimeout(timer);
  show(undefined);
}

function watch(fn: () => void): () => void {
  watchers.add(fn);
  return () => watchers.delete(fn);
}

/** The message now shown, if any. */
export function useStatus(): StatusMessage | undefined {
  return useSyncExternalStore(watch, () => current);
}
