import type { Box, CheckLine, CheckState } from '../../contract/proof-checks/facts.ts';
import { textLineOf } from './line.ts';
import type { ProofRecord } from './record.ts';

/** A place on a page; without a box the whole page is meant. */
export interface Place {
  page: number;
  box: Box | null;
}

interface Said {
  expected?: string;
  found?: string;
  advice?: string;
  place?: Place | null | undefined;
}

/** One line of a result with the place on a page where it was seen. */
export function placedLineOf(check: string, label: string, state: CheckState, said: Said = {}): CheckLine {
  const { place, ...words } = said;
  return {
    ...textLineOf(check, label, state, { ...words, page: place?.page ?? null }),
    box: place?.box ?? null,
  };
}

const MOST_RANGES = 12;

/** 'page 3', 'pages 3, 7–9 and 12', counted from 1; the rest of a long list is counted. */
export function pagesNamed(pages: readonly number[]): string {
  const ranges: [number, number][] = [];
  for (const page of pages) {
    const last = ranges.at(-1);
    if (last && page === last[1] + 1) last[1] = page;
    else ranges.push([page, page]);
  }
  const told = ranges
    .slice(0, MOST_RANGES)
    .map(([from, to]) => (from === to ? String(from) : `${from}–${to}`));
  const left =
    pages.length - ranges.slice(0, MOST_RANGES).reduce((sum, [from, to]) => sum + to - from + 1, 0);
  if (left > 0) return `pages ${told.join(', ')} and ${left} more`;
  if (pages.length === 1) return `page ${told[0]}`;
  const last = told.pop() ?? '';
  return told.length === 0 ? `pages ${last}` : `pages ${told.join(', ')} and ${last}`;
}

export const counted = (count: number, one: string) =>
  `${count.toLocaleString('en')} ${one}${count === 1 ? '' : 's'}`;

/** 1 pt is 1/72 in, so 352.777… µm. */
const UM_PER_PT = 25_400 / 72;
export const umOf = (pt: number) => pt * UM_PER_PT;

/** A length as shown: to a tenth of a millimetre or a thousandth of an inch. */
const shownLength = (um: number, unit: ProofRecord['lengthUnit']) =>
  unit === 'in' ? String(Number((um / 25_400).toFixed(3))) : String(Number((um / 1_000).toFixed(1)));

/** '139.7 × 215.9 mm' */
export const shownSize = (widthUm: number, heightUm: number, unit: ProofRecord['lengthUnit']) =>
  `${shownLength(widthUm, unit)} × ${shownLength(heightUm, unit)} ${unit}`;

export const shownUm = (um: number, unit: ProofRecord['lengthUnit']) => `${shownLength(um, unit)} ${unit}`;
