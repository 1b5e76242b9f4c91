import type { Contributor, Subject } from '../../contract/editions.ts';
import { type SentItem, SHEET_ITEMS, type SheetItemName } from '../../contract/submissions.ts';
import { formName, madeOf, RETURNS, roleName } from '../../contract/terms.ts';
import { majorUnits } from '../money.ts';
import type { ValueFacts } from './facts.ts';

/** A value of the sheet before it is checked. */
export type SheetValue = SentItem & { help: string };

/** What is recorded of an edition and a format, whatever the channel. */
export type RecordFacts = Pick<ValueFacts, 'edition' | 'format'>;

const UM_PER_INCH = 25_400;
const languages = new Intl.DisplayNames('en', { type: 'language', fallback: 'none' });

/** Names of languages by their codes, as they were asked for. */
const named = new Map<string, string>();

function languageName(code: string): string {
  const known = named.get(code);
  if (known !== undefined) return known;
  let name = code;
  try {
    name = languages.of(code) ?? code;
  } catch {
    // A code that is none is shown as it is.
  }
  named.set(code, name);
  return name;
}

const item = (of: SheetItemName, label: string, value: string | number | null, more = {}): SheetValue => {
  const text = value === null ? '' : String(value);
  return { of, label, value: text, is: text, help: '', ...more };
};

function contributorItem({ role, name }: Contributor, index: number): SheetValue {
  return item('contributors', `Contributor ${index + 1} (${roleName(role).toLowerCase()})`, name, {
    is: `${role} ${name}`,
  });
}

function subjectItem({ scheme, code, heading }: Subject, index: number): SheetValue {
  const label = `Subject ${index + 1}${index === 0 ? ', the main one' : ''}`;
  const is = `${scheme} ${code}`;
  if (scheme === 'own') return item('subjects', label, heading || code, { is, help: 'in your own words' });
  const name = scheme === 'bisac' ? 'BISAC' : 'Thema';
  return item('subjects', label, code, { is, help: heading === '' ? name : `${name}: ${heading}` });
}

/** '129 × 198 mm', with inches beside it: a channel asks for one or the other. */
function trimItem({ trimWidthUm, trimHeightUm }: ValueFacts['format']): SheetValue {
  if (trimWidthUm === null || trimHeightUm === null) return item('trimSize', 'Trim size', '');
  const inches = [trimWidthUm, trimHeightUm].map((um) => Number((um / UM_PER_INCH).toFixed(3)));
  return item('trimSize', 'Trim size', `${trimWidthUm / 1000} × ${trimHeightUm / 1000} mm`, {
    is: `${trimWidthUm}×${trimHeightUm}`,
    help: `${inches.join(' × ')} in`,
  });
}

function audienceText({ edition }: RecordFacts): string {
  const { audience, ageFrom, ageTo } = edition;
  if (ageFrom !== null && ageTo !== null) return `${audience}, ${ageFrom} to ${ageTo} years`;
  if (ageFrom !== null) return `${audience}, from ${ageFrom} years`;
  return ageTo === null ? audience : `${audience}, up to ${ageTo} years`;
}

function identityValues({
  edition,
  format,
  publisher,
}: RecordFacts & Pick<ValueFacts, 'publisher'>): SheetValue[] {
  return [
    item('isbn', 'ISBN', format.hyphenated, { is: format.isbn13 ?? '' }),
    ...(format.isbn13 === null ? [] : [item('isbn', 'ISBN without hyphens', format.isbn13)]),
    item('title', 'Title', edition.title),
    item('subtitle', 'Subtitle', edition.subtitle),
    item('series', 'Series', edition.series),
    item('seriesNumber', 'Volume in the series', edition.seriesNumber),
    item('number', 'Edition number', edition.number),
    item('statement', 'Edition statement', edition.statement),
    item('language', 'Language', languageName(edition.language), {
      is: edition.language,
      help: edition.language,
    }),
    ...(edition.contributors.length > 0
      ? edition.contributors.map(contributorItem)
      : [item('contributors', 'Contributors', '')]),
    item('imprint', 'Imprint', edition.imprint),
    // The name of the house is a setting of the catalogue, no part of the record: it is typed in, not compared.
    item('publisher', 'Publisher', publisher, { is: '' }),
  ];
}

