import { z } from 'zod';
import bundled from '../../../resources/isbn-ranges.json' with { type: 'json' };

/** [from, to, length]: both ends as seven-digit values, and the length of the next element; 0 is not in use. */
const rule = z.tuple([z.int().min(0).max(9_999_999), z.int().min(0).max(9_999_999), z.int().min(0).max(7)]);
const rules = z.array(rule).min(1);

/** The JSON form of the agency's range message (STANDARDS A9), as kept in resources/isbn-ranges.json. */
export const rangeData = z.strictObject({
  source: z.string().min(1),
  serial: z.string().min(1).nullable(),
  /** The message's own date line, as the agency wrote it. */
  issued: z.string().min(1),
  date: z.iso.date(),
  prefixes: z.array(z.tuple([z.enum(['978', '979']), z.string().min(1), rules])).min(1),
  groups: z
    .array(z.tuple([z.string().regex(/^97[89]-[0-9]{1,5}$/), z.string().min(1), rules]))
    .min(1)
    .max(65_000),
});
export type RangeData = z.infer<typeof rangeData>;
export type RangeRule = z.infer<typeof rule>;

/** One registration group, ready for lookups. */
export interface GroupRanges {
  prefix: '978' | '979';
  group: string;
  agency: string;
  /** Prefix and group with a hyphen after each: '978-0-'. */
  head: string;
  /** Prefix and group without hyphens: '9780'. */
  digits: string;
  rules: readonly RangeRule[];
  /** Upper end of each run of equal length, ascending and without gaps up to 9999999. */
  ends: Int32Array;
  /** Registrant length of each run; 0 is not in use. */
  lengths: Uint8Array;
}

export interface RangeTable {
  source: string;
  serial: string | null;
  issued: string;
  /** Day of the message, YYYY-MM-DD. */
  date: string;
  groups: readonly GroupRanges[];
  /** By the five digits after the prefix (979 offset by 100,000): 1 + index into groups, 0 where none is in use. */
  groupAt: Uint16Array;
}

/** Thrown for range data that does not hold together; the message is one sentence that names the place. */
export class RangeTableError extends Error {
  override readonly name = 'RangeTableError';
}

let bundledTable: RangeTable | null = null;

/** The bundled table, with the date, serial and source of the message it was made from. Compiled once. */
export function rangeTable(): RangeTable {
  bundledTable ??= loadRangeTable(bundled);
  return bundledTable;
}

/**
 * Checks range data in its JSON form and compiles it. Ranges must be in order without overlap, aligned to their
 * length, and leave room for a publication element; groups must agree with their prefix's rules.
 * Throws RangeTableError naming the first place that does not hold.
 */
export function loadRangeTable(data: unknown): RangeTable {
  const parsed = rangeData.safeParse(data);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    throw new RangeTableError(
      `The range table is malformed at ${issue?.path.join('.') || 'its top'}: ${issue?.message ?? 'unreadable'}.`,
    );
  }
  const { source, serial, issued, date, prefixes, groups } = parsed.data;
  const groupLengths = new Map<string, Uint8Array>();
  for (const [prefix, , list] of prefixes) {
    if (groupLengths.has(prefix)) throw new RangeTableError(`Prefix ${prefix} appears twice.`);
    checkRules(prefix, list, 5);
    groupLengths.set(prefix, lengthsByFiveDigits(prefix, list));
  }
  const compiled = groups.map(([name, agency, list]) => compileGroup(name, agency, list));
  return { source, serial, issued, date, groups: compiled, groupAt: indexGroups(compiled, groupLengths) };
}

