/**
 * What the rules rest on. The full text of the manual's 7th edition and of ISO 2108:2017 could not be read;
 * rules are given by the older editions that could, with the place where the 7th treats the matter.
 */
const WORKS = {
  M4: 'ISBN Users’ Manual, 4th edition',
  M5: 'ISBN Users’ Manual, 5th edition (2005)',
  M6: 'ISBN Users’ Manual, 6th edition (2012)',
  M7: 'ISBN Users’ Manual, 7th edition (2017)',
  FAQ: 'International ISBN Agency, frequent questions',
  'IA-10': 'International ISBN Agency, What is an ISBN',
  'IA-26': 'International ISBN Agency, guidelines for e-books',
  'IA-27': 'International ISBN Agency, related policies',
  ISO: 'ISO 2108:2017',
  REPORT: 'report in the trade press on the revision of 2017 (livreshebdo.fr)',
  PRACTICE: 'common practice, no source',
} as const;

/** A source by its short name, with its section where it has one: ['M6', '5.2']. */
export type Source = readonly [work: keyof typeof WORKS, section?: string];

/** 'ISBN Users’ Manual, 6th edition (2012), section 5.2; International ISBN Agency, frequent questions' */
export function sourceText(sources: readonly Source[]): string {
  const text = sources
    .map(([work, section]) => (section === undefined ? WORKS[work] : `${WORKS[work]}, ${section}`))
    .join('; ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
