import { createRequire } from 'node:module';
import isbn3 from 'isbn3';
import { describe, expect, it } from 'vitest';
import { parseIsbn, splitIsbn } from '../../src/rules/isbn/index.ts';
import { anyNumber, edgeNumbers, sequence } from '../rules/isbn/numbers.ts';

/** Both packages keep, for each group, the first and last registrant of every range (isbn3 2.0.11, isbn-utils 1.1.0; MIT). isbn3 2.0.11 appeared on
 * 2026-09-10 (npm), after the message of 2026-08-22 that the bundled table comes from; isbn-utils is years older. */
type PeerGroups = Record<string, { name: string; ranges: string[][] }>;

/** isbn-utils comes without types. */
const require = createRequire(import.meta.url);
const olderGroups: PeerGroups = require('isbn-utils/lib/groups.js');
const isbnUtils: { parse(text: string, groups: PeerGroups): { asIsbn13(hyphens: boolean): string } | null } =
  require('isbn-utils');

const HOW_MANY = 100_000;

/** Numbers at both ends of every rule, then random ones up to a hundred thousand. */
function inputs(): string[] {
  const next = sequence(20_161_125);
  const edges = edgeNumbers().map(({ isbn13 }) => isbn13);
  return [...edges, ...Array.from({ length: HOW_MANY - edges.length }, () => anyNumber(next))];
}

/** How long the registrant of a number is by another package's table: the group's name, and the length; '' where unknown. */
function ruleOf(groups: PeerGroups, isbn13: string): string {
  for (let size = 1; size <= 5; size += 1) {
    const name = `${isbn13.slice(0, 3)}-${isbn13.slice(3, 3 + size)}`;
    const rest = isbn13.slice(3 + size);
    const range = groups[name]?.ranges.find(([from = '', to = '']) => {
      const registrant = rest.slice(0, from.length);
      return from <= registrant && registrant <= to;
    });
    if (range !== undefined) return `${name}:${range[0]?.length}`;
  }
  return '';
}

function ourRule(isbn13: string): string {
  const parts = splitIsbn(isbn13);
  return parts === null ? '' : `${parts.prefix}-${parts.group}:${parts.registrant.length}`;
}

/** Runs another package over the inputs; every disagreement must go back to a rule that its table, of another date, has otherwise. */
function compare(name: string, groups: PeerGroups, hyphenate: (isbn13: string) => string | null): void {
  const count = { agreed: 0, 'valid only here': 0, 'valid only there': 0, 'parted otherwise': 0 };
  const unexplained: string[] = [];
  for (const isbn13 of inputs()) {
    const read = parseIsbn(isbn13);
    const ours = read.ok ? read.isbn.hyphenated : null;
    const theirs = hyphenate(isbn13);
    if (ours === theirs) count.agreed += 1;
    else if (theirs === null) count['valid only here'] += 1;
    else if (ours === null) count['valid only there'] += 1;
    else count['parted otherwise'] += 1;
    if (ours !== theirs && ourRule(isbn13) === ruleOf(groups, isbn13)) unexplained.push(isbn13);
  }
  console.log(`${name}: ${HOW_MANY} numbers, ${JSON.stringify(count)}, unexplained ${unexplained.length}`);
  expect(unexplained).toEqual([]);
  expect(count.agreed).toBeGreaterThan(HOW_MANY * 0.8);
}

describe('other packages', () => {
  it('isbn3 agrees wherever its table has the same rule', () => {
    compare('isbn3 2.0.11', isbn3.groups as PeerGroups, (isbn13) => isbn3.parse(isbn13)?.isbn13h ?? null);
  });

  it('isbn-utils agrees wherever its table has the same rule', () => {
    // It searches its groups one by one: handing it those with the same first digit keeps the run short.
    const nearby = new Map<string, PeerGroups>();
    for (const [name, group] of Object.entries(olderGroups)) {
      const first = name.replace('-', '').slice(0, 4);
      nearby.set(first, { ...nearby.get(first), [name]: group });
    }
    compare(
      'isbn-utils 1.1.0',
      olderGroups,
      (isbn13) => isbnUtils.parse(isbn13, nearby.get(isbn13.slice(0, 4)) ?? {})?.asIsbn13(true) ?? null,
    );
  });

  it('agree on ten-digit numbers too', () => {
    const next = sequence(10);
    let compared = 0;
    for (let i = 0; i < 5_000; i += 1) {
      const read = parseIsbn(anyNumber(next));
      if (!read.ok || read.isbn.isbn10 === null) continue;
      const theirs = isbn3.parse(read.isbn.isbn10);
      if (theirs === null || theirs.isbn13h !== read.isbn.hyphenated) continue;
      compared += 1;
      expect(theirs.isbn10).toBe(read.isbn.isbn10);
      const back = parseIsbn(theirs.isbn10h ?? '');
      expect(back).toMatchObject({ ok: true, form: 'isbn10', isbn: { isbn13: theirs.isbn13 } });
    }
    expect(compared).toBeGreaterThan(2_500);
  });
});
