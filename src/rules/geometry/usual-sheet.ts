import type { SheetKind } from './types.ts';

/** The sheet that is printed for a form: ONIX List 150 BB is a hardback. */
export function usualSheet(format: { form: string; caseKind: string | null }): SheetKind {
  if (format.form !== 'BB') return 'paperback cover';
  return format.caseKind === 'jacket' ? 'jacket' : 'case';
}
