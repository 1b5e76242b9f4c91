import { Link } from 'wouter';
import type { FormatRow, FormatSort } from '../../../../src/contract/format-list.ts';
import { formatDay } from '../../../lib/dates.ts';
import { formatMoney } from '../../../lib/money.ts';
import type { GridColumn } from '../../../ui/grid/types.ts';
import { Isbn, Standing } from '../../../ui/index.ts';
import { placeOf } from '../../work/parts/go-to.ts';
import { languageName } from '../../work/parts/names.ts';

const day = (value: string | null) => (value === null ? '' : formatDay(value));
const listed = (row: FormatRow) =>
  row.listings.map((listing) => `${listing.channelName}: ${listing.standing}`).join(', ');
const priced = (row: FormatRow) =>
  row.prices.map((price) => formatMoney(price.amountMinor, price.currency)).join(', ');

/** The address of a row's format. */
export const routeOfRow = (row: FormatRow): string => placeOf(row.workId, 'format', row.id);

/** Every column there is; the key of a sortable one is what the store sorts by. */
export const COLUMNS: readonly (GridColumn<FormatRow> & { key: FormatSort | 'people' | 'channels' })[] = [
  {
    key: 'title',
    header: 'Edition',
    width: 250,
    sortable: true,
    text: (row) => row.edition,
    cell: (row) => (
      <Link href={routeOfRow(row)} className="italic" tabIndex={-1}>
        {row.edition}
      </Link>
    ),
  },
  {
    key: 'form',
    header: 'Format',
    width: 150,
    sortable: true,
    text: (row) => row.name,
    cell: (row) => row.name,
  },
  {
    key: 'number',
    header: 'Number',
    width: 170,
    sortable: true,
    text: (row) => row.hyphenated ?? '',
    cell: (row) => (row.hyphenated === null ? '' : <Isbn value={row.hyphenated} />),
  },
  {
    key: 'standing',
    header: 'Standing',
    width: 120,
    sortable: true,
    text: (row) => row.standing,
    cell: (row) => <Standing of="format" value={row.standing} />,
  },
  { key: 'channels', header: 'Channels', width: 230, text: listed, cell: listed },
  {
    key: 'on sale',
    header: 'On sale',
    width: 120,
    sortable: true,
    text: (row) => row.onSaleDate ?? '',
    cell: (row) => day(row.onSaleDate),
  },
  { key: 'price', header: 'Price', width: 140, sortable: true, align: 'end', text: priced, cell: priced },
  { key: 'people', header: 'People', width: 220, text: (row) => row.people, cell: (row) => row.people },
  {
    key: 'publication',
    header: 'Published',
    width: 120,
    sortable: true,
    text: (row) => row.publicationDate ?? '',
    cell: (row) => day(row.publicationDate),
  },
  {
    key: 'language',
    header: 'Language',
    width: 110,
    sortable: true,
    text: (row) => row.language,
    cell: (row) => languageName(row.language),
  },
  {
    key: 'imprint',
    header: 'Imprint',
    width: 160,
    sortable: true,
    text: (row) => row.imprint,
    cell: (row) => row.imprint,
  },
];

/** Shown until somebody chooses otherwise. */
export const FIRST_COLUMNS = ['title', 'form', 'number', 'standing', 'channels', 'on sale', 'price'];
