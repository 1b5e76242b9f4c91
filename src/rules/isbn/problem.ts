import { groupAt, lengthAt, locate, type RangeTable } from './range-table.ts';
import type { IsbnProblem, IsbnProblemCode, RefusedIsbn } from './types.ts';

/** A refusal; what is not given is null. */
export function refuse(
  code: IsbnProblemCode,
  message: string,
  more: Partial<Pick<IsbnProblem, 'hint' | 'position' | 'repair'>> = {},
): RefusedIsbn {
  const { hint = null, position = null, repair = null } = more;
  return { ok: false, problem: { code, message, hint, position, repair } };
}

/** 'at character 5': people count from one, positions from zero. */
export function atCharacter(position: number): string {
  return `at character ${position + 1}`;
}

/** The hint that goes with an offered repair. */
export function askWhether(repair: string): string {
  return `Is it ${repair}? Compare with the source before taking it.`;
}

/** Message and more for digits, 978 or 979 first, that fall where the table has no group or no registrants. */
export function unusedRange(
  digits: string,
  table: RangeTable,
  place: number,
): [string, { hint: string; position: number }] {
  const low = locate(table, digits[2] === '9', Number(digits.slice(3, 12).padEnd(9, '0')));
  const group = groupAt(table, low);
  const where =
    group === null || lengthAt(low) > 0
      ? `No group of prefix ${digits.slice(0, 3)} begins with ${digits.slice(3, 8)}`
      : `Group ${group.head.slice(0, -1)} (${group.agency}) has no registrants that begin with ${digits.slice(group.digits.length, 12)}`;
  return [
    `${where} in the range table of ${table.date}.`,
    {
      hint: 'Compare the number with its source; if it is right, the table needs a newer range message.',
      position: place,
    },
  ];
}
