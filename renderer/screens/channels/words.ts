import type { Channel } from '../../../src/contract/channels.ts';
import type { Markup, SheetItemName } from '../../../src/contract/submissions.ts';
import { percent, returnsName } from '../work/parts/names.ts';

export const KIND_WORDS: Readonly<Record<Channel['kind'], string>> = {
  print: 'Printed books',
  'e-book': 'E-books',
  audio: 'Audiobooks',
  any: 'Anything',
};

export const PROOF_WORDS: Readonly<Record<Channel['proof'], string>> = {
  none: 'No proof',
  electronic: 'Proof on screen',
  physical: 'Printed proof',
};

/** '40 %, returnable on conditions'; a dash where nothing is usual. */
export function termsInWords(channel: Pick<Channel, 'defaultDiscountBp' | 'defaultReturns'>): string {
  const returns = returnsName(channel.defaultReturns).toLowerCase();
  const discount = channel.defaultDiscountBp === null ? undefined : percent(channel.defaultDiscountBp);
  return [discount, returns].filter(Boolean).join(', ') || '—';
}

/** 'subjects 3, keywords 7'; what has no limit is not said. */
export function limitsInWords(
  channel: Pick<Channel, 'subjectLimit' | 'keywordLimit' | 'descriptionLimit'>,
): string {
  const limits: [string, number | null][] = [
    ['subjects', channel.subjectLimit],
    ['keywords', channel.keywordLimit],
    ['description', channel.descriptionLimit],
  ];
  const said = limits.flatMap(([what, limit]) =>
    limit === null ? [] : [`${what}\u00a0${limit.toLocaleString()}`],
  );
  return said.join(', ') || 'none';
}

/** '12, 8 selling' */
export function listingsInWords(channel: Pick<Channel, 'listings' | 'selling'>): string {
  if (channel.listings === 0) return 'none';
  return `${channel.listings.toLocaleString()}, ${channel.selling.toLocaleString()} selling`;
}

/** What markup a channel takes in a description. */
export const MARKUP_WORDS: Record<Markup, string> = {
  none: 'none, plain words only',
  'simple HTML': 'simple HTML: paragraphs, bold, italics, lists',
  any: 'any, or not known',
};

/** Plain names of what a channel's form can ask for. */
export const ITEM_WORDS: Record<SheetItemName, string> = {
  isbn: 'ISBN',
  title: 'Title',
  subtitle: 'Subtitle',
  series: 'Series',
  seriesNumber: 'Volume in the series',
  number: 'Edition number',
  statement: 'Edition statement',
  language: 'Language',
  contributors: 'Contributors',
  imprint: 'Imprint',
  publisher: 'Publisher',
  form: 'Product form',
  largePrint: 'Large print',
  trimSize: 'Trim size',
  pages: 'Pages',
  duration: 'Running time',
  interior: 'Interior',
  cover: 'Cover',
  direction: 'Reading direction',
  description: 'Description',
  subjects: 'Subjects',
  keywords: 'Keywords',
  audience: 'Audience',
  publicationDate: 'Publication date',
  onSaleDate: 'On-sale date',
  prices: 'Prices',
  discount: 'Trade discount',
  returns: 'Returns',
};
