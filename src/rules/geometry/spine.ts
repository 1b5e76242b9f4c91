import type { Bulk } from './types.ts';

const UM_PER_INCH = 25_400;

/**
 * Thickness of the book block in micrometres, to the nearest: pages ÷ pages per inch, or leaves × thickness of a leaf
 * (STANDARDS E1). A leaf has two pages, so an odd count takes a leaf more than half (E5).
 */
export function blockThickness(pages: number, bulk: Bulk): number {
  const even = pages + (pages % 2);
  if ('leafUm' in bulk) return Math.round((even / 2) * bulk.leafUm);
  return Math.round((even * UM_PER_INCH) / bulk.pagesPerInch);
}

/** The page count a printer will bind: filled up with blank pages to a multiple (STANDARDS E5). */
export function boundPages(pages: number, multiple: number): number {
  return Math.ceil(pages / multiple) * multiple;
}
