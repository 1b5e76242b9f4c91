import { type RefObject, useCallback, useEffect, useRef } from 'react';
import { useQueryParam } from '../../location.ts';
import { useSingleKeys } from '../../shell/shortcuts.ts';
import type { Asking } from './words.ts';

const TYPING = 'input, textarea, select, [contenteditable]';
const DO_BUTTON = '.task-do button';

/** The keys of the agenda and what they ask about the task in focus. */
const ASKS: Record<string, Asking> = { d: 'done', w: 'wait', e: 'redate', x: 'drop' };

function rowsOf(list: HTMLElement | null): HTMLElement[] {
  return [...(list?.querySelectorAll<HTMLElement>('[data-task]') ?? [])];
}

function currentIndex(rows: readonly HTMLElement[]): number {
  return rows.findIndex((row) => row.contains(document.activeElement));
}

function focusRow(rows: readonly HTMLElement[], index: number): void {
  const row = rows[Math.max(0, Math.min(index, rows.length - 1))];
  row?.querySelector<HTMLElement>(DO_BUTTON)?.focus();
}

function isElsewhere(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return true;
  if (document.querySelector('dialog[open]')) return true;
  return event.target instanceof Element && event.target.matches(TYPING);
}

/** How far a key moves among the tasks; arrows only once one of them is in focus, so that the page still scrolls. */
function stepOf(key: string, index: number): number {
  if (key === 'j' || (key === 'ArrowDown' && index >= 0)) return 1;
  return key === 'k' || (key === 'ArrowUp' && index >= 0) ? -1 : 0;
}

/**
 * Moves among the tasks of a list by key and asks about the one in focus. Listens on the window, after the
 * shell's own keys on the document, so that `g` and a letter still lead to a screen.
 */
export function useTaskKeys(
  list: RefObject<HTMLElement | null>,
  ask: (what: Asking, taskId: number) => void,
): void {
  const [on] = useSingleKeys();
  useEffect(() => {
    if (!on) return;
    const onKeyDown = (event: KeyboardEvent) => {
      if (isElsewhere(event)) return;
      const rows = rowsOf(list.current);
      const index = currentIndex(rows);
      const step = stepOf(event.key, index);
      const asked = ASKS[event.key];
      const id = Number(rows[index]?.dataset.task);
      if (step !== 0 && rows.length > 0) focusRow(rows, index < 0 ? 0 : index + step);
      else if (asked && index >= 0) ask(asked, id);
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [on, list, ask]);
}

/**
 * Keeps the place in the list: when a dialog closes and its task has left the list, the task that took its
 * place gets the focus. `busy` is true while a dialog is open; call the answered function before opening one.
 */
export function useKeptPlace(list: RefObject<HTMLElement | null>, busy: boolean): () => void {
  const place = useRef(-1);
  useEffect(() => {
    if (busy) return;
    const index = place.current;
    place.current = -1;
    const lost = document.activeElement === null || document.activeElement === document.body;
    if (index < 0 || !lost) return;
    const rows = rowsOf(list.current);
    if (rows.length > 0) focusRow(rows, index);
    else document.querySelector('h1')?.focus();
  }, [busy, list]);
  return useCallback(() => {
    place.current = currentIndex(rowsOf(list.current));
  }, [list]);
}

/** Goes to the task that the address names, once it is shown: its row takes the focus. */
export function useGoToTask(list: RefObject<HTMLElement | null>, shown: unknown): void {
  const [task] = useQueryParam('task');
  const gone = useRef('');
  useEffect(() => {
    const row = task === '' ? undefined : rowsOf(list.current).find((one) => one.dataset.task === task);
    if (gone.current === task || !row || shown === undefined) return;
    gone.current = task;
    row.scrollIntoView({ block: 'center' });
    row.querySelector<HTMLElement>(DO_BUTTON)?.focus({ preventScroll: true });
  }, [task, shown, list]);
}
