import { type Reading, SHEET_FIELDS, type SheetField } from '../../../../../src/contract/sheet-fields.ts';
import type { FoundColumn, SheetOutcome } from '../../../../../src/contract/sheets.ts';
import type { Choice } from '../../../../ui/index.ts';
import { roleProblem } from '../../../work/parts/role-search.ts';

/** What a select offers for a column that is left out. */
export const LEFT_OUT = 'left out';

export const READING_CHOICES: Record<'date' | 'amount', Choice<Reading>[]> = {
  date: [
    { value: 'ymd', label: 'can be read one way only' },
    { value: 'dmy', label: 'day first: 25/11/2026' },
    { value: 'mdy', label: 'month first: 11/25/2026' },
  ],
  amount: [
    { value: 'point', label: 'decimal point: 1,234.50' },
    { value: 'comma', label: 'decimal comma: 1.234,50' },
  ],
};

/** Why columns cannot be used as they stand, or undefined. */
export function unsettled(
  columns: readonly FoundColumn[],
  fields: readonly SheetField[] = SHEET_FIELDS,
): string | undefined {
  for (const column of columns) {
    const field = fields.find(({ key }) => key === column.field);
    if (!field) continue;
    if (field.detail === 'currency' && column.detail === '') return `Say the currency of ‘${column.header}’.`;
    if (field.detail === 'channel' && column.detail === '') return `Say the channel of ‘${column.header}’.`;
    if (field.detail === 'role' && roleProblem(column.detail))
      return `Choose the role of ‘${column.header}’.`;
    if (field.kind !== 'text' && column.reading === null) return `Say how ‘${column.header}’ is written.`;
  }
  return undefined;
}

export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count.toLocaleString()} ${count === 1 ? one : many}`;
}

/** '3 new, 1 changed, 2 unchanged, 1 refused.' */
export function countsInWords({ counts }: Pick<SheetOutcome, 'counts'>): string {
  const parts = [
    [counts.new, 'new'],
    [counts.changed, 'changed'],
    [counts.same, 'unchanged'],
    [counts.refused, 'refused'],
  ] as const;
  const told = parts
    .filter(([count]) => count > 0)
    .map(([count, word]) => `${count.toLocaleString()} ${word}`);
  return told.length === 0 ? 'No row below the header.' : `${told.join(', ')}.`;
}

/** 'would make 2 works, 3 editions and 4 formats' without what is none. */
export function madeInWords({ made }: Pick<SheetOutcome, 'made'>): string {
  const parts = [
    [made.works, 'work'],
    [made.editions, 'edition'],
    [made.formats, 'format'],
    [made.numbers, 'number'],
    [made.listings, 'listing'],
  ] as const;
  const told = parts.filter(([count]) => count > 0).map(([count, word]) => counted(count, word));
  return told.length === 0 ? 'nothing new' : told.join(', ');
}
