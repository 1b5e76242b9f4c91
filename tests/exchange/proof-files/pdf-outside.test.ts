import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import type { PageFacts, PdfFacts } from '../../../src/contract/proof-checks/facts.ts';
import { readPdf } from '../../../src/exchange/proof-files/pdf/read.ts';
import {
  drawInterior,
  groffInterior,
  HEIGHT,
  SALT_ALMANAC,
  through,
  WIDTH,
} from '../../support/proof-files/interior.ts';
import { officePdf } from '../../support/proof-files/office.ts';
import { drawPdf } from '../../support/proof-files/pdf.ts';
import { isHere } from '../../support/proof-files/programs.ts';

const folder = mkdtempSync(join(tmpdir(), 'pdf-outside-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const has = {
  qpdf: isHere('qpdf'),
  gs: isHere('gs'),
  groff: isHere('gropdf'),
  poppler: isHere('pdfinfo', '-v'),
};
const run = (program: string, ...args: string[]) =>
  execFileSync(program, args, { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 });

/** Files of several programs, by the one that made them; null where it is not here. */
const FILES: Readonly<Record<string, () => Promise<Uint8Array | null> | Uint8Array | null>> = {
  'PDFKit with trim and bleed boxes': () => drawInterior(SALT_ALMANAC, { inset: 9, boxes: true }),
  'PDFKit with fonts embedded and not': () =>
    drawPdf({ size: [WIDTH, HEIGHT] }, (doc) => {
      doc.addPage().text('Salt').font('Helvetica').text('Tide').font('Times-Italic').text('Fen');
    }),
  'PDFKit protected by its owner': () => drawInterior(SALT_ALMANAC, { options: { ownerPassword: 'fen' } }),
  'groff with fonts embedded': () => (has.groff ? groffInterior(SALT_ALMANAC, true) : null),
  'groff with fonts not embedded': () => (has.groff ? groffInterior(SALT_ALMANAC, false) : null),
  'LibreOffice Writer': () => officePdf(WIDTH, HEIGHT, SALT_ALMANAC),
  'Ghostscript, cropped': async () =>
    has.gs
      ? through(await drawInterior(SALT_ALMANAC, { inset: 40 }), 'gs', [
          ...['-q', '-dBATCH', '-dNOPAUSE', '-dSAFER', '-sDEVICE=pdfwrite', '-sOutputFile=OUT'],
          ...['-c', '[/CropBox [40 40 436 652] /PAGES pdfmark', '-f', 'IN'],
        ])
      : null,
  'qpdf, packed and with a turned page': async () =>
    has.qpdf
      ? through(await drawInterior(), 'qpdf', ['--object-streams=generate', '--rotate=+90:9', 'IN', 'OUT'])
      : null,
};

/** 'Page    3 MediaBox:  0.00  0.00  396.00  612.00': left, bottom, right, top of the page as it lies. */
function poppler(path: string, pages: number) {
  const told = run('pdfinfo', '-box', '-f', '1', '-l', String(pages), path);
  const one = (name: string) => new RegExp(`^${name}: +(.*)$`, 'm').exec(told)?.[1]?.trim();
  const box = (page: number, kind: string) => {
    const [, corners = ''] = new RegExp(`^Page +${page} ${kind}Box: +(.*)$`, 'm').exec(told) ?? [];
    const [left = 0, bottom = 0, right = 0, top = 0] = corners.split(/ +/).map(Number);
    return [right - left, top - bottom];
  };
  const rotate = (page: number) => Number(new RegExp(`^Page +${page} rot: +(\\d+)$`, 'm').exec(told)?.[1]);
  return {
    pages: Number(one('Pages')),
    version: one('PDF version'),
    encrypted: one('Encrypted') !== 'no',
    box,
    rotate,
  };
}

/** Width and height of a box of ours as it lies in the file, unstated ones as the standard has them (ISO 32000-1, 14.11.2). */
function ours({ media, crop, bleed, trim, rotate }: PageFacts, kind: string): number[] {
  const box =
    { Media: media, Crop: crop ?? media, Bleed: bleed ?? crop ?? media, Trim: trim ?? crop ?? media }[kind] ??
    media;
  return rotate % 180 === 0 ? [box.widthPt, box.heightPt] : [box.heightPt, box.widthPt];
}

/** Without the mark of a subset, which one reader keeps and another does not. */
const fontName = (name = '') => name.replace(/^[A-Z]{6}\+/, '');

/** Names and whether they are embedded, by pdffonts: the columns before the object's number are from the right. */
const fontsByPoppler = (path: string) =>
  run('pdffonts', path)
    .split('\n')
    .slice(2)
    .filter(Boolean)
    .map(
      (line) =>
        `${fontName(line.split(/ +/)[0])} ${/(yes|no) +(?:yes|no) +(?:yes|no) +\d+ +\d+ *$/.exec(line)?.[1]}`,
    )
    .sort();

const bare = (text: string) => text.replaceAll(/\s/g, '');

function textsAgree(facts: PdfFacts, path: string): void {
  const pages = Map.groupBy(facts.lines, ({ page }) => page);
  for (const [page, lines] of pages) {
    const theirs = run('pdftotext', '-raw', '-f', String(page), '-l', String(page), path, '-');
    expect(bare(lines.map(({ text }) => text).join('')).normalize('NFKC'), `page ${page}`).toBe(
      bare(theirs).normalize('NFKC'),
    );
  }
}

for (const [name, make] of Object.entries(FILES))
  test.skipIf(!has.poppler)(
    `of a file by ${name} outside programs tell the same`,
    async ({ skip }) => {
      const bytes = await make();
      if (bytes === null) return skip('the program that makes it is not on this machine');
      const path = join(folder, `${name.replaceAll(/\W/g, '-')}.pdf`);
      writeFileSync(path, bytes);
      const { facts } = await readPdf(path, { step: () => {} });
      const told = poppler(path, facts.pages.length);

      expect([facts.pages.length, facts.version, facts.encrypted]).toEqual([
        told.pages,
        told.version,
        told.encrypted,
      ]);
      if (has.qpdf) expect(Number(run('qpdf', '--show-npages', path))).toBe(facts.pages.length);
      for (const [i, page] of facts.pages.entries()) {
        expect(page.rotate).toBe(told.rotate(i + 1));
        for (const kind of ['Media', 'Crop', 'Bleed', 'Trim'])
          for (const side of [0, 1])
            expect(ours(page, kind)[side], `${kind} box of page ${i + 1}`).toBeCloseTo(
              told.box(i + 1, kind)[side] ?? 0,
              1,
            );
      }
      expect(
        facts.fonts.map((font) => `${fontName(font.name)} ${font.embedded ? 'yes' : 'no'}`).sort(),
      ).toEqual([...new Set(fontsByPoppler(path))]);
      textsAgree(facts, path);
    },
    120_000,
  );
