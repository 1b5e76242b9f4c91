import { type RangeTable, rangeTable } from './range-table.ts';

/** A size of block that a group's ranges hold. */
export interface BlockSize {
  registrantDigits: number;
  /** Numbers in one such block. */
  capacity: number;
  /** How many registrant elements of that length the ranges hold, issued or not. */
  registrants: number;
}

/** The block sizes of a group, smallest first; empty for a group that the table does not know (STANDARDS A8). */
export function blockSizes(
  prefix: '978' | '979',
  group: string,
  table: RangeTable = rangeTable(),
): BlockSize[] {
  const found = table.groups.find((one) => one.prefix === prefix && one.group === group);
  const registrants = new Map<number, number>();
  for (const [from, to, length] of found?.rules ?? []) {
    if (length === 0) continue;
    const held = (to - from + 1) / 10 ** (7 - length);
    registrants.set(length, (registrants.get(length) ?? 0) + held);
  }
  return [...registrants]
    .map(([registrantDigits, held]) => ({
      registrantDigits,
      capacity: 10 ** (9 - group.length - registrantDigits),
      registrants: held,
    }))
    .sort((a, b) => a.capacity - b.capacity);
}
