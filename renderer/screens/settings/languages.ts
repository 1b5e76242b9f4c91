import { LANGUAGES } from '../../../src/contract/languages.ts';

/** The languages as choices of a select, by name. */
export const LANGUAGE_CHOICES = LANGUAGES.map(([code, name]) => ({ value: code, label: name }));

/** Whether a code is among the languages offered by name. */
export function isOffered(code: string): boolean {
  return LANGUAGES.some(([known]) => known === code);
}
