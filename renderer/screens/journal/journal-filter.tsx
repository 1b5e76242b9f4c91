import { Select, Toolbar } from '../../ui/index.ts';
import { useWorkChoices } from '../catalogue/work-choices.ts';
import { RECORD_CHOICES } from './records.ts';
import type { JournalTerms } from './use-journal.ts';

const ALL = 'all';

/** Picks one work and one kind of record. */
export function JournalFilter({ terms }: { terms: JournalTerms }) {
  const works = useWorkChoices(terms.workId);
  return (
    <Toolbar label="Filter of the journal">
      <Select
        label="Work"
        width="medium"
        value={terms.workId === undefined ? ALL : String(terms.workId)}
        onChange={(value) => terms.showWork(value === ALL ? undefined : Number(value))}
        choices={[{ value: ALL, label: 'All works' }, ...works]}
      />
      <Select
        label="Kind of record"
        width="medium"
        value={terms.entity === '' ? ALL : terms.entity}
        onChange={(value) => terms.showEntity(value === ALL ? '' : value)}
        choices={[{ value: ALL, label: 'All kinds' }, ...RECORD_CHOICES]}
      />
    </Toolbar>
  );
}
