import { BLANK_CARD, type CardFields } from '../contract/print-costs.ts';
import { Refusal } from '../contract/refusal.ts';
import { changesOf } from '../rules/changes.ts';
import { cardName } from '../rules/print-cost/card.ts';
import type { ReadDb } from '../store/connection.ts';
import {
  cardById,
  deleteCard,
  insertCard,
  printCards,
  type StoredCard,
  writeCard,
} from '../store/print-cards.ts';
import { readSettings } from '../store/settings.ts';
import type { Commands } from './context.ts';

function needCard(db: ReadDb, id: number): StoredCard {
  const stored = cardById(db, id);
  if (!stored) throw new Refusal('NOT_FOUND', `There is no print-cost card ${id}.`, 'id');
  return stored;
}

/** Refuses what no card can be. */
function check(card: CardFields): void {
  if ((card.trimWidthUm === null) !== (card.trimHeightUm === null))
    throw new Refusal('BAD_INPUT', 'A trim size needs both width and height.', 'trimHeightUm');
  if (card.pagesFrom > card.pagesTo)
    throw new Refusal(
      'BAD_INPUT',
      `The pages go from ${card.pagesFrom} to ${card.pagesTo}; write the smaller count first.`,
      'pagesTo',
    );
  if (card.caseKind !== null && card.form !== 'BB')
    throw new Refusal(
      'BAD_INPUT',
      'Only a hardcover has a kind of case; choose the form hardcover too.',
      'caseKind',
    );
}

/** Two cards for the same books from the same day on would leave open which one holds. */
function refuseTwin(db: ReadDb, channelId: number, card: CardFields, own: number | null): void {
  const key = (of: CardFields) =>
    JSON.stringify([
      of.currency,
      of.form,
      of.caseKind,
      of.interiorColour,
      of.trimWidthUm,
      of.trimHeightUm,
      of.pagesFrom,
      of.validFrom,
    ]);
  const twin = printCards(db).find(
    (one) => one.channelId === channelId && one.id !== own && key(one) === key(card),
  );
  if (twin)
    throw new Refusal(
      'ALREADY_EXISTS',
      `This channel has a card for this already (${cardName(twin, readSettings(db).lengthUnit)}, ${twin.currency}); change that one, or give this one a day from which it holds.`,
      'validFrom',
    );
}

export const printCostCommands = {
  'printCosts.add': ({ db }, { channelId, ...given }) => {
    if (!db.one('SELECT 1 FROM channel WHERE id = ?', channelId))
      throw new Refusal('NOT_FOUND', `There is no channel ${channelId}.`, 'channelId');
    const named = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
    const card: CardFields = { ...BLANK_CARD, currency: given.currency, price: given.price, ...named };
    check(card);
    refuseTwin(db, channelId, card, null);
    return { cardId: insertCard(db, channelId, card) };
  },

  'printCosts.update': ({ db }, { id, ...wanted }) => {
    const { id: _, channelId, ...now } = needCard(db, id);
    const changes = changesOf<CardFields>(now, wanted as Partial<CardFields>);
    const changed = Object.keys(changes);
    if (changed.length === 0) return { cardId: id, changed };
    const card = { ...now, ...changes };
    check(card);
    refuseTwin(db, channelId, card, id);
    writeCard(db, id, card, changes.price !== undefined || changes.currency !== undefined);
    return { cardId: id, changed };
  },

  'printCosts.remove': ({ db }, { id }) => {
    needCard(db, id);
    deleteCard(db, id);
    return { cardId: id };
  },
} satisfies Commands<'printCosts.add' | 'printCosts.update' | 'printCosts.remove'>;
