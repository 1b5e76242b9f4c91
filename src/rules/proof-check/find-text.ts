import type { Box, TextLine } from '../../contract/proof-checks/facts.ts';
import type { Place } from './place-line.ts';
import { bareText, nearName } from './wording.ts';

/** The lines of one page, as one run of letters without spaces, so that broken words and spaced letters are found. */
interface Run {
  page: number;
  lines: readonly TextLine[];
  letters: string;
  /** For each letter: the line it stands in, and whether a word begins there. */
  line: number[];
  begins: boolean[];
  words: { word: string; line: number }[];
}

/** Text of several pages, ready to be searched. */
export interface Searched {
  runs: readonly Run[];
  lines: readonly TextLine[];
}

const HYPHENATED = /[\p{L}\p{N}][-\u2010\u00ad]$/u;

function runOf(page: number, lines: readonly TextLine[]): Run {
  const run: Run = { page, lines, letters: '', line: [], begins: [], words: [] };
  let broken = false;
  for (const [index, { text }] of lines.entries()) {
    for (const [i, word] of bareText(text).split(' ').entries()) {
      run.words.push({ word, line: index });
      for (const [at, letter] of [...word].entries()) {
        run.letters += letter;
        for (let unit = 0; unit < letter.length; unit += 1) {
          run.line.push(index);
          // Whether a hyphen at the end of a line is the word's own is not to be known: both readings hold.
          run.begins.push(unit === 0 && at === 0 && !(broken && i === 0));
        }
      }
    }
    broken = HYPHENATED.test(text);
  }
  return run;
}

export function searched(lines: readonly TextLine[]): Searched {
  const pages = Map.groupBy(lines, ({ page }) => page);
  return { lines, runs: [...pages].map(([page, own]) => runOf(page, own)) };
}

/** A place that takes in several lines. */
export function placeOf(lines: readonly TextLine[]): Place | null {
  const [first] = lines;
  if (first === undefined) return null;
  const box = lines.reduce((whole, line) => around(whole, line.box), first.box);
  return { page: first.page, box };
}

function around(a: Box, b: Box): Box {
  const xPt = Math.min(a.xPt, b.xPt);
  const yPt = Math.min(a.yPt, b.yPt);
  const widthPt = Math.max(a.xPt + a.widthPt, b.xPt + b.widthPt) - xPt;
  const heightPt = Math.max(a.yPt + a.heightPt, b.yPt + b.heightPt) - yPt;
  return { xPt, yPt, widthPt, heightPt };
}

const lettersOf = (text: string) => bareText(text).replaceAll(' ', '');

/**
 * The lines in which a text stands, whatever its case, accents, quotes, ligatures, spacing and hyphenation; null where it
 * does not. Words have to begin and end as sought: 'art' is not found in 'party'.
 */
export function linesHolding({ runs }: Searched, sought: string): readonly TextLine[] | null {
  return linesWith(runs, lettersOf(sought));
}

function linesWith(runs: readonly Run[], letters: string): readonly TextLine[] | null {
  if (letters === '') return null;
  for (const run of runs)
    for (let at = run.letters.indexOf(letters); at >= 0; at = run.letters.indexOf(letters, at + 1)) {
      const end = at + letters.length;
      if (!run.begins[at] || (end < run.letters.length && !run.begins[end])) continue;
      return run.lines.slice(run.line[at], (run.line[end - 1] ?? 0) + 1);
    }
  return null;
}

/** Two or three letters drawn as one sign: some programs keep only the first of them in the text of the file. */
const LIGATURES = /f(?:f[il]|[fil])/g;

/** The lines in which a text stands but for letters of ligatures that the file's text has lost; null where it does not. */
export function linesWithoutLigatures({ runs }: Searched, sought: string): readonly TextLine[] | null {
  const letters = lettersOf(sought);
  const kept = letters.replaceAll(LIGATURES, 'f');
  return kept === letters ? null : linesWith(runs, kept);
}

/** Lines that likely hold a text misspelt: as many words in a row, at most two letters apart from it. */
export function linesNearly({ runs }: Searched, sought: string): readonly TextLine[] | null {
  const count = bareText(sought).split(' ').length;
  for (const { lines, words } of runs)
    for (let i = 0; i + count <= words.length; i += 1) {
      const part = words.slice(i, i + count);
      if (nearName(part.map(({ word }) => word).join(' '), sought))
        return lines.slice(part[0]?.line, (part.at(-1)?.line ?? 0) + 1);
    }
  return null;
}

export const textOf = (lines: readonly TextLine[]) => lines.map(({ text }) => text).join(' / ');
