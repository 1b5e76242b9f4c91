import { Refusal } from '../../contract/refusal.ts';
import type { Reading, SheetField } from '../../contract/sheet-fields.ts';
import { isCurrency } from './amounts.ts';

/** A column as the person has settled it, with its header. */
export interface Settled {
  index: number;
  header: string;
  field: string | null;
  detail: string;
  reading: Reading | null;
}

const ORDERS = ['ymd', 'dmy', 'mdy'];
const MARKS = ['point', 'comma'];

/**
 * Checks that everything about the columns was said that must be: currencies, channels, the order of day and month,
 * decimal marks; and that no field stands in two columns. Throws BAD_INPUT that names the column.
 */
export function checkSettled(
  columns: readonly Settled[],
  fields: readonly SheetField[],
  channels: readonly string[],
): void {
  const taken = new Map<string, string>();
  for (const column of columns) {
    const field = fields.find(({ key }) => key === column.field);
    if (!field) continue;
    const name = column.header === '' ? `Column ${column.index + 1}` : `Column ‘${column.header}’`;
    const refuse = (what: string) => new Refusal('BAD_INPUT', `${name}: ${what}`, 'columns');
    if (field.detail === 'currency' && !isCurrency(column.detail))
      throw refuse('say the currency, as three capital letters.');
    if (field.detail === 'channel' && !channels.includes(column.detail)) throw refuse('say the channel.');
    if (field.detail === 'role' && !/^(?:[A-Z]\d\d)?$/.test(column.detail))
      throw refuse('say the role by its code in ONIX List 17, such as B06, or leave it out.');
    if (field.kind === 'date' && !ORDERS.includes(column.reading ?? ''))
      throw refuse('say whether the day or the month comes first.');
    if (field.kind === 'amount' && !MARKS.includes(column.reading ?? ''))
      throw refuse('say whether decimals follow a point or a comma.');
    if (field.key === 'isbn' || field.detail === 'role') continue;
    const place = `${field.key} ${field.detail === 'none' ? '' : column.detail}`;
    const before = taken.get(place);
    if (before !== undefined) throw refuse(`${before} holds the same; leave one of them out.`);
    taken.set(place, name);
  }
}
