import type { Block } from '../../../src/contract/blocks.ts';
import type { NumberRow } from '../../../src/contract/numbers.ts';
import type { Money } from '../../../src/contract/operation.ts';
import { formatDay } from '../../lib/dates.ts';
import { minorDigits } from '../../lib/money.ts';

/** How many numbers a page of the picture or one question to the host holds at most. */
export const PAGE = 1000;

/** '93 of 100 free' */
export function leftInWords(free: number, of: number): string {
  if (free === 0) return `none of ${of.toLocaleString()} free`;
  return `${free.toLocaleString()} of ${of.toLocaleString()} free`;
}

/** '93 of 100 free, 2 reserved, 4 assigned, 1 spent'; what is not there is not said. */
export function countsInWords(counts: Block['counts'], capacity: number): string {
  const taken = (['reserved', 'assigned', 'spent'] as const)
    .filter((standing) => counts[standing] > 0)
    .map((standing) => `${counts[standing].toLocaleString()} ${standing}`);
  return [leftInWords(counts.free, capacity), ...taken].join(', ');
}

/** The whole of a number in one line, as a screen reader says it. */
export function numberInWords(row: NumberRow): string {
  const parts = [row.hyphenated, row.standing, row.usedFor, row.spentReason ?? ''];
  if (row.since) parts.push(`since ${formatDay(row.since)}`);
  return parts.filter((part) => part !== '').join(', ');
}

/** What one number of a block cost, such as `EUR 1.74`; small shares keep two more decimals than the currency has. */
export function costPerNumber(cost: Money, capacity: number): string {
  const digits = minorDigits(cost.currency);
  const each = cost.amountMinor / 10 ** digits / capacity;
  const text = each.toLocaleString(undefined, {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits + 2,
  });
  return `${cost.currency}\u00a0${text}`;
}

/** The publication element of a number by its place in the block: 7 of 100 is '07'. */
export function publicationElement(index: number, capacity: number): string {
  return String(index).padStart(String(capacity - 1).length, '0');
}

/** Name of a block in a sentence or a heading. */
export function blockName(block: Pick<Block, 'label' | 'hyphenatedPrefix'>): string {
  return block.label === '' ? block.hyphenatedPrefix : `${block.hyphenatedPrefix}, ${block.label}`;
}
