import type { ReactNode } from 'react';
import { EmptyState, Notice, PageHeader } from '../../ui/index.ts';
import { EditionSection } from './edition/edition-section.tsx';
import { Glance } from './glance.tsx';
import { WorkLife } from './life.tsx';
import { peopleOf } from './parts/edition-names.ts';
import { useGoTo } from './parts/go-to.ts';
import { useWork, useWorkFacts, WorkProvider } from './parts/work-context.tsx';
import { WorkActions } from './work-actions.tsx';

/** One work, read again whenever the catalogue changes. The head stays while it is read, and with it the focus. */
export function WorkView({ id }: { id: number }) {
  const { facts, refusal } = useWorkFacts(id);
  const title = facts?.work.title ?? 'Work';
  const within = (part: ReactNode) => (facts ? <WorkProvider facts={facts}>{part}</WorkProvider> : undefined);
  return (
    <>
      <PageHeader
        title={title}
        italic={facts !== undefined}
        crumbs={[{ label: 'Catalogue', to: '/catalogue' }, { label: title }]}
        lede={within(<WorkLede />)}
        actions={facts?.editable ? within(<WorkActions />) : undefined}
      />
      {refusal ? (
        <Notice tone="stop" title="This work cannot be shown." live>
          {refusal.message}
        </Notice>
      ) : null}
      {within(<WorkBody />)}
      {facts || refusal ? null : <p className="waiting">Reading the catalogue…</p>}
    </>
  );
}

/** People and note under the title. */
function WorkLede() {
  const { work } = useWork();
  const people = peopleOf(work.editions[0]?.contributors ?? []);
  return (
    <>
      {people === '' ? null : <p>{people}</p>}
      {work.note === '' ? null : <p className="work-note">{work.note}</p>}
    </>
  );
}

function WorkBody() {
  const { work } = useWork();
  useGoTo();
  if (work.editions.length === 0)
    return (
      <EmptyState title="No edition on this day">
        This work has no edition that was recorded by then; choose a later day.
      </EmptyState>
    );
  return (
    <>
      <Glance />
      <WorkLife workId={work.id} />
      {work.editions.map((edition) => (
        <EditionSection key={edition.id} edition={edition} />
      ))}
    </>
  );
}
