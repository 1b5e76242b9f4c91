import { lazy, type ReactNode, Suspense } from 'react';
import { useQueryParam } from '../../../location.ts';
import { Tabs } from '../../../ui/index.ts';

const Overview = lazy(() => import('./overview.tsx'));

const FormatsTable = lazy(() => import('../formats/formats-table.tsx'));

type Part = 'list' | 'formats' | 'glance';

/** The catalogue as a list of works, as a table of formats, or at a glance, as pictures; the list comes first. */
export function CatalogueParts({ list }: { list: ReactNode }) {
  const [part, setPart] = useQueryParam('part', 'list');
  const shown: Part = part === 'glance' || part === 'formats' ? part : 'list';
  return (
    <Tabs<Part>
      label="Ways to look at the catalogue"
      value={shown}
      onChange={setPart}
      tabs={[
        { id: 'list', label: 'List' },
        { id: 'formats', label: 'Formats' },
        { id: 'glance', label: 'At a glance' },
      ]}
    >
      {shown === 'list' ? (
        list
      ) : (
        <Suspense fallback={<p className="waiting">Opening…</p>}>
          {shown === 'formats' ? <FormatsTable /> : <Overview />}
        </Suspense>
      )}
    </Tabs>
  );
}
