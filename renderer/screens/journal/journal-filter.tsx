import { useQueryOf } from '../../api.ts';
import { Select, Toolbar } from '../../ui/index.ts';
import { RECORD_CHOICES } from './records.ts';
import type { JournalTerms } from './use-journal.ts';

const ALL = 'all';

/** Picks one work and one kind of record. */
export function JournalFilter({ terms }: { terms: JournalTerms }) {
  const works = useQueryOf('works.list', { count: 500 });
  const choices = (works.data?.works ?? []).map((one) => ({ value: String(one.id), label: one.title }));
  const work = terms.workId === undefined ? ALL : String(terms.workId);
  const known = work === ALL || choices.some((choice) => choice.value === work);
  return (
    <Toolbar label="Filter of the journal">
      <Select
        label="Work"
        width="medium"
        value={work}
        onChange={(value) => terms.showWork(value === ALL ? undefined : Number(value))}
        choices={[
          { value: ALL, label: 'All works' },
          ...(known ? [] : [{ value: work, label: `Work ${work}` }]),
          ...choices,
        ]}
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
