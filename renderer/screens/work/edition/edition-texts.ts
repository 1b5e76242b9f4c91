import type { EditionFields } from '../../../../src/contract/editions.ts';

/** 'children, 6 to 9 years' */
export function audienceText(edition: Pick<EditionFields, 'audience' | 'ageFrom' | 'ageTo'>): string {
  const { ageFrom, ageTo } = edition;
  if (ageFrom !== null && ageTo !== null) return `${edition.audience}, ${ageFrom} to ${ageTo} years`;
  if (ageFrom !== null) return `${edition.audience}, from ${ageFrom} years`;
  return ageTo === null ? edition.audience : `${edition.audience}, up to ${ageTo} years`;
}
