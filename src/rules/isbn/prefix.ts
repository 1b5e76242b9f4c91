import { atCharacter, refuse, unusedRange } from './problem.ts';
import { type GroupRanges, groupAt, lengthAt, locate, type RangeTable } from './range-table.ts';
import type { RefusedIsbn } from './types.ts';
import { placeOfDigit, type Written } from './written.ts';

/**
 * What is wrong with at most twelve digits that begin with 978 or 979 as the prefix of a block; null where they are
 * prefix, group and a complete registrant element, and the hyphens stand between these.
 */
export function readPrefix(written: Written, table: RangeTable): RefusedIsbn | null {
  const { digits } = written;
  const prefix979 = digits[2] === '9';
  const low = locate(table, prefix979, Number(digits.slice(3).padEnd(9, '0')));
  const group = groupAt(table, low);
  const whole = group === null ? 0 : group.digits.length + lengthAt(low);
  // Ranges are cut at whole elements: once the registrant is complete, what follows cannot change its length.
  if (group !== null && lengthAt(low) > 0 && digits.length >= whole)
    return digits.length > whole
      ? surplus(written, group, whole)
      : misplacedHyphen(written, group, group.head + digits.slice(group.digits.length));
  const within = table.groups.filter((one) => one.digits.startsWith(digits) || digits.startsWith(one.digits));
  const [only] = within;
  const lengths = [...new Set(within.flatMap((one) => reachable(one, digits)))].sort();
  const position = placeOfDigit(written, digits.length);
  if (lengths.length === 0)
    return refuse('range-not-in-use', ...unusedRange(digits, table, placeOfDigit(written, 3)));
  if (only === undefined || within.length > 1 || digits.length < only.digits.length)
    return refuse(
      'registrant-incomplete',
      `After ${digits.slice(0, 3)} the group and registrant are missing.`,
      {
        hint: 'Type the whole prefix as the agency gave it, or any one number of the block.',
        position,
      },
    );
  return refuse(
    'registrant-incomplete',
    `The registrant element is incomplete: so begun, it has ${oneOf(lengths)} digits in group ${only.head.slice(0, -1)}.`,
    { hint: 'Type the whole prefix as the agency gave it, or any one number of the block.', position },
  );
}

function oneOf(lengths: readonly number[]): string {
  return lengths.length === 1
    ? String(lengths[0])
    : `${lengths.slice(0, -1).join(', ')} or ${lengths.at(-1)}`;
}

/** The registrant lengths that numbers of a group can have when they begin with these digits. */
function reachable(group: GroupRanges, digits: string): number[] {
  const begun = digits.slice(group.digits.length);
  const from = Number(begun.slice(0, 7).padEnd(7, '0'));
  const to = Number(begun.slice(0, 7).padEnd(7, '9'));
  return group.rules
    .filter(([first, last, length]) => length > 0 && first <= to && last >= from)
    .map(([, , length]) => length);
}

function surplus(written: Written, group: GroupRanges, whole: number): RefusedIsbn {
  const { digits } = written;
  const repair = group.head + digits.slice(group.digits.length, whole);
  const over = digits.length - whole;
  return refuse(
    'too-long',
    `The prefix is ${over} ${over === 1 ? 'digit' : 'digits'} too long: the registrant element has ${whole - group.digits.length} digits here.`,
    {
      hint: `Is the block ${repair}? Or type a whole number of 13 digits.`,
      position: placeOfDigit(written, whole),
      repair,
    },
  );
}

function misplacedHyphen(written: Written, group: GroupRanges, repair: string): RefusedIsbn | null {
  const wrong = written.dashes.find(({ before }) => before !== 3 && before !== group.digits.length);
  if (wrong === undefined) return null;
  return refuse('hyphens-misplaced', `A hyphen stands in the wrong place, ${atCharacter(wrong.place)}.`, {
    hint: `The elements of the prefix part like this: ${repair}.`,
    position: wrong.place,
    repair,
  });
}
