import { useQueryOf } from '../../api.ts';
import { useAsOf } from '../../location.ts';
import { EmptyState, PageHeader, Refused } from '../../ui/index.ts';
import { EditionSection } from './edition/edition-section.tsx';
import { Glance } from './glance.tsx';
import { useGoTo } from './parts/go-to.ts';
import { useWork, WorkProvider } from './parts/work-context.tsx';
import { WorkHead } from './work-head.tsx';

const CRUMBS = [{ label: 'Catalogue', to: '/catalogue' }];

/** One work, read again whenever the catalogue changes. */
export function WorkView({ id }: { id: number }) {
  const { asOf } = useAsOf();
  const work = useQueryOf('works.get', { id, ...(asOf === undefined ? {} : { asOf }) });
  if (work.error)
    return (
      <>
        <PageHeader title="Work" crumbs={CRUMBS} />
        <Refused refusal={work.error} />
      </>
    );
  if (!work.data)
    return (
      <>
        <PageHeader title="Work" crumbs={CRUMBS} />
        <p className="waiting">Reading the catalogue…</p>
      </>
    );
  return (
    <WorkProvider work={work.data}>
      <WorkBody />
    </WorkProvider>
  );
}

function WorkBody() {
  const { work } = useWork();
  useGoTo();
  return (
    <>
      <WorkHead />
      {work.editions.length === 0 ? (
        <EmptyState title="No edition on this day">
          This work has no edition that was recorded by then; choose a later day.
        </EmptyState>
      ) : (
        <>
          <Glance />
          {work.editions.map((edition) => (
            <EditionSection key={edition.id} edition={edition} />
          ))}
        </>
      )}
    </>
  );
}
