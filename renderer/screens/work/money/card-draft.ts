import type { InputOf, OutputOf } from '../../../../src/contract/index.ts';
import type { Money } from '../../../../src/contract/operation.ts';
import { BLANK_CARD, type CardFields, MOST_PAGES } from '../../../../src/contract/print-costs.ts';

export type Card = OutputOf<'printCosts.list'>['cards'][number];

export interface QuoteRow {
  key: number;
  pages: number | undefined;
  amount: Money | undefined;
}

export interface CardDraft
  extends Pick<
    CardFields,
    | 'form'
    | 'caseKind'
    | 'interiorColour'
    | 'trimWidthUm'
    | 'trimHeightUm'
    | 'validFrom'
    | 'note'
    | 'currency'
  > {
  channelId: string;
  kind: 'quotes' | 'stated';
  quotes: readonly QuoteRow[];
  fixedParts: number | undefined;
  pageParts: number | undefined;
  /** Undefined for the whole range. */
  pagesFrom: number | undefined;
  pagesTo: number | undefined;
}

const blankQuotes = (): QuoteRow[] => [0, 1].map((key) => ({ key, pages: undefined, amount: undefined }));

export function draftOf(card: Card | undefined, channelId: string, currency: string): CardDraft {
  const { price, pagesFrom, pagesTo, ...rest } = card ?? { ...BLANK_CARD, currency, price: undefined };
  const quotes = price?.kind === 'quotes' ? price.quotes : [];
  const stated = price?.kind === 'stated' ? price : undefined;
  return {
    form: rest.form,
    caseKind: rest.caseKind,
    interiorColour: rest.interiorColour,
    trimWidthUm: rest.trimWidthUm,
    trimHeightUm: rest.trimHeightUm,
    validFrom: rest.validFrom,
    note: rest.note,
    currency: rest.currency,
    channelId,
    kind: price?.kind ?? 'quotes',
    quotes:
      quotes.length > 0
        ? quotes.map(({ pages, amountMinor }, key) => ({
            key,
            pages,
            amount: { amountMinor, currency: rest.currency },
          }))
        : blankQuotes(),
    fixedParts: stated?.fixedParts,
    pageParts: stated?.pageParts,
    pagesFrom: pagesFrom > 1 ? pagesFrom : undefined,
    pagesTo: pagesTo < MOST_PAGES ? pagesTo : undefined,
  };
}

/** The cost as the contract takes it; undefined while something is missing. Rows that are empty are left out. */
export function priceOf({ kind, quotes, fixedParts, pageParts }: CardDraft): CardFields['price'] | undefined {
  if (kind === 'stated')
    return fixedParts === undefined || pageParts === undefined ? undefined : { kind, fixedParts, pageParts };
  const begun = quotes.filter(({ pages, amount }) => pages !== undefined || amount !== undefined);
  const whole = begun.flatMap(({ pages, amount }) =>
    pages === undefined || amount === undefined ? [] : [{ pages, amountMinor: amount.amountMinor }],
  );
  return whole.length === 0 || whole.length < begun.length ? undefined : { kind, quotes: whole };
}

/** All that is kept of a draft; undefined while its cost is not whole. */
export function fieldsOf(draft: CardDraft): Omit<InputOf<'printCosts.add'>, 'channelId'> | undefined {
  const price = priceOf(draft);
  if (price === undefined) return undefined;
  const { form, caseKind, interiorColour, trimWidthUm, trimHeightUm, validFrom, note, currency } = draft;
  return {
    form,
    caseKind: form === 'BB' ? caseKind : null,
    interiorColour,
    trimWidthUm,
    trimHeightUm,
    validFrom,
    note,
    currency,
    price,
    pagesFrom: draft.pagesFrom ?? 1,
    pagesTo: draft.pagesTo ?? MOST_PAGES,
  };
}
