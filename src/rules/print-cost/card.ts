import type { CardFields } from '../../contract/print-costs.ts';
import { MOST_PAGES } from '../../contract/print-costs.ts';
import { formName, madeOf } from '../../contract/terms.ts';
import { costAt, lineOf } from './line.ts';

/** A card as it is kept, without what is worked out of it. */
export interface KeptCard extends CardFields {
  id: number;
  channelId: number;
}

/** What of a format decides which card holds for it. */
export interface Printed {
  form: string;
  caseKind: string | null;
  interiorColour: string | null;
  trimWidthUm: number | null;
  trimHeightUm: number | null;
  pages: number | null;
}

const inUnit = (um: number, unit: 'mm' | 'in') =>
  String(Number((um / (unit === 'in' ? 25_400 : 1_000)).toFixed(3)));

/** What a card holds for: 'Paperback, black, up to 152.4 × 228.6 mm, from 24 to 108 pages'. */
export function cardName(card: CardFields, unit: 'mm' | 'in'): string {
  const { form, caseKind, interiorColour, trimWidthUm, trimHeightUm, pagesFrom, pagesTo, validFrom } = card;
  const parts = [form === null ? 'Any printed form' : formName({ form, caseKind })];
  if (interiorColour !== null) parts.push(interiorColour);
  if (trimWidthUm !== null && trimHeightUm !== null)
    parts.push(`up to ${inUnit(trimWidthUm, unit)} × ${inUnit(trimHeightUm, unit)} ${unit}`);
  if (pagesTo < MOST_PAGES) parts.push(`${pagesFrom} to ${pagesTo} pages`);
  else if (pagesFrom > 1) parts.push(`from ${pagesFrom} pages on`);
  if (validFrom !== null) parts.push(`since ${validFrom}`);
  return parts.join(', ');
}

function holdsForMake(card: KeptCard, book: Printed): boolean {
  if (card.form !== null && card.form !== book.form) return false;
  if (card.caseKind !== null && card.caseKind !== book.caseKind) return false;
  if (card.interiorColour !== null && card.interiorColour !== book.interiorColour) return false;
  if (card.trimWidthUm === null || card.trimHeightUm === null) return true;
  if (book.trimWidthUm === null || book.trimHeightUm === null) return false;
  return book.trimWidthUm <= card.trimWidthUm && book.trimHeightUm <= card.trimHeightUm;
}

const area = (card: KeptCard) => (card.trimWidthUm ?? 2_000_000) * (card.trimHeightUm ?? 2_000_000);

/** The closer card first: form, kind of case, ink, smallest trim; then the newest, then the shortest range of pages. */
function closer(a: KeptCard, b: KeptCard): number {
  const named = (card: KeptCard) =>
    [card.form, card.caseKind, card.interiorColour].map((value) => (value === null ? 1 : 0));
  const [one, other] = [named(a), named(b)];
  for (const at of one.keys()) if (one[at] !== other[at]) return (one[at] ?? 0) - (other[at] ?? 0);
  return (
    area(a) - area(b) ||
    (b.validFrom ?? '').localeCompare(a.validFrom ?? '') ||
    a.pagesTo - a.pagesFrom - (b.pagesTo - b.pagesFrom) ||
    b.pagesFrom - a.pagesFrom ||
    a.id - b.id
  );
}

export type CostSource = 'own figure' | 'card' | 'nothing printed' | 'not known';

/** What a copy costs to print, and on whose word. */
export interface PrintCost {
  minor: number | null;
  from: CostSource;
  cardId: number | null;
  /** Outside the page counts that were quoted: the line goes on where nobody asked. */
  beyondQuotes: boolean;
  /** Why it is not known; '' where it is. */
  why: string;
}

const unknown = (why: string): PrintCost => ({
  minor: null,
  from: 'not known',
  cardId: null,
  beyondQuotes: false,
  why,
});

/** Why no card holds for a book, as a sentence on what is missing. */
function whyNone(cards: readonly KeptCard[], book: Printed, pages: number): string {
  const [first] = cards;
  if (!first) return 'This channel has no print-cost card in this currency, and no own figure is typed.';
  if (book.interiorColour === null && cards.every((card) => card.interiorColour !== null))
    return 'The colour of the inside is not recorded, and every card of this channel names one.';
  if (book.trimWidthUm === null && cards.every((card) => card.trimWidthUm !== null))
    return 'The trim size is not recorded, and every card of this channel is for one.';
  return `No print-cost card of this channel is for this book of ${pages} pages.`;
}

function byCard(card: KeptCard, pages: number): PrintCost {
  const line = lineOf(card.price);
  const minor = costAt(line, pages);
  const quoted = card.price.kind === 'quotes' ? card.price.quotes.map((quote) => quote.pages) : [];
  if (minor === null)
    return unknown(
      line.only !== null
        ? `Its card has quotes for ${quoted[0]} pages alone; add one for another page count.`
        : 'Its card gives less than nothing for so few pages; check its quotes.',
    );
  const beyondQuotes = quoted.length > 0 && (pages < Math.min(...quoted) || pages > Math.max(...quoted));
  return { minor, from: 'card', cardId: card.id, beyondQuotes, why: '' };
}

/**
 * What printing one copy costs on a channel in a currency. A figure typed for the listing comes first; otherwise the
 * closest of the channel's cards that hold on the day; nothing is taken from another currency or channel.
 */
export function printCostOf(
  book: Printed,
  own: { minor: number | null; currency: string | null },
  cards: readonly KeptCard[],
  of: { channelId: number; currency: string; day: string },
): PrintCost {
  if (madeOf(book.form) !== 'print')
    return { minor: 0, from: 'nothing printed', cardId: null, beyondQuotes: false, why: '' };
  if (own.minor !== null && own.currency === of.currency)
    return { minor: own.minor, from: 'own figure', cardId: null, beyondQuotes: false, why: '' };
  const { pages } = book;
  const there = cards.filter(
    (card) =>
      card.channelId === of.channelId && card.currency === of.currency && (card.validFrom ?? '') <= of.day,
  );
  if (there.length > 0 && pages === null)
    return unknown('The pages are not recorded, and the card goes by them.');
  const fitting = there.filter(
    (card) => pages !== null && card.pagesFrom <= pages && pages <= card.pagesTo && holdsForMake(card, book),
  );
  const [closest] = fitting.toSorted(closer);
  return closest && pages !== null ? byCard(closest, pages) : unknown(whyNone(there, book, pages ?? 0));
}
