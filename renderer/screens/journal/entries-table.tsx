import { useState } from 'react';
import { useLocation } from 'wouter';
import { JOURNAL_SORTS } from '../../../src/contract/journal.ts';
import { call } from '../../api.ts';
import { PagedGrid } from '../../ui/grid/paged-grid.tsx';
import type { GridColumn } from '../../ui/grid/types.ts';
import { useSortParam } from '../../ui/grid/use-sort-param.ts';
import { Button, Dialog, EmptyState } from '../../ui/index.ts';
import { aboutOf, type Change, changesOf, type Entry } from './changes.ts';
import { EntryBlock } from './entry-block.tsx';
import { recordName } from './records.ts';
import { sentenceOf } from './sentences.ts';
import type { JournalTerms } from './use-journal.ts';

/** Reading form of an instant in the user's own zone. */
const MOMENT = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'medium' });
const momentOf = (at: string): string => MOMENT.format(new Date(at));

const side = (entry: Entry, which: 'before' | 'after'): string =>
  changesOf(entry)
    .filter((change) => change[which] !== '')
    .map((change: Change) => `${change.field}: ${change[which]}`)
    .join('; ');

const text = (
  key: string,
  header: string,
  width: number,
  read: (entry: Entry) => string,
): GridColumn<Entry> => ({
  key,
  header,
  width,
  text: read,
  cell: read,
  sortable: JOURNAL_SORTS.some((one) => one === key),
});

const ALL: readonly GridColumn<Entry>[] = [
  { ...text('seq', 'Entry', 90, (entry) => String(entry.seq)), align: 'end' },
  { ...text('time', 'When', 190, (entry) => momentOf(entry.at)), text: (entry) => entry.at },
  text('operation', 'What was done', 240, (entry) => sentenceOf(entry.operation)),
  text('record', 'Kind of record', 150, (entry) => recordName(entry.entity)),
  text('action', 'It was', 100, (entry) => entry.action),
  text('about', 'About', 260, aboutOf),
  text('before', 'Before', 260, (entry) => side(entry, 'before')),
  text('after', 'After', 260, (entry) => side(entry, 'after')),
  {
    ...text('seal', 'Seal', 200, (entry) => entry.hash),
    cell: (entry) => <span className="mono">{entry.hash}</span>,
  },
];
const COLUMNS = { all: ALL, first: ['time', 'operation', 'record', 'action', 'about', 'before', 'after'] };

/** One entry in full, with the way to its work. */
function EntryDialog({ entry, onClose }: { entry: Entry; onClose: () => void }) {
  const [, navigate] = useLocation();
  return (
    <Dialog
      open
      onClose={onClose}
      title={`Entry ${entry.seq.toLocaleString()}: ${sentenceOf(entry.operation)}`}
      width="wide"
      footer={
        <>
          <Button kind="primary" onClick={onClose}>
            Close
          </Button>
          {entry.workId === null ? null : (
            <Button onClick={() => navigate(`/work/${entry.workId}`)}>Open the work</Button>
          )}
        </>
      }
    >
      <p className="soft">{momentOf(entry.at)}</p>
      <ul className="entries">
        <EntryBlock entry={entry} />
      </ul>
    </Dialog>
  );
}

/** Every record that was ever changed, as a table in any order. */
export function EntriesTable({ terms }: { terms: JournalTerms }) {
  const { by, sort, setSort } = useSortParam(JOURNAL_SORTS, true);
  const [opened, setOpened] = useState<Entry>();
  const { workId, entity } = terms;
  const filter = {
    workId,
    entity: entity === '' ? undefined : entity,
    sort: { by, down: sort.down },
  };
  const filtered = workId !== undefined || entity !== '';
  return (
    <>
      <PagedGrid
        label="Entries of the journal"
        noun={['entry', 'entries']}
        list={{
          question: ['journal.rows', filter],
          read: (from, count) => call('journal.rows', { ...filter, from, count }),
        }}
        columns={COLUMNS}
        memory="journal columns"
        sort={sort}
        onSort={setSort}
        nameOf={(entry) => `entry ${entry.seq}`}
        onOpen={setOpened}
        empty={
          <EmptyState title={filtered ? 'No change of this kind' : 'Nothing has been changed yet'}>
            {filtered
              ? 'Choose another work or kind of record.'
              : 'Whatever is recorded from now on is kept here.'}
          </EmptyState>
        }
      />
      {opened ? <EntryDialog entry={opened} onClose={() => setOpened(undefined)} /> : null}
    </>
  );
}
