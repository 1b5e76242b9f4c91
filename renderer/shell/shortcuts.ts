import { useEffect, useRef, useSyncExternalStore } from 'react';
import { useLocation } from 'wouter';
import { recall, remember } from '../lib/memory.ts';
import { routeOf, SCREENS } from './screens.ts';

const MEMORY = 'single-keys';
const AFTER_G_MS = 1_500;
const TYPING = 'input, textarea, select, [contenteditable]';

const watchers = new Set<() => void>();

function watch(fn: () => void): () => void {
  watchers.add(fn);
  return () => watchers.delete(fn);
}

function areOn(): boolean {
  return recall(MEMORY) !== 'off';
}

/** Single keys can be switched off, since speech input may press them unasked (WCAG 2.2, 2.1.4). */
export function useSingleKeys(): [boolean, (on: boolean) => void] {
  const on = useSyncExternalStore(watch, areOn);
  const set = (next: boolean) => {
    remember(MEMORY, next ? 'on' : 'off');
    for (const watcher of watchers) watcher();
  };
  return [on, set];
}

function focusSearch(): boolean {
  const search = document.querySelector<HTMLInputElement>('main [data-screen-search] input');
  search?.focus();
  search?.select();
  return search !== null;
}

function isElsewhere(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return true;
  if (document.querySelector('dialog[open]')) return true;
  return event.target instanceof Element && event.target.matches(TYPING);
}

/** `g` and a letter jump to a screen, `/` goes to the search, `?` shows the keys. */
export function useShortcuts(showKeys: () => void): void {
  const [, navigate] = useLocation();
  const [on] = useSingleKeys();
  const pressedG = useRef(0);
  useEffect(() => {
    if (!on) return;
    const onKeyDown = (event: KeyboardEvent) => {
      if (isElsewhere(event)) return;
      const entry =
        event.timeStamp - pressedG.current < AFTER_G_MS && SCREENS.find((one) => one.key === event.key);
      pressedG.current = event.key === 'g' && !entry ? event.timeStamp : 0;
      if (entry) navigate(routeOf(entry));
      else if (event.key === '?') showKeys();
      else if (event.key !== '/' || !focusSearch()) return;
      event.preventDefault();
    };
    document.addEventListener('keydown', onKeyDown);
    return () => document.removeEventListener('keydown', onKeyDown);
  }, [on, navigate, showKeys]);
}
