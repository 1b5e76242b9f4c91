import { OWN_KIND } from '../contract/plan-templates.ts';
import { priceChange } from '../records/price-change.ts';
import { editionById } from '../store/editions.ts';
import { insertTask } from '../store/tasks.ts';
import type { Commands } from './context.ts';
import { formatCommands } from './formats.ts';

export const priceCommands = {
  'prices.change': (context, input) => {
    const { db, today } = context;
    const { format, wanted, from, tasks } = priceChange(db, input, today);
    const prices = format.prices.map((price) => ({
      ...price,
      amountMinor: wanted.get(price.currency) ?? price.amountMinor,
    }));
    formatCommands['formats.update'](context, { id: format.id, prices });
    const taskIds = tasks.map(({ listingId, title, dueOn }) =>
      insertTask(db, {
        kind: OWN_KIND,
        title,
        dueOn,
        note: `To hold from ${from} on, the same day on every channel.`,
        workId: editionById(db, format.editionId)?.workId ?? null,
        editionId: format.editionId,
        formatId: format.id,
        listingId,
      }),
    );
    return { formatId: format.id, changed: [...wanted.keys()], taskIds };
  },
} satisfies Commands<'prices.change'>;
