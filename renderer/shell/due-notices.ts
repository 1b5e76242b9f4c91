import { useEffect, useSyncExternalStore } from 'react';
import { call } from '../api.ts';
import { recall, remember } from '../lib/memory.ts';

const WANTED = 'due-notices';
const TOLD = 'due-notices-told';
/** A window left open over midnight tells of the new day within this time. */
const LOOK_MS = 10 * 60_000;

const watchers = new Set<() => void>();

function watch(fn: () => void): () => void {
  watchers.add(fn);
  return () => watchers.delete(fn);
}

function changed(): void {
  for (const watcher of watchers) watcher();
}

/** `off` until somebody asks for notices; `denied` where the system or browser does not let them be shown. */
export type Notices = 'off' | 'on' | 'denied';

function read(): Notices {
  if (recall(WANTED) !== 'on') return 'off';
  return globalThis.Notification?.permission === 'granted' ? 'on' : 'denied';
}

/** Whether this computer tells of due tasks, and the switch: it asks the system once. */
export function useNotices(): [Notices, (wanted: boolean) => Promise<void>] {
  const state = useSyncExternalStore(watch, read);
  const set = async (wanted: boolean) => {
    remember(WANTED, wanted ? 'on' : 'off');
    // Whoever switches notices on hears of today at once, even where today was told before.
    if (wanted) remember(TOLD, '');
    if (wanted && globalThis.Notification?.permission === 'default') await Notification.requestPermission();
    changed();
  };
  return [state, set];
}

/** What a notice says of the tasks that are due; undefined when there are none. */
export function noticeOf(
  tasks: readonly { title: string; overdue: boolean }[],
  total: number,
): { title: string; body: string } | undefined {
  const [first] = tasks;
  if (first === undefined) return undefined;
  const late = tasks.some((task) => task.overdue);
  const rest = total === 1 ? '' : total === 2 ? ' And one more.' : ` And ${total - 1} more.`;
  return {
    title: total === 1 ? 'One task is due' : `${total} tasks are due`,
    body: `${first.title}${late ? ' (overdue)' : ''}.${rest}`,
  };
}

async function tellOnce(): Promise<void> {
  if (read() !== 'on') return;
  const { today, file } = await call('catalogue.info', {});
  const key = `${today} ${file}`;
  if (recall(TOLD) === key) return;
  const { tasks, total } = await call('tasks.list', { standings: ['open'], to: today, count: 1 });
  const notice = noticeOf(tasks, total);
  if (notice === undefined) return;
  remember(TOLD, key);
  const shown = new Notification(notice.title, { body: notice.body, tag: 'edition-ledger-due' });
  shown.onclick = () => {
    window.focus();
    window.location.hash = '#/agenda';
  };
}

/** Tells once a day of the tasks that are due, where somebody asked for it. */
export function useDueNotices(): void {
  const state = useSyncExternalStore(watch, read);
  useEffect(() => {
    if (state !== 'on') return;
    // A host that is gone is told across the window already.
    const look = () => void tellOnce().catch(() => {});
    look();
    const timer = window.setInterval(look, LOOK_MS);
    return () => window.clearInterval(timer);
  }, [state]);
}
