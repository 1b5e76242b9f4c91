import { EDITION_IDENTITY } from '../contract/editions.ts';
import { FORMAT_IDENTITY } from '../contract/formats.ts';

// The lock policy: identity fields lock with the first submission. The database's triggers guard the same
// fields; a test walks both.

export const LOCK_SOURCE =
  'Common practice, no source: channels do not let a publisher change these once submitted.';

/** Plain names of the fields that lock, as screens and refusals show them. */
export const FIELD_NAMES: Record<string, string> = {
  title: 'title',
  subtitle: 'subtitle',
  number: 'edition number',
  statement: 'edition statement',
  contributors: 'contributors',
  language: 'language',
  imprint: 'imprint',
  series: 'series',
  seriesNumber: 'series volume',
  form: 'product form',
  formDetail: 'file format',
  caseKind: 'kind of case',
  largePrint: 'large print',
  isbn: 'ISBN',
};

/** The fields among these changes that are identity fields of an edition. */
export function lockedEditionFields(changed: readonly string[]): string[] {
  return changed.filter((field) => (EDITION_IDENTITY as readonly string[]).includes(field));
}

/** The fields among these changes that are identity fields of a format. */
export function lockedFormatFields(changed: readonly string[]): string[] {
  return changed.filter((field) => (FORMAT_IDENTITY as readonly string[]).includes(field));
}

/** The sentence that a refused change is answered with: which fields, since when, by what, and the ways forward. */
export function lockedSentence(fields: readonly string[], lock: { since: string; by: string }): string {
  const names = fields.map((field) => FIELD_NAMES[field] ?? field).join(', ');
  return `Locked since ${lock.since} (sent to ${lock.by}): ${names}. Leave it as it is, or prepare the next edition with new numbers.`;
}