function checkRules(place: string, list: readonly RangeRule[], longest: number): void {
  let previous = -1;
  for (const [from, to, length] of list) {
    const range = `${pad7(from)}-${pad7(to)}`;
    if (to < from) throw new RangeTableError(`Range ${range} of ${place} runs backwards.`);
    if (from <= previous)
      throw new RangeTableError(`Range ${range} of ${place} overlaps the one before it or is out of order.`);
    if (length > longest)
      throw new RangeTableError(
        `Range ${range} of ${place} has length ${length}; ${longest} is the most possible.`,
      );
    const step = 10 ** (7 - length);
    if (length > 0 && (from % step !== 0 || (to + 1) % step !== 0))
      throw new RangeTableError(`Range ${range} of ${place} cuts through an element of ${length} digits.`);
    previous = to;
  }
}

function pad7(value: number): string {
  return String(value).padStart(7, '0');
}

function lengthsByFiveDigits(prefix: string, list: readonly RangeRule[]): Uint8Array {
  const lengths = new Uint8Array(100_000);
  for (const [from, to, length] of list) {
    if (from % 100 !== 0 || (to + 1) % 100 !== 0)
      throw new RangeTableError(`Range ${pad7(from)}-${pad7(to)} of ${prefix} is finer than a group can be.`);
    lengths.fill(length, from / 100, (to + 1) / 100);
  }
  return lengths;
}

function compileGroup(name: string, agency: string, list: readonly RangeRule[]): GroupRanges {
  const prefix = name.startsWith('978') ? '978' : '979';
  const group = name.slice(4);
  checkRules(name, list, Math.min(7, 8 - group.length));
  const ends: number[] = [];
  const lengths: number[] = [];
  const run = (end: number, length: number): void => {
    if (lengths.at(-1) === length) ends[ends.length - 1] = end;
    else {
      ends.push(end);
      lengths.push(length);
    }
  };
  let next = 0;
  for (const [from, to, length] of list) {
    // A stretch the message does not mention is not in use (978-968 and 978-970 have one each).
    if (from > next) run(from - 1, 0);
    run(to, length);
    next = to + 1;
  }
  if (next <= 9_999_999) run(9_999_999, 0);
  return {
    prefix,
    group,
    agency,
    head: `${prefix}-${group}-`,
    digits: prefix + group,
    rules: list,
    ends: Int32Array.from(ends),
    lengths: Uint8Array.from(lengths),
  };
}

function indexGroups(
  groups: readonly GroupRanges[],
  groupLengths: ReadonlyMap<string, Uint8Array>,
): Uint16Array {
  const groupAt = new Uint16Array(200_000);
  groups.forEach(({ prefix, group }, i) => {
    const span = 10 ** (5 - group.length);
    const from = Number(group) * span;
    if (groupLengths.get(prefix)?.[from] !== group.length)
      throw new RangeTableError(
        `Group ${prefix}-${group} does not fit the group lengths of prefix ${prefix}.`,
      );
    const offset = (prefix === '979' ? 100_000 : 0) + from;
    if (groupAt[offset] !== 0) throw new RangeTableError(`Group ${prefix}-${group} appears twice.`);
    groupAt.fill(i + 1, offset, offset + span);
  });
  return groupAt;
}

/** The group that owns a number, or null where no group is in use. `nine` is the value of the nine digits after the prefix. */
export function groupOf(table: RangeTable, prefix979: boolean, nine: number): GroupRanges | null {
  const at = table.groupAt[(prefix979 ? 100_000 : 0) + Math.floor(nine / 10_000)] ?? 0;
  return at === 0 ? null : (table.groups[at - 1] ?? null);
}

const POWERS = [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000];

/** Registrant length for the nine digits after the prefix; 0 where the range is not in use (STANDARDS A9). */
export function registrantLength(group: GroupRanges, nine: number): number {
  const width = 9 - group.group.length;
  const rest = nine % (POWERS[width] ?? 1);
  const seven = width >= 7 ? Math.floor(rest / (POWERS[width - 7] ?? 1)) : rest * (POWERS[7 - width] ?? 1);
  const { ends, lengths } = group;
  let low = 0;
  let high = ends.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (seven > (ends[middle] ?? 0)) low = middle + 1;
    else high = middle;
  }
  return lengths[low] ?? 0;
}
