import { useSyncExternalStore } from 'react';
import { useQueryOf } from '../../../api.ts';
import { recall, remember } from '../../../lib/memory.ts';

/** The steps of the guided start, in their order. */
export const START_STEPS = ['names', 'block', 'work', 'format'] as const;
export type StartStep = (typeof START_STEPS)[number];

/** From here on a press has found its way, or brought its list along. */
const SETTLED_WORKS = 2;
const AWAY = 'away';

const watchers = new Set<() => void>();
const watch = (fn: () => void) => {
  watchers.add(fn);
  return () => watchers.delete(fn);
};

/** What was skipped or put away, kept for one catalogue file in this window. */
function useMarks(file: string) {
  const name = `start:${file}`;
  const text = useSyncExternalStore(watch, () => recall(name) ?? '');
  const marks = new Set(text.split(' '));
  /** Turns one mark over; without one, takes all of them away. */
  const set = (mark?: string) => {
    if (mark === undefined) marks.clear();
    else if (!marks.delete(mark)) marks.add(mark);
    remember(name, [...marks].join(' ').trim());
    for (const watcher of watchers) watcher();
  };
  return { marks, set };
}

/** The first work and its edition, where there is one; its formats tell whether one has a number. */
function useFirstWork(works: number | undefined) {
  const list = useQueryOf('works.list', {}, { enabled: works === 1 });
  const id = works === 1 ? list.data?.works[0]?.id : undefined;
  const work = useQueryOf('works.get', { id: id ?? 0 }, { enabled: id !== undefined });
  return id === undefined ? undefined : work.data;
}

/**
 * Where the guided start stands, read from the catalogue itself. `shown` is false once every step is done or
 * skipped, once it was put away, and in a catalogue of several works; undefined while that is being read.
 */
export function useStart(file: string) {
  const settings = useQueryOf('settings.get', {}).data;
  const blocks = useQueryOf('blocks.list', {}).data?.blocks;
  const works = useQueryOf('catalogue.status', { withList: false }).data?.works;
  const work = useFirstWork(works);
  const { marks, set } = useMarks(file);
  const formats = work?.editions.flatMap((edition) => edition.formats) ?? [];
  const done: Record<StartStep, boolean> = {
    names: settings !== undefined && settings.publisher !== '' && settings.imprint !== '',
    block: (blocks?.length ?? 0) > 0,
    work: (works ?? 0) > 0,
    format: formats.some((format) => format.isbn13 !== null),
  };
  const known = settings && blocks && works !== undefined && (works !== 1 || work !== undefined);
  const open = START_STEPS.filter((step) => !done[step] && !marks.has(step));
  return {
    shown: known ? works < SETTLED_WORKS && open.length > 0 && !marks.has(AWAY) : undefined,
    done,
    next: open[0],
    work,
    settings,
    isSkipped: (step: StartStep) => marks.has(step) && !done[step],
    skip: (step: StartStep) => set(step),
    putAway: () => set(AWAY),
    /** Shows it again from the beginning, with nothing skipped. */
    resume: () => set(),
  };
}
export type Start = ReturnType<typeof useStart>;
