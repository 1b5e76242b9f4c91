import { useQueryOf } from '../../api.ts';
import { useQueryParam } from '../../location.ts';
import { spanOf } from './days.ts';
import type { Task } from './words.ts';

const VIEWS = ['todo', 'waiting', 'ended'] as const;
type View = (typeof VIEWS)[number];

/** What the agenda shows: kept in the address, so that links lead to it and going back restores it. */
export interface AgendaTerms {
  view: View;
  show: (view: View) => void;
  workId: number | undefined;
  editionId: number | undefined;
  /** Shows one work, or all; an edition's filter ends. */
  showWork: (id: number | undefined) => void;
  readyOnly: boolean;
  showReady: (on: boolean) => void;
}

function asId(text: string): number | undefined {
  const id = Number(text);
  return Number.isSafeInteger(id) && id > 0 ? id : undefined;
}

export function useAgendaTerms(): AgendaTerms {
  const [view, setView] = useQueryParam('view', 'todo');
  const [work, setWork] = useQueryParam('work');
  const [edition, setEdition] = useQueryParam('edition');
  const [ready, setReady] = useQueryParam('ready');
  return {
    view: VIEWS.find((one) => one === view) ?? 'todo',
    show: setView,
    workId: asId(work),
    editionId: asId(edition),
    showWork: (id) => {
      setWork(id === undefined ? '' : String(id));
      setEdition('');
    },
    readyOnly: ready === '1',
    showReady: (on) => setReady(on ? '1' : ''),
  };
}

const MOST = 500;
const MOST_ENDED = 2000;

/** The tasks of the agenda: to do (with waiting ones whose day has come), waiting, and ended. */
export function useAgenda(terms: AgendaTerms, today: string) {
  const { workId, editionId } = terms;
  const about = {
    ...(workId === undefined ? {} : { workId }),
    ...(editionId === undefined ? {} : { editionId }),
  };
  const open = useQueryOf('tasks.list', { ...about, count: MOST }, { keep: true });
  const ended = useQueryOf(
    'tasks.list',
    { ...about, standings: ['done', 'dropped'], count: MOST_ENDED },
    { enabled: terms.view === 'ended', keep: true },
  );
  const unfinished = open.data?.tasks ?? [];
  const due = (task: Task) => ['overdue', 'today'].includes(spanOf(task.dueOn, today));
  const todo = unfinished.filter((task) => task.standing === 'open' || due(task));
  return {
    open,
    ended,
    unfinished,
    todo,
    ready: todo.filter((task) => task.needs.length === 0),
    waiting: unfinished.filter((task) => task.standing === 'waiting'),
    overdue: unfinished.filter((task) => task.overdue).length,
    waitedFor: [...new Set(unfinished.map((task) => task.waitingFor))].filter((name) => name !== ''),
    editionLabel:
      unfinished.find((task) => task.editionId === editionId)?.about.split(' · ')[0] ?? 'one edition',
    hidden: (open.data?.total ?? 0) - unfinished.length,
  };
}
