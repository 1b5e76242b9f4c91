import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ProofRecord } from '../../../src/rules/proof-check/record.ts';
import { drawPdf } from './pdf.ts';
import { proofRecord } from './record.ts';

/** 5.5 × 8.5 in, the trim of the recorded hardcover. */
export const WIDTH = 396;
export const HEIGHT = 612;

/** Pages of an interior by their lines; an empty page is blank. */
export type Pages = readonly (readonly string[])[];

const WORDS =
  'the tide turned over the fen and the keeper of the light wrote another line while harbour bells rang for salt'.split(
    ' ',
  );

/** A page of running text that is another for each number. */
function running(page: number): string[] {
  return Array.from({ length: 24 }, (_, line) =>
    Array.from(
      { length: 9 },
      (_, i) => WORDS[(page * 7 + line * 5 + i * (1 + (page % 3))) % WORDS.length],
    ).join(' '),
  );
}

export const TITLE_PAGE: readonly string[] = [
  'Maren Oskarsdal',
  'The Salt Almanac',
  'With a foreword by Tobias Wrenfield',
  'Halyard & Fen',
];
export const IMPRINT_PAGE: readonly string[] = [
  'First published 2019',
  'Second edition 2027',
  '© 2019, 2027 Maren Oskarsdal',
  'Halyard & Fen, Nettlewick',
  'ISBN 979-8-969999-02-2 (paperback)',
  'ISBN 979-8-969999-03-9 (hardcover)',
  'ISBN 979-8-969999-04-6 (e-book)',
];

/** The second edition of the demo press's novel in 24 pages. */
export const SALT_ALMANAC: Pages = [
  ['The Salt Almanac'],
  [],
  TITLE_PAGE,
  IMPRINT_PAGE,
  ...Array.from({ length: 20 }, (_, i) => running(i + 5)),
];

/** What is on record of it. */
export const interiorRecord = (changes: Partial<ProofRecord> = {}) => proofRecord({ pages: 24, ...changes });

/** An interior with one page in another's place. */
export const withPage = (page: number, lines: readonly string[], pages: Pages = SALT_ALMANAC): Pages =>
  pages.map((own, i) => (i === page - 1 ? lines : own));

/** The back of the title page with one line changed or, for null, left out. */
export const withImprint = (from: string, to: string | null): Pages =>
  withPage(
    4,
    IMPRINT_PAGE.flatMap((line) => (line === from ? (to === null ? [] : [to]) : [line])),
  );

interface Drawing {
  size?: (page: number) => [number, number];
  options?: PDFKit.PDFDocumentOptions;
  /** Draws more on a page, before its text. */
  more?: (doc: PDFKit.PDFDocument, page: number) => void;
  /** Offset of the trimmed page on the sheet, where it carries a bleed. */
  inset?: number;
  boxes?: boolean;
}

/** Draws pages with PDFKit, embedded fonts, black on white. */
export function drawInterior(pages: Pages = SALT_ALMANAC, drawing: Drawing = {}): Promise<Uint8Array> {
  const { size = () => [WIDTH, HEIGHT], options = {}, more, inset = 0, boxes = false } = drawing;
  return drawPdf({ margin: 0, ...options }, (doc) => {
    for (const [i, lines] of pages.entries()) {
      const [width, height] = size(i + 1);
      doc.addPage({ size: [width + 2 * inset, height + 2 * inset], margin: 0 });
      if (boxes) Object.assign(doc.page.dictionary.data, sheetBoxes(width, height, inset));
      more?.(doc, i + 1);
      doc.fillColor('black').fontSize(10);
      for (const [at, line] of lines.entries())
        doc.text(line, inset + 54, inset + 60 + at * 18, { lineBreak: false });
    }
  });
}

const sheetBoxes = (width: number, height: number, inset: number) => ({
  TrimBox: [inset, inset, inset + width, inset + height],
  BleedBox: [0, 0, width + 2 * inset, height + 2 * inset],
});

/** Sends a file through an outside program that reads IN and writes OUT. */
export function through(bytes: Uint8Array, program: string, args: readonly string[]): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), 'through-'));
  try {
    const [from, to] = [join(folder, 'in.pdf'), join(folder, 'out.pdf')];
    writeFileSync(from, bytes);
    execFileSync(
      program,
      args.map((arg) => arg.replace('IN', from).replace('OUT', to)),
      { stdio: 'pipe' },
    );
    return readFileSync(to);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Pages set by groff, in its own Times; embedded or not. */
export function groffInterior(pages: Pages, embedded: boolean): Uint8Array {
  const quoted = (line: string) =>
    line.replaceAll('\\', '\\e').replaceAll('©', '\\(co').replace(/^[.']/, '\\&$&');
  const source = pages.map((lines) => [...lines.map(quoted), ''].join('\n.br\n')).join('\n.bp\n');
  const paper = ['-P', `-p${HEIGHT / 72}i,${WIDTH / 72}i`];
  return execFileSync('groff', ['-Tpdf', ...paper, ...(embedded ? ['-P', '-e'] : [])], {
    input: `.pl ${HEIGHT}p\n.po 54p\n.ll 4i\n.nf\n${source}\n`,
    maxBuffer: 64 * 1024 * 1024,
  });
}
