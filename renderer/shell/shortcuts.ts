import { useEffect, useRef, useSyncExternalStore } from 'react';
import { useLocation } from 'wouter';
import { recall, remember } from '../lib/memory.ts';
import { routeOf, SCREENS } from './screens.ts';

const MEMORY = 'single-keys';
const AFTER_G_MS = 1_500;
const TYPING = 'input, textarea, select, [contenteditable]';

const finderInput = () => document.querySelector<HTMLInputElement>('input[data-finder]');

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

/** The screen's own search, or the window's where it has none. */
function focusSearch(): boolean {
  const search = document.querySelector<HTMLInputElement>('main [data-screen-search] input') ?? finderInput();
  search?.focus();
  search?.select();
  return search !== null;
}

function isElsewhere(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return true;
  if (document.querySelector('dialog[open]')) return true;
  return event.target instanceof Element && event.target.matches(TYPING);
}

/** F1 and the keys with Ctrl, Cmd or Alt, which work while something is typed too. Answers whether one was pressed. */
function pressedChord(event: KeyboardEvent, showHelp: () => void): boolean {
  if (event.defaultPrevented || document.querySelector('dialog[open]')) return false;
  if (event.key === 'F1') {
    showHelp();
    return true;
  }
  if ((event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === 'k') {
    finderInput()?.focus();
    finderInput()?.select();
    return true;
  }
  if (!event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return false;
  if (event.key === 'ArrowLeft') history.back();
  else if (event.key === 'ArrowRight') history.forward();
  else return false;
  return true;
}

/** Ctrl K finds anything, Alt with left and right goes back and forward, F1 helps: always on, since no speech presses them. */
function useChords(): void {
  const [, navigate] = useLocation();
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (pressedChord(event, () => navigate('/help'))) event.preventDefault();
    };
    document.addEventListener('keydown', onKeyDown);
    return () => document.removeEventListener('keydown', onKeyDown);
  }, [navigate]);
}

/** `g` and a letter jump to a screen, `/` goes to the search, `?` shows the keys. */
export function useShortcuts(showKeys: () => void): void {
  useChords();
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
