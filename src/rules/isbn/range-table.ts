import bundled from '../../../resources/isbn-ranges.json' with { type: 'json' };
import { checkRangeData, type RangeRule } from './range-data.ts';

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

/** The agency's ranges, compiled. */
export interface RangeTable {
  source: string;
  serial: string | null;
  issued: string;
  /** Day of the message, YYYY-MM-DD. */
  date: string;
  groups: readonly GroupRanges[];
  /**
   * By the five digits after the prefix, those of 979 offset by 100,000: where that decides it, the number's place as
   * `locate` answers it, otherwise the same with MIXED in place of the length. Two in a thousand cells are mixed.
   */
  cells: Uint16Array;
  /**
   * By the first four of those digits: the place where all ten cells agree on it, otherwise UNDECIDED. Decides most
   * numbers, and unlike the cells it stays in the processor's nearest cache.
   */
  coarse: Uint16Array;
}

const MIXED = 15;
const UNDECIDED = 0xffff;
const POWERS = Int32Array.from({ length: 10 }, (_, i) => 10 ** i);

let bundledTable: RangeTable | null = null;
let loadedTable: RangeTable | null = null;

/** The bundled table, with the date, serial and source of the message it was made from. Compiled once. */
export function bundledRangeTable(): RangeTable {
  bundledTable ??= loadRangeTable(bundled);
  return bundledTable;
}

/** The table that is in use where none is named: the bundled one, or a newer one loaded by the user. */
export function rangeTable(): RangeTable {
  return loadedTable ?? bundledRangeTable();
}

/** Puts a newer table in use for this process, or with null the bundled one again. */
export function putRangeTableInUse(table: RangeTable | null): void {
  loadedTable = table;
}

/** Compiles range data in its JSON form. Throws RangeTableError as checkRangeData does. */
export function loadRangeTable(data: unknown): RangeTable {
  const { source, serial, issued, date, groups } = checkRangeData(data);
  const compiled = groups.map(([name, agency, list]) => compileGroup(name, agency, list));
  const cells = new Uint16Array(200_000);
  compiled.forEach((group, index) => {
    fillCells(cells, group, index);
  });
  return { source, serial, issued, date, groups: compiled, cells, coarse: coarsen(cells) };
}

function compileGroup(name: string, agency: string, list: readonly RangeRule[]): GroupRanges {
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
    prefix: name.startsWith('978') ? '978' : '979',
    group: name.slice(4),
    agency,
    head: `${name}-`,
    digits: name.replace('-', ''),
    rules: list,
    ends: Int32Array.from(ends),
    lengths: Uint8Array.from(lengths),
  };
}

function fillCells(cells: Uint16Array, group: GroupRanges, index: number): void {
  const span = 10 ** (5 - group.group.length);
  const first = Number(group.group) * span;
  const offset = group.prefix === '979' ? 100_000 : 0;
  for (let cell = first; cell < first + span; cell += 1) {
    const low = runAt(group, cell * 10_000);
    const high = runAt(group, cell * 10_000 + 9_999);
    cells[offset + cell] = ((index + 1) << 4) | (low === high ? (group.lengths[low] ?? 0) : MIXED);
  }
}

function coarsen(cells: Uint16Array): Uint16Array {
  return Uint16Array.from({ length: cells.length / 10 }, (_, i) => {
    const place = cells[i * 10] ?? 0;
    const decided =
      (place & 15) !== MIXED && cells.subarray(i * 10, i * 10 + 10).every((cell) => cell === place);
    return decided ? place : UNDECIDED;
  });
}

/** The run of equal length that the nine digits after the prefix fall in, as an index into ends and lengths. */
function runAt(group: GroupRanges, nine: number): number {
  const width = 9 - group.group.length;
  const rest = nine % (POWERS[width] ?? 1);
  // The rules speak of seven digits after the group, filled up with zeros where fewer are left (STANDARDS A9).
  const seven = width >= 7 ? (rest / (POWERS[width - 7] ?? 1)) | 0 : Math.imul(rest, POWERS[7 - width] ?? 1);
  const { ends } = group;
  let low = 0;
  let high = ends.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (seven > (ends[middle] ?? 0)) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Where a number belongs: 16 × (1 + index into groups) + registrant length. 0 where no group is in use; a length of 0
 * where the group has no registrants there. `nine` is the value of the nine digits after the prefix.
 */
export function locate(table: RangeTable, prefix979: boolean, nine: number): number {
  const quick = table.coarse[(((nine | 0) / 100_000) | 0) + (prefix979 ? 10_000 : 0)] ?? 0;
  if (quick !== UNDECIDED) return quick;
  const cell = table.cells[(((nine | 0) / 10_000) | 0) + (prefix979 ? 100_000 : 0)] ?? 0;
  if ((cell & 15) !== MIXED) return cell;
  const group = table.groups[(cell >> 4) - 1];
  return group === undefined ? 0 : cell - MIXED + (group.lengths[runAt(group, nine)] ?? 0);
}

/** The group of a place that `locate` answered; null for 0. */
export function groupAt(table: RangeTable, place: number): GroupRanges | null {
  return table.groups[(place >> 4) - 1] ?? null;
}

/** The registrant length of a place that `locate` answered; 0 is not in use. */
export function lengthAt(place: number): number {
  return place & 15;
}
