import { Link } from 'wouter';
import type { ListingRow } from '../../../../src/contract/listing-list.ts';
import { formatDay } from '../../../lib/dates.ts';
import { formatMoney } from '../../../lib/money.ts';
import type { GridColumn } from '../../../ui/grid/types.ts';
import { Isbn, Standing } from '../../../ui/index.ts';
import { placeOf } from '../../work/parts/go-to.ts';
import { percent, returnsName } from '../../work/parts/names.ts';

const day = (value: string | null) => (value === null ? '' : formatDay(value));
const money = (value: { amountMinor: number; currency: string }) =>
  formatMoney(value.amountMinor, value.currency);
const priced = (row: ListingRow) => row.prices.map(money).join(', ');
const discounted = (row: ListingRow) => (row.discountBp === null ? '' : percent(row.discountBp));

/** The address of a row's format. */
export const routeOfRow = (row: ListingRow): string => placeOf(row.workId, 'format', row.formatId);

const plain = (
  key: string,
  header: string,
  width: number,
  text: (row: ListingRow) => string,
  sortable = false,
): GridColumn<ListingRow> => ({ key, header, width, text, cell: text, sortable });

const dated = (
  key: string,
  header: string,
  read: (row: ListingRow) => string | null,
  sortable = false,
): GridColumn<ListingRow> => ({
  key,
  header,
  width: 130,
  text: (row) => read(row) ?? '',
  cell: (row) => day(read(row)),
  sortable,
});

const ALL: readonly GridColumn<ListingRow>[] = [
  {
    ...plain('title', 'Edition', 250, (row) => row.edition, true),
    cell: (row) => (
      <Link href={routeOfRow(row)} className="italic" tabIndex={-1}>
        {row.edition}
      </Link>
    ),
  },
  plain('form', 'Format', 150, (row) => row.name, true),
  {
    ...plain('number', 'Number', 200, (row) => row.hyphenated ?? '', true),
    cell: (row) => (row.hyphenated === null ? '' : <Isbn value={row.hyphenated} />),
  },
  {
    ...plain('standing', 'Stands', 120, (row) => row.standing, true),
    cell: (row) => <Standing of="listing" value={row.standing} />,
  },
  dated('since', 'Since', (row) => row.since, true),
  {
    ...plain('format standing', 'The format is', 130, (row) => row.formatStanding, true),
    cell: (row) => <Standing of="format" value={row.formatStanding} />,
  },
  dated('on sale', 'On sale', (row) => row.onSaleDate, true),
  { ...plain('price', 'Price', 140, priced), align: 'end' },
  { ...plain('discount', 'Discount', 110, discounted, true), align: 'end' },
  plain('returns', 'Returns', 170, (row) => returnsName(row.returns)),
  {
    ...plain('print cost', 'Print cost', 120, (row) => (row.printCost ? money(row.printCost) : '')),
    align: 'end',
  },
  plain('reference', 'Their reference', 160, (row) => row.reference, true),
  dated('sent', 'First sent', (row) => row.firstSentOn),
  plain('note', 'Note', 220, (row) => row.note),
];

/** Every column of a channel's listings, and those shown at first. */
export const COLUMNS = {
  all: ALL,
  first: ['title', 'form', 'number', 'standing', 'since', 'on sale', 'price', 'discount'],
};
