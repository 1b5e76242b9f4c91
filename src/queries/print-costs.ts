import { cardName } from '../rules/print-cost/card.ts';
import { fitPrice } from '../rules/print-cost/line.ts';
import { printCards } from '../store/print-cards.ts';
import { readSettings } from '../store/settings.ts';
import type { Queries } from './context.ts';

export const printCostQueries = {
  'printCosts.list': (context, { channelId, asOf }) => {
    const db = context.on(asOf);
    const { lengthUnit } = readSettings(db);
    const channels = db.all<{ id: number; name: string }>('SELECT id, name FROM channel ORDER BY name, id');
    const cards = printCards(db);
    return {
      cards: channels
        .filter(({ id }) => channelId === undefined || channelId === id)
        .flatMap((channel) =>
          cards
            .filter((card) => card.channelId === channel.id)
            .map((card) => ({
              ...card,
              channelName: channel.name,
              name: cardName(card, lengthUnit),
              fitted: fitPrice(card.price, card.currency),
            })),
        ),
    };
  },

  'printCosts.fit': (_context, { currency, price }) => fitPrice(price, currency),
} satisfies Queries<'printCosts.list' | 'printCosts.fit'>;
