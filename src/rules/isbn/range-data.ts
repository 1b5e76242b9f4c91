import { z } from 'zod';

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
    .max(4_000),
});
export type RangeData = z.infer<typeof rangeData>;
export type RangeRule = z.infer<typeof rule>;

/** Thrown for range data that does not hold together; the message is one sentence that names the place. */
export class RangeTableError extends Error {
  override readonly name = 'RangeTableError';
}

/**
 * Parses range data in its JSON form and checks that it holds together: ranges in order without overlap and aligned
 * to their length, room left for a publication element, groups in agreement with their prefix.
 * Throws RangeTableError naming the first place that does not hold.
 */
export function checkRangeData(data: unknown): RangeData {
  const parsed = rangeData.safeParse(data);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    const place = issue?.path.join('.') || 'its top';
    throw new RangeTableError(`The range table is malformed at ${place}: ${issue?.message ?? 'unreadable'}.`);
  }
  const { prefixes, groups } = parsed.data;
  const byPrefix = new Map<string, readonly RangeRule[]>();
  for (const [prefix, , list] of prefixes) {
    if (byPrefix.has(prefix)) throw new RangeTableError(`Prefix ${prefix} appears twice.`);
    checkRules(prefix, list, 5);
    byPrefix.set(prefix, list);
  }
  const seen = new Set<string>();
  for (const [name, , list] of groups) {
    if (seen.has(name)) throw new RangeTableError(`Group ${name} appears twice.`);
    seen.add(name);
    checkGroup(name, byPrefix.get(name.slice(0, 3)) ?? []);
    checkRules(name, list, Math.min(7, 12 - name.length));
  }
  return parsed.data;
}

function checkRules(place: string, list: readonly RangeRule[], longest: number): void {
  let previous = -1;
  for (const [from, to, length] of list) {
    const range = `${sevenDigits(from)}-${sevenDigits(to)}`;
    if (to < from) throw new RangeTableError(`Range ${range} of ${place} runs backwards.`);
    if (from <= previous)
      throw new RangeTableError(`Range ${range} of ${place} overlaps the one before it or is out of order.`);
    if (length > longest)
      throw new RangeTableError(`Range ${range} of ${place} has length ${length}, above ${longest}.`);
    const step = 10 ** (7 - length);
    if (length > 0 && (from % step !== 0 || (to + 1) % step !== 0))
      throw new RangeTableError(`Range ${range} of ${place} cuts through an element of ${length} digits.`);
    previous = to;
  }
}

/** The prefix's own rules must give every group exactly the length that its name has. */
function checkGroup(name: string, prefixRules: readonly RangeRule[]): void {
  const group = name.slice(4);
  const from = Number(group.padEnd(7, '0'));
  const within = prefixRules.find(([low, high]) => low <= from && from <= high);
  if (within?.[2] !== group.length)
    throw new RangeTableError(`Group ${name} does not fit the group lengths of prefix ${name.slice(0, 3)}.`);
}

function sevenDigits(value: number): string {
  return String(value).padStart(7, '0');
}
