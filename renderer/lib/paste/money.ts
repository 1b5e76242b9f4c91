import type { Money } from '../../../src/contract/operation.ts';
import { parseScaled } from '../decimal.ts';
import { minorDigits, parseMoney } from '../money.ts';

/** How a written amount reads: in one way, in several between which the person chooses, or not, with the reason. */
export type MoneyReading =
  | { kind: 'sure'; money: Money }
  | { kind: 'either'; choices: Money[] }
  | { kind: 'unread'; why: string };

/** Signs of one currency alone, the longer before the shorter. */
const SIGNS: readonly (readonly [sign: string, currencies: readonly string[]])[] = [
  ['US$', ['USD']],
  ['CA$', ['CAD']],
  ['AU$', ['AUD']],
  ['NZ$', ['NZD']],
  ['C$', ['CAD']],
  ['A$', ['AUD']],
  ['€', ['EUR']],
  ['£', ['GBP']],
  ['₹', ['INR']],
  ['zł', ['PLN']],
  ['Kč', ['CZK']],
  ['₺', ['TRY']],
  ['₩', ['KRW']],
  ['$', ['USD', 'CAD', 'AUD', 'NZD']],
  ['¥', ['JPY', 'CNY']],
  ['kr', ['SEK', 'NOK', 'DKK']],
];

let known: ReadonlySet<string> | undefined;

/** The currencies that a text may mean: one where it says so, several for a shared sign, none where it is silent. */
function currenciesIn(text: string): readonly string[] {
  known ??= new Set(Intl.supportedValuesOf('currency'));
  const codes = [...text.matchAll(/(?<!\p{L})\p{L}{3}(?!\p{L})/gu)].map(([code]) => code.toUpperCase());
  const code = codes.find((found) => known?.has(found));
  if (code !== undefined) return [code];
  return SIGNS.find(([sign]) => text.includes(sign))?.[1] ?? [];
}

/** The figures with their marks, without currency and blanks; undefined where other words stand there. */
function figuresOf(text: string): string | undefined {
  const plain = text
    .replace(/(?<!\p{L})\p{L}{1,3}\.?(?!\p{L})|\p{Sc}/gu, '')
    .replace(/[,.][-–—]+$/, '')
    .replace(/[\s\u00a0\u202f]/g, '')
    .replace(/(?<=\d)['’](?=\d{3})/g, '');
  return /^\d[\d.,]*$/.test(plain) ? plain : undefined;
}

/** Every amount that the figures can be in this currency, with a point or a comma before the decimals. */
function amounts(figures: string, currency: string): number[] {
  const digits = minorDigits(currency);
  const read = ['en', 'de'].map((marks) => parseScaled(figures, digits, marks));
  return [...new Set(read.filter((amount) => amount !== undefined))];
}

/** One mark before three figures may part thousands or be a slip in the decimals. */
const doubtful = (figures: string) => /^\d{1,3}[.,]\d{3}$/.test(figures);

/**
 * Reads one amount in any usual writing: '£9.99', '9,99 €', 'EUR 9.99', '1.234,50'. `usual` is the currency where the
 * text names none, and decides a sign that several share where it is one of them; `locale` decides '1,234' where it
 * parts thousands so. Everything else that can be read in two ways comes back as all of them.
 */
export function readMoney(text: string, usual: string, locale?: string): MoneyReading {
  const named = currenciesIn(text);
  const figures = figuresOf(text);
  if (figures === undefined) return { kind: 'unread', why: 'Write one amount, such as 9.99 or 9,99 €.' };
  const currencies = named.length === 0 || named.includes(usual) ? [usual] : named;
  const choices = currencies.flatMap((currency) =>
    amounts(figures, currency).map((amountMinor) => ({ amountMinor, currency })),
  );
  const [only] = choices;
  if (!only) return { kind: 'unread', why: `This has more decimals than ${currencies[0]} knows.` };
  const local = parseMoney(figures, only.currency, locale) === only.amountMinor;
  const sure = choices.length === 1 && (!doubtful(figures) || local);
  return sure ? { kind: 'sure', money: only } : { kind: 'either', choices };
}
