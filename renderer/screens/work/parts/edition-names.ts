import type { Contributor, Edition } from '../../../../src/contract/editions.ts';
import { roleName } from '../../../../src/contract/terms.ts';
import type { Work } from '../../../../src/contract/works.ts';
import { listed } from './names.ts';

/** '2nd edition'; one without a number goes by its statement, or counts as the first. */
export function shortName(edition: Edition): string {
  const head = `${edition.title}, `;
  if (edition.label.startsWith(head)) return edition.label.slice(head.length);
  return edition.statement || 'first edition';
}

/** 'The Salt Almanac, 2nd edition' or 'The Salt Almanac, first edition': names every edition of a work apart. */
export function fullName(edition: Edition): string {
  return `${edition.title}, ${shortName(edition)}`;
}

/** The edition of a work by its id. */
export function editionOf(work: Work, id: number | null): Edition | undefined {
  return work.editions.find((edition) => edition.id === id);
}

/** 'Maren Oskarsdal (author)' for each contributor, in order. */
export function peopleOf(contributors: readonly Contributor[]): string {
  return contributors.map(({ role, name }) => `${name} (${roleName(role).toLowerCase()})`).join(', ');
}

/** The names alone, authors and all others in order, each once. */
export function namesOf(contributors: readonly Contributor[]): string {
  return listed([...new Set(contributors.map(({ name }) => name))]);
}