function printValues(format: ValueFacts['format']): SheetValue[] {
  const interior = [format.interiorColour, format.paper].filter((part) => part).join(', ');
  const cover = [format.finish, format.insideCoverPrint ? 'printed inside' : ''].filter((part) => part);
  return [
    item('largePrint', 'Large print', format.largePrint ? 'yes' : 'no'),
    trimItem(format),
    item('pages', 'Pages', format.pages),
    item('interior', 'Interior', interior),
    item('cover', 'Cover', cover.join(', ')),
  ];
}

function formValues({ format }: RecordFacts): SheetValue[] {
  const made = madeOf(format.form);
  const form = formName({ ...format, largePrint: false });
  return [
    item('form', 'Product form', form, {
      is: [format.form, format.formDetail ?? '', format.caseKind ?? ''].join(' '),
    }),
    ...(made === 'print' ? printValues(format) : []),
    ...(made === 'audio' ? [item('duration', 'Running time in minutes', format.durationMinutes)] : []),
    item('direction', 'Reading direction', format.rightToLeft ? 'right to left' : 'left to right'),
  ];
}

function openValues(facts: RecordFacts & Pick<ValueFacts, 'channel'>): SheetValue[] {
  const { edition, channel } = facts;
  const between = `${channel.keywordSeparator.trim()} `;
  return [
    item('description', 'Description', edition.description),
    ...(edition.subjects.length > 0 ? edition.subjects.map(subjectItem) : [item('subjects', 'Subjects', '')]),
    item('keywords', 'Keywords', edition.keywords.join(between), { is: JSON.stringify(edition.keywords) }),
    item('audience', 'Audience', audienceText(facts)),
  ];
}

function priceValues({ format }: RecordFacts): SheetValue[] {
  if (format.prices.length === 0) return [item('prices', 'Price', '')];
  return format.prices.map(({ currency, amountMinor, tax }) =>
    item('prices', `Price in ${currency}`, majorUnits(amountMinor, currency), {
      is: `${currency} ${amountMinor} ${tax}`,
      help: `${tax} tax`,
    }),
  );
}

function dateValue({ format }: RecordFacts): SheetValue {
  return item('publicationDate', 'Publication date', format.publicationDate);
}

function onSaleValue({ format, listing }: Pick<ValueFacts, 'format' | 'listing'>): SheetValue {
  return item('onSaleDate', 'On-sale date', listing.onSaleDate ?? format.onSaleDate);
}

function termValues({ listing }: Pick<ValueFacts, 'listing'>): SheetValue[] {
  const { discountBp } = listing;
  const returns = RETURNS.find((entry) => entry.code === listing.returns)?.name ?? '';
  return [
    item('discount', 'Trade discount in percent', discountBp === null ? '' : discountBp / 100),
    item('returns', 'Returns', returns, { is: listing.returns ?? '' }),
  ];
}

/** Every value there is for a listing, in the usual order. What makes no sense for its form is left out. */
export function allValues(facts: ValueFacts): SheetValue[] {
  return [
    ...identityValues(facts),
    ...formValues(facts),
    ...openValues(facts),
    dateValue(facts),
    onSaleValue(facts),
    ...priceValues(facts),
    ...termValues(facts),
  ];
}

/** The values that are the same on every channel, in parts that are worked out together. */
export const RECORD_PARTS: readonly ((facts: RecordFacts) => SheetValue[])[] = [
  (facts) => identityValues({ ...facts, publisher: '' }),
  (facts) => [dateValue(facts), ...priceValues(facts)],
  formValues,
  (facts) => openValues({ ...facts, channel: { keywordSeparator: '' } }),
];

/** The values that are a listing's own. */
export function listingValues(facts: Pick<ValueFacts, 'format' | 'listing'>): SheetValue[] {
  return [onSaleValue(facts), ...termValues(facts)];
}

/** What a channel asks for, in its order. */
export function askedItems(sheetItems: readonly SheetItemName[]): readonly SheetItemName[] {
  return sheetItems.length > 0 ? sheetItems : SHEET_ITEMS;
}
