import { Button, Checkbox, Select, Toolbar } from '../../ui/index.ts';
import { useWorkChoices } from '../catalogue/work-choices.ts';
import type { AgendaTerms } from './use-agenda.ts';

const ALL = 'all';

/** Picks one work, or only what can be done now; an edition comes from a link and is shown until taken away. */
export function AgendaFilter({ terms, editionLabel }: { terms: AgendaTerms; editionLabel: string }) {
  const works = useWorkChoices(terms.workId);
  return (
    <Toolbar label="Filter of the agenda">
      <Select
        label="Work"
        width="medium"
        value={terms.workId === undefined ? ALL : String(terms.workId)}
        onChange={(value) => terms.showWork(value === ALL ? undefined : Number(value))}
        choices={[{ value: ALL, label: 'All works' }, ...works]}
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
