import bwipjs from 'bwip-js/node';

/** Modules of the two parts, without quiet zones (STANDARDS B1, B3). */
export const MAIN_MODULES = 95;
export const ADD_ON_MODULES = 47;

/** A run of dark modules: where it starts and how many it spans. */
export interface Run {
  start: number;
  modules: number;
}

/**
 * The 95 modules of an EAN-13 symbol as '1' (bar) and '0' (space), guards included (STANDARDS B2).
 * @param isbn13 thirteen digits, check digit right
 */
export function mainModules(isbn13: string): string {
  return expand('ean13', isbn13, MAIN_MODULES);
}

/** The 47 modules of a five-digit add-on, from the first bar of its start to its last bar (STANDARDS B3). */
export function addOnModules(digits: string): string {
  return expand('ean5', digits, ADD_ON_MODULES);
}

/** The dark runs of a module string, left to right. */
export function darkRuns(modules: string): Run[] {
  return [...modules.matchAll(/1+/g)].map((match) => ({ start: match.index, modules: match[0].length }));
}

/** The encoder answers with widths in modules, bar and space by turns, beginning with a bar. */
function expand(symbology: string, text: string, length: number): string {
  const part = bwipjs.raw({ bcid: symbology, text })[0];
  if (part === undefined || !('sbs' in part)) throw new Error(`No linear symbol came back for ${symbology}.`);
  const modules = part.sbs.map((width, i) => (i % 2 === 0 ? '1' : '0').repeat(width)).join('');
  if (modules.length !== length)
    throw new Error(`${symbology} has ${modules.length} modules instead of ${length}.`);
  return modules;
}
