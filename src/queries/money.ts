import { Refusal } from '../contract/refusal.ts';
import { formName } from '../contract/terms.ts';
import { priceChange } from '../records/price-change.ts';
import { moneyRowOf } from '../rules/listing-money.ts';
import { curveOf, spanOf } from '../rules/money-curves.ts';
import { pricedListings } from '../store/costs.ts';
import { editionById } from '../store/editions.ts';
import { formatById } from '../store/formats.ts';
import { printCards } from '../store/print-cards.ts';
import { readSettings } from '../store/settings.ts';
import type { Queries } from './context.ts';

export const moneyQueries = {
  'money.ofEdition': (context, { editionId, shipped, returnedBp, asOf }) => {
    const db = context.on(asOf);
    if (!editionById(db, editionId))
      throw new Refusal('NOT_FOUND', `There is no edition ${editionId}.`, 'editionId');
    const { priceEndings: endings, lengthUnit } = readSettings(db);
    const day = asOf ?? context.today;
    const terms = { cards: printCards(db), endings, day, lengthUnit, shipped, returnedBp };
    return { rows: pricedListings(db, { editionId }).map((listing) => moneyRowOf(listing, terms)) };
  },

  'money.compare': (context, { formatId, currency, over, asOf }) => {
    const db = context.on(asOf);
    const format = formatById(db, formatId);
    if (!format) throw new Refusal('NOT_FOUND', `There is no format ${formatId}.`, 'formatId');
    const price = format.prices.find((one) => one.currency === currency);
    if (!price)
      throw new Refusal(
        'NOT_READY',
        `This ${formName(format).toLowerCase()} has no price in ${currency}; enter one to compare.`,
        'currency',
      );
    const terms = { cards: printCards(db), day: asOf ?? context.today };
    const span = spanOf(over, price.amountMinor, format.pages);
    const listings = pricedListings(db, { formatId }).filter(
      (one) => one.currency === currency && one.standing !== 'leaving' && one.standing !== 'gone',
    );
    return {
      formatName: formName(format),
      currency,
      listMinor: price.amountMinor,
      pages: format.pages,
      over,
      ...span,
      curves: listings.map((listing) => curveOf(listing, over, span, terms)),
    };
  },

  'prices.preview': ({ db, today }, input) => {
    const { formatName, rows, from, tasks, notes } = priceChange(db, input, today);
    return { formatName, rows, from, tasks, notes };
  },
} satisfies Queries<'money.ofEdition' | 'money.compare' | 'prices.preview'>;
