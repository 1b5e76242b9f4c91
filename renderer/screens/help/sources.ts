/** What the help rests on. The 7th edition of the manual and the standard itself are named for the place where they treat a matter. */
export const SOURCES = {
  ISO: 'ISO 2108:2017, International Standard Book Number',
  M4: 'ISBN Users’ Manual, 4th edition',
  M5: 'ISBN Users’ Manual, 5th edition (2005)',
  M6: 'ISBN Users’ Manual, 6th edition (2012)',
  M7: 'ISBN Users’ Manual, 7th edition (2017)',
  AGENCY: 'International ISBN Agency, What is an ISBN',
  E_BOOKS: 'International ISBN Agency, guidelines for e-books',
  POLICIES: 'International ISBN Agency, related policies',
  PUBLISHERS: 'International ISBN Agency, notes for publishers',
  FAQ: 'International ISBN Agency, frequent questions',
  FINLAND: 'National Library of Finland, ISBN agency, guidance for publishers',
  ONIX: 'EDItEUR, ONIX for Books, code lists (issue 73)',
  EPUB: 'W3C, EPUB 3.3',
  GS1: 'GS1 General Specifications',
  OURS: 'Edition Ledger’s own rule',
  COMPUTED: 'Worked out from the formula',
  PRACTICE: 'Common practice, no source',
} as const;
export type SourceId = keyof typeof SOURCES;

/** A source with the place in it, where it has one: `['M6', 'section 5.2']`. */
export type Cited = readonly [source: SourceId, place?: string];

/** 'ISBN Users’ Manual, 6th edition (2012), section 5.2; common practice, no source.' */
export function citedText(cited: readonly Cited[]): string {
  return `${cited.map(([id, place]) => (place === undefined ? SOURCES[id] : `${SOURCES[id]}, ${place}`)).join('; ')}.`;
}
