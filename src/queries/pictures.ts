import { Refusal } from '../contract/refusal.ts';
import type { Board } from '../rules/audit/board.ts';
import type { Facts } from '../rules/audit/facts.ts';
import { coverageOf } from '../rules/pictures/coverage.ts';
import { spansOf } from '../rules/pictures/life.ts';
import { moneyOf } from '../rules/pictures/money.ts';
import { stockOf } from '../rules/pictures/stock.ts';
import { plansOfEdition } from '../store/plans.ts';
import type { Queries, QueryContext } from './context.ts';

/** The joined records of the catalogue, which the audit keeps at hand. */
function boardOn(context: QueryContext, asOf: string | undefined): Board {
  return context.audit.on(asOf ?? context.today, context.today, context.on(asOf));
}

function factsOn(context: QueryContext, asOf: string | undefined): Facts {
  return boardOn(context, asOf).facts;
}

export const pictureQueries = {
  'pictures.life': (context, { workId, asOf }) => {
    const board = boardOn(context, asOf);
    const db = context.on(asOf);
    const work = board.work(workId);
    if (!work) throw new Refusal('NOT_FOUND', `There is no work ${workId} on this day.`, 'workId');
    return {
      workId,
      title: work.title,
      day: board.base.day,
      editions: work.editions.map((edition) => {
        const plans = plansOfEdition(db, edition.id);
        const retiring = plans.filter(({ kind }) => kind === 'retirement');
        return {
          editionId: edition.id,
          label: edition.label,
          replacesId: edition.replaces?.id ?? null,
          releaseDay: edition.release?.day ?? null,
          retirementDay: edition.retirement?.day ?? null,
          dropped: plans.flatMap(({ kind, day, droppedOn, droppedReason }) =>
            droppedOn === null ? [] : [{ kind, day, droppedOn, reason: droppedReason ?? '' }],
          ),
          lanes: edition.formats.map((format) => ({
            formatId: format.id,
            name: format.name,
            hyphenated: (format.number ?? format.numbers[0])?.written ?? null,
            standing: format.standing,
            onSaleDate: format.onSaleDate,
            spans: spansOf(format, retiring),
          })),
        };
      }),
    };
  },

  'pictures.coverage': (context, { asOf, ...part }) => {
    const { base, formats } = boardOn(context, asOf);
    return coverageOf({ day: base.day, channels: base.channels, formats }, part);
  },

  'pictures.stock': (context, { asOf }) => stockOf(factsOn(context, asOf)),
  'pictures.money': (context, { asOf, most }) => moneyOf(factsOn(context, asOf), most),
} satisfies Queries<'pictures.life' | 'pictures.coverage' | 'pictures.stock' | 'pictures.money'>;
