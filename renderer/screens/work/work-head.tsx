import { PageHeader } from '../../ui/index.ts';
import { peopleOf } from './parts/edition-names.ts';
import { useWork } from './parts/work-context.tsx';
import { WorkActions } from './work-actions.tsx';

/** The head of the screen: title, people, note, and what can be done with the work as a whole. */
export function WorkHead() {
  const { work, editable } = useWork();
  const newest = work.editions[0];
  const people = newest ? peopleOf(newest.contributors) : '';
  return (
    <PageHeader
      title={work.title}
      italic
      crumbs={[{ label: 'Catalogue', to: '/catalogue' }, { label: work.title }]}
      actions={editable ? <WorkActions /> : undefined}
      lede={
        <>
          {people === '' ? null : <p>{people}</p>}
          {work.note === '' ? null : <p className="work-note">{work.note}</p>}
        </>
      }
    />
  );
}
