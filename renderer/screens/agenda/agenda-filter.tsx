import { useQueryOf } from '../../api.ts';
import { Button, Checkbox, Select, Toolbar } from '../../ui/index.ts';
import type { AgendaTerms } from './use-agenda.ts';

const ALL = 'all';

/** Picks one work, or only what can be done now; an edition comes from a link and is shown until taken away. */
export function AgendaFilter({ terms, editionLabel }: { terms: AgendaTerms; editionLabel: string }) {
  const works = useQueryOf('works.list', { count: 500 });
  const choices = (works.data?.works ?? []).map((one) => ({ value: String(one.id), label: one.title }));
  const work = terms.workId === undefined ? ALL : String(terms.workId);
  const known = choices.some((choice) => choice.value === work) || work === ALL;
  return (
    <Toolbar label="Filter of the agenda">
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
      {terms.editionId === undefined ? null : (
        <p className="agenda-edition">
          Only {editionLabel} <Button onClick={() => terms.showWork(undefined)}>Show all tasks</Button>
        </p>
      )}
      {terms.view === 'todo' ? (
        <Checkbox label="Only what can be done now" checked={terms.readyOnly} onChange={terms.showReady} />
      ) : null}
    </Toolbar>
  );
}
