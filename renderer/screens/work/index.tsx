import { Link, useParams } from 'wouter';
import { EmptyState, PageHeader } from '../../ui/index.ts';
import { WorkView } from './work-view.tsx';
import './forms.css';
import './work.css';

/** The Work screen: `/work/12`, with `?edition=3` or `?format=7` to go to a part of it. */
export default function WorkScreen() {
  const { '*': rest = '' } = useParams<{ '*'?: string }>();
  const id = Number(rest.split('/')[0]);
  if (Number.isInteger(id) && id > 0) return <WorkView key={id} id={id} />;
  return (
    <>
      <PageHeader title="Work" />
      <EmptyState title="No work is open" action={<Link href="/catalogue">Go to the catalogue</Link>}>
        Choose a work in the catalogue; it then stays open here until you choose another.
      </EmptyState>
    </>
  );
}
