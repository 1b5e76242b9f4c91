import { useLocation, useParams } from 'wouter';
import { LISTING_SORTS } from '../../../../src/contract/listing-list.ts';
import { LISTING_STANDINGS, type ListingStanding } from '../../../../src/contract/terms.ts';
import { call, useQueryOf } from '../../../api.ts';
import { useAsOf, useQueryParam } from '../../../location.ts';
import { PagedGrid } from '../../../ui/grid/paged-grid.tsx';
import { useSortParam } from '../../../ui/grid/use-sort-param.ts';
import { EmptyState, PageHeader, Refused, Select, Toolbar } from '../../../ui/index.ts';
import { COLUMNS, routeOfRow } from './columns.tsx';

type Shown = ListingStanding | 'all';

/** What is listed on one channel, as a table. */
function ListingsTable({ channelId }: { channelId: number }) {
  const { asOf } = useAsOf();
  const [, navigate] = useLocation();
  const [wanted, choose] = useQueryParam('standing', 'all');
  const { by, sort, setSort } = useSortParam(LISTING_SORTS);
  const standing = LISTING_STANDINGS.find((one) => one === wanted);
  const terms = {
    channelId,
    standings: standing === undefined ? [] : [standing],
    sort: { by, down: sort.down },
    asOf,
  };
  return (
    <>
      <Toolbar label="Listings shown">
        <Select<Shown>
          label="Stands"
          width="medium"
          value={standing ?? 'all'}
          onChange={choose}
          choices={[
            { value: 'all', label: 'Every standing' },
            ...LISTING_STANDINGS.map((one) => ({ value: one, label: one })),
          ]}
        />
      </Toolbar>
      <PagedGrid
        label="Listings"
        noun={['listing', 'listings']}
        list={{
          question: ['listings.find', terms],
          read: (from, count) => call('listings.find', { ...terms, from, count }),
        }}
        columns={COLUMNS}
        memory="listing columns"
        sort={sort}
        onSort={setSort}
        nameOf={(row) => `${row.edition}, ${row.name}`}
        onOpen={(row) => navigate(routeOfRow(row))}
        empty={
          <EmptyState
            title={standing === undefined ? 'Nothing is listed here' : `No listing is ${standing} here`}
          >
            A format is listed on a channel from its work’s own page.
          </EmptyState>
        }
      />
    </>
  );
}

/** The page of a channel’s listings. */
export function ListingsPage() {
  const id = Number(useParams<{ id: string }>().id);
  const channels = useQueryOf('channels.list', {});
  const name = channels.data?.channels.find((one) => one.id === id)?.name;
  return (
    <>
      <PageHeader
        title="Listings"
        crumbs={[
          { label: 'Channels', to: '/channels' },
          { label: name === undefined ? 'Listings' : `Listings of ${name}` },
        ]}
        lede={name === undefined ? undefined : `Every format that is or was listed on ${name}.`}
      />
      <Refused refusal={channels.error} />
      {Number.isSafeInteger(id) && id > 0 ? <ListingsTable key={id} channelId={id} /> : null}
    </>
  );
}
