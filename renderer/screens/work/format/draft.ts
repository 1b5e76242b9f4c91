import type { FormatFields, Price } from '../../../../src/contract/formats.ts';
import type { Money } from '../../../../src/contract/operation.ts';
import { madeOf } from '../../../../src/contract/terms.ts';
import { blankFormat } from '../parts/blanks.ts';
import type { RecordForm } from '../parts/use-record.ts';

/** A price while it is typed; it may have no amount yet. */
export interface PriceRow {
  key: number;
  money: Money | undefined;
  tax: Price['tax'];
}

/** A format while it is typed. */
export interface FormatDraft extends Omit<FormatFields, 'prices'> {
  prices: PriceRow[];
}

export type FormatForm = RecordForm<FormatDraft>;

const FIELDS = Object.keys(blankFormat('')) as (keyof FormatFields)[];

/** Opens a format for typing; a price row takes its currency in order. */
export function draftOf(fields: FormatFields): FormatDraft {
  const own = Object.fromEntries(FIELDS.map((field) => [field, fields[field]]));
  return {
    ...blankFormat(fields.form),
    ...own,
    prices: fields.prices.map(({ amountMinor, currency, tax }, key) => ({
      key,
      money: { amountMinor, currency },
      tax,
    })),
  };
}

/** What another way of making leaves without meaning, set back to nothing. */
function withoutOddments(draft: FormatDraft): Partial<FormatDraft> {
  const blank = blankFormat(draft.form);
  const made = madeOf(draft.form);
  const { formDetail, durationMinutes, trimWidthUm, trimHeightUm, pages, interiorColour, paper } = blank;
  const { finish, insideCoverPrint, largePrint } = blank;
  const printed = { trimWidthUm, trimHeightUm, pages, interiorColour, paper };
  const cover = { finish, insideCoverPrint, largePrint };
  return {
    formDetail,
    ...(made === 'audio' ? {} : { durationMinutes }),
    ...(made === 'print' ? {} : { ...printed, ...cover }),
  };
}

/** Chooses another form; what belonged to the former way of making goes with it. */
export function changeForm(form: FormatForm, code: string): void {
  const next = { ...form.draft, form: code };
  const other = code !== '' && madeOf(code) !== madeOf(form.draft.form);
  form.merge({
    form: code,
    ...(code === 'BB' ? {} : { caseKind: null }),
    ...(other ? withoutOddments(next) : {}),
  });
}

/** The prices that have an amount. */
export function filledPrices(rows: readonly PriceRow[]): Price[] {
  return rows.flatMap(({ money, tax }) => (money === undefined ? [] : [{ ...money, tax }]));
}
