import type { Contributor } from '../../../../src/contract/editions.ts';
import { type PastedName, readNames } from '../../../lib/paste/names.ts';
import { isRoleCode, settledRole } from '../parts/role-search.ts';

/** A pasted list of people: where it was pasted, and the ways it can be read. */
export interface PastedRows {
  index: number;
  text: string;
  /** The rows as they were. */
  before: readonly Contributor[];
  /** Each way as rows; more than one has to be chosen from. */
  ways: Contributor[][];
  /** The way that was taken. */
  taken: number | undefined;
}

/** A role out of the brackets where it is one; what else stood there stays with the name. */
function rowOf({ name, aside }: PastedName, role: string): Contributor {
  if (aside === '') return { role, name };
  const own = settledRole(aside);
  return isRoleCode(own) ? { role: own, name } : { role, name: `${name} (${aside})` };
}

/** What a text pasted into a name means, where it is more than one plain name; undefined for a plain one. */
export function pasteNames(
  before: readonly Contributor[],
  index: number,
  text: string,
): PastedRows | undefined {
  const reading = readNames(text);
  const role = before[index]?.role ?? '';
  const ways = (reading.kind === 'sure' ? [reading.names] : reading.ways).map((names) =>
    names.map((name) => rowOf(name, role)),
  );
  const [first] = ways;
  const plain = ways.length === 1 && first?.length === 1 && first[0]?.name === text.trim();
  if (!first || first.length === 0 || plain) return undefined;
  return { index, text: text.trim(), before, ways, taken: undefined };
}

/** The rows as they were, with those of the list in the place of the row that was pasted into. */
export function withPasted({ before, index }: PastedRows, rows: readonly Contributor[]): Contributor[] {
  return [...before.slice(0, index), ...rows, ...before.slice(index + 1)];
}
