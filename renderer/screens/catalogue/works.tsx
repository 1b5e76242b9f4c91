import type { ReactNode } from 'react';
import type { OutputOf } from '../../../src/contract/index.ts';
import { useQueryOf } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { useAsOf } from '../../location.ts';
import { Button, EmptyState, Refused, SearchInput } from '../../ui/index.ts';
import { Pager } from './pager.tsx';
import { StandingFilter } from './standing-filter.tsx';
import { type ListTerms, PAGE_SIZE, useListTerms } from './use-list-terms.ts';
import { WorksList } from './works-list.tsx';

function NoneFound({ terms }: { terms: ListTerms }) {
  const { search, standing } = terms;
  const sought = search === '' ? '' : ` matches “${search}”`;
  const filtered = standing === '' ? '' : ` with a format that is ${standing}`;
  return (
    <EmptyState
      title={`No work${filtered}${sought}`}
      action={<Button onClick={terms.clear}>Show all works</Button>}
    >
      {search === ''
        ? null
        : 'Titles, subtitles, series, people and numbers are searched; a number may be written with or without hyphens, in full or in part.'}
    </EmptyState>
  );
}

function NoWorks({ newWork }: { newWork: ReactNode }) {
  const { asOf } = useAsOf();
  if (asOf !== undefined)
    return (
      <EmptyState title={`No work had a format on ${formatDay(asOf)}`}>
        Choose a later day, or today.
      </EmptyState>
    );
  return (
    <EmptyState title="No work yet" action={newWork}>
      A work is a text across all its editions; make one for each book you publish or plan.
    </EmptyState>
  );
}

/** Search, filter and list of the works. */
export function Works({ status, newWork }: { status: OutputOf<'catalogue.status'>; newWork: ReactNode }) {
  const { asOf } = useAsOf();
  const terms = useListTerms();
  const { search, standing, from } = terms;
  const list = useQueryOf(
    'works.list',
    { search, from, count: PAGE_SIZE, asOf, ...(standing === '' ? {} : { standing }) },
    { keep: true },
  );
  if (status.works === 0) return <NoWorks newWork={newWork} />;
  const found = list.data;
  return (
    <>
      <div className="catalogue-tools">
        <SearchInput
          label="Search works"
          placeholder="Title, person or number"
          value={terms.typed}
          onChange={terms.type}
        />
        <StandingFilter counts={status.formats} value={standing} onChange={terms.filter} />
      </div>
      <Refused refusal={list.error} />
      {found?.total === 0 ? <NoneFound terms={terms} /> : null}
      {found && found.total > 0 ? (
        <WorksList works={found.works} only={standing} stale={list.isPlaceholderData} />
      ) : null}
      {found ? <Pager from={from} count={PAGE_SIZE} total={found.total} onMove={terms.moveTo} /> : null}
    </>
  );
}
