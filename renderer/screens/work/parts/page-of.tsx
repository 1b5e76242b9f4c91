import type { ReactNode } from 'react';
import { Notice, PageHeader } from '../../../ui/index.ts';
import { useWork, useWorkFacts, WorkProvider } from './work-context.tsx';

export interface PartPageProps {
  workId: number;
  title: string;
  children: ReactNode;
}

/** A page of its own below a work: reads the work and shows the way back to it. */
export function PartPage({ workId, title, children }: PartPageProps) {
  const { facts, refusal } = useWorkFacts(workId);
  if (facts) return <WorkProvider facts={facts}>{children}</WorkProvider>;
  return (
    <>
      <PageHeader title={title} crumbs={[{ label: 'Catalogue', to: '/catalogue' }, { label: title }]} />
      {refusal ? (
        <Notice tone="stop" title="This cannot be shown." live>
          {refusal.message}
        </Notice>
      ) : (
        <p className="waiting">Reading the catalogue…</p>
      )}
    </>
  );
}

/** The way up from a page below a work. */
export function useCrumbs(title: string) {
  const { work } = useWork();
  return [
    { label: 'Catalogue', to: '/catalogue' },
    { label: work.title, to: `/work/${work.id}` },
    { label: title },
  ];
}
