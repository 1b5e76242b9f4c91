import { keepPreviousData, useInfiniteQuery } from '@tanstack/react-query';
import type { OutputOf } from '../../../src/contract/index.ts';
import { type CallRefused, call } from '../../api.ts';
import { useQueryParam } from '../../location.ts';
import { byCommand } from './changes.ts';

const PAGE = 100;

type Page = OutputOf<'journal.list'>;

/** As the commands that were carried out, or every record in a table. */
export type JournalView = 'changes' | 'table';

/** What the journal is filtered by, kept in the address. */
export interface JournalTerms {
  workId: number | undefined;
  showWork: (id: number | undefined) => void;
  /** Kind of record, by the table that holds it. */
  entity: string;
  showEntity: (entity: string) => void;
  view: JournalView;
  showAs: (view: JournalView) => void;
}

export function useJournalTerms(): JournalTerms {
  const [work, setWork] = useQueryParam('work');
  const [entity, setEntity] = useQueryParam('record');
  const [view, setView] = useQueryParam('view', 'changes');
  const id = Number(work);
  return {
    workId: Number.isSafeInteger(id) && id > 0 ? id : undefined,
    showWork: (next) => setWork(next === undefined ? '' : String(next)),
    entity,
    showEntity: setEntity,
    view: view === 'table' ? 'table' : 'changes',
    showAs: setView,
  };
}

/** The commands of the journal, newest first, page after page as they are asked for. */
export function useJournal({ workId, entity }: JournalTerms) {
  const filter = {
    ...(workId === undefined ? {} : { workId }),
    ...(entity === '' ? {} : { entity }),
    count: PAGE,
  };
  const list = useInfiniteQuery<Page, CallRefused, Page[], unknown[], number | undefined>({
    queryKey: ['journal.list', filter],
    queryFn: ({ pageParam }) => call('journal.list', { ...filter, before: pageParam }),
    initialPageParam: undefined,
    getNextPageParam: (page) => (page.more ? page.entries.at(-1)?.seq : undefined),
    select: (data) => data.pages,
    placeholderData: keepPreviousData,
  });
  return { ...list, groups: byCommand((list.data ?? []).flatMap((page) => page.entries)) };
}
