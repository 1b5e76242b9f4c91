import { Link, useParams } from 'wouter';
import { EmptyState, PageHeader } from '../../ui/index.ts';
import { CheckPage } from './check/check-page.tsx';
import { CostsPage } from './costs/costs-page.tsx';
import { DeskPage } from './desk/desk-page.tsx';
import { MoneyPage } from './money/money-page.tsx';
import { SheetPage } from './sheet/sheet-page.tsx';
import { WorkView } from './work-view.tsx';
import './forms.css';
import './work.css';

const isId = (id: number) => Number.isInteger(id) && id > 0;

/**
 * The Work screen: `/work/12`, with `?edition=3` or `?format=7` to go to a part of it. Below it the submission
 * sheet of a listing (`/work/12/sheet/5`), of an edition its costs (`/work/12/costs/3`), its money
 * (`/work/12/money/3`) and its retirement desk (`/work/12/desk/3`), and of a format the check of its final files
 * (`/work/12/check/7`).
 */
export default function WorkScreen() {
  const { '*': rest = '' } = useParams<{ '*'?: string }>();
  const [first, part, last] = rest.split('/');
  const id = Number(first);
  const of = Number(last);
  if (isId(id) && isId(of)) {
    if (part === 'sheet') return <SheetPage key={rest} workId={id} listingId={of} />;
    if (part === 'costs') return <CostsPage key={rest} workId={id} editionId={of} />;
    if (part === 'money') return <MoneyPage key={rest} workId={id} editionId={of} />;
    if (part === 'check') return <CheckPage key={rest} workId={id} formatId={of} />;
    if (part === 'desk') return <DeskPage key={rest} workId={id} editionId={of} />;
  }
  if (isId(id)) return <WorkView key={id} id={id} />;
  return (
    <>
      <PageHeader title="Work" />
      <EmptyState title="No work is open" action={<Link href="/catalogue">Go to the catalogue</Link>}>
        Choose a work in the catalogue; it then stays open here until you choose another.
      </EmptyState>
    </>
  );
}
