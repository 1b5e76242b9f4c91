import type { ListingRow } from '../contract/listing-list.ts';
import { formName } from '../contract/terms.ts';
import { shownIsbn } from '../rules/isbn/index.ts';
import { editionLabel } from '../rules/labels.ts';
import { type TableListing, tableListings } from '../store/listing-list.ts';
import type { Queries } from './context.ts';

function rowOf(row: TableListing): ListingRow {
  return {
    id: row.id,
    formatId: row.formatId,
    workId: row.workId,
    edition: editionLabel(row),
    name: formName({ ...row, largePrint: row.largePrint === 1 }),
    formatStanding: row.formatStanding,
    hyphenated: shownIsbn(row.isbn13),
    prices: JSON.parse(row.prices) as ListingRow['prices'],
    standing: row.standing,
    since: row.since,
    firstSentOn: row.firstSentOn,
    discountBp: row.discountBp,
    returns: row.returns,
    printCost:
      row.printCostMinor === null || row.printCostCurrency === null
        ? null
        : { amountMinor: row.printCostMinor, currency: row.printCostCurrency },
    onSaleDate: row.onSaleDate,
    reference: row.reference,
    note: row.note,
  };
}

export const listingListQueries = {
  'listings.find': (context, input) => {
    const { rows, total } = tableListings(context.on(input.asOf), input);
    return { rows: rows.map(rowOf), total };
  },
} satisfies Queries<'listings.find'>;
