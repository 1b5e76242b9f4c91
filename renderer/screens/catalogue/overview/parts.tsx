import { lazy, type ReactNode, Suspense } from 'react';
import { useQueryParam } from '../../../location.ts';
import { Tabs } from '../../../ui/index.ts';

const Overview = lazy(() => import('./overview.tsx'));

type Part = 'list' | 'glance';

/** The catalogue as a list or at a glance, as pictures; the list comes first. */
export function CatalogueParts({ list }: { list: ReactNode }) {
  const [part, setPart] = useQueryParam('part', 'list');
  const shown: Part = part === 'glance' ? 'glance' : 'list';
  return (
    <Tabs<Part>
      label="Ways to look at the catalogue"
      value={shown}
      onChange={setPart}
      tabs={[
        { id: 'list', label: 'List' },
        { id: 'glance', label: 'At a glance' },
      ]}
    >
      {shown === 'list' ? (
        list
      ) : (
        <Suspense fallback={<p className="waiting">Drawing…</p>}>
          <Overview />
        </Suspense>
      )}
    </Tabs>
  );
}
