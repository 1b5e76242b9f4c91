import { Refusal } from '../contract/refusal.ts';
import { earningOf } from '../rules/earnings.ts';
import type { ReadDb } from '../store/connection.ts';
import { costsOfEdition, pricedListings } from '../store/costs.ts';
import { editionById } from '../store/editions.ts';
import { printCards } from '../store/print-cards.ts';
import { roundsOfEdition } from '../store/proofs.ts';
import type { Queries } from './context.ts';

function needEdition(db: ReadDb, id: number): void {
  if (!editionById(db, id)) throw new Refusal('NOT_FOUND', `There is no edition ${id}.`, 'editionId');
}

export const costQueries = {
  'costs.ofEdition': (context, { editionId, asOf }) => {
    const db = context.on(asOf);
    needEdition(db, editionId);
    const stored = costsOfEdition(db, editionId, asOf ?? context.today);
    const cards = printCards(db);
    const day = asOf ?? context.today;
    const sums = new Map<string, number>();
    for (const { currency, amountMinor } of stored)
      sums.set(currency, (sums.get(currency) ?? 0) + amountMinor);
    return {
      costs: stored.map(({ amountMinor, currency, onDate, endedOn, ...rest }) => ({
        ...rest,
        amount: { amountMinor, currency },
        on: onDate,
        locked: endedOn !== null && onDate <= endedOn,
      })),
      totals: [...sums].map(([currency, amountMinor]) => ({ currency, amountMinor })),
      vouchers: stored.filter((cost) => cost.voucher !== '').length,
      earnings: pricedListings(db, { editionId }).map((row) =>
        earningOf(row, sums.get(row.currency) ?? 0, cards, day),
      ),
    };
  },

  'proofs.list': (context, { editionId, asOf }) => {
    const db = context.on(asOf);
    needEdition(db, editionId);
    return { rounds: roundsOfEdition(db, editionId, asOf ?? context.today) };
  },
} satisfies Queries<'costs.ofEdition' | 'proofs.list'>;
