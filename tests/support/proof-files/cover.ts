import { type BarcodeOptions, barcodeGeometry } from '../../../src/exchange/barcode/index.ts';
import { USUAL_FIGURES } from '../../../src/rules/geometry/figures.ts';
import type { Panel, PanelKind, Rect, Sheet, SheetKind } from '../../../src/rules/geometry/types.ts';
import { computed } from '../../../src/rules/proof-check/cover-fit.ts';
import type { ProofRecord } from '../../../src/rules/proof-check/record.ts';
import { drawPdf } from './pdf.ts';
import { proofRecord } from './record.ts';

/** An invented paperback of the demo press. */
export function coverRecord(changes: Partial<ProofRecord> = {}): ProofRecord {
  return proofRecord({
    formatName: 'Paperback',
    form: 'BC',
    isbn13: '9798969999022',
    siblings: [
      { isbn13: '9798969999039', name: 'Hardcover (jacket)' },
      { isbn13: '9798969999046', name: 'E-book (EPUB)' },
    ],
    pages: 312,
    trimWidthUm: 152_400,
    trimHeightUm: 228_600,
    bulk: { pagesPerInch: 444 },
    sheet: 'paperback cover',
    printer: USUAL_FIGURES,
    prices: [
      { currency: 'USD', amountMinor: 1_995 },
      { currency: 'GBP', amountMinor: 1_499 },
    ],
    ...changes,
  });
}

export interface DrawnCode {
  isbn13: string;
  addOn: BarcodeOptions['addOn'];
  magnification: number;
  ink: string;
  ground: string;
  /** White beside the bars, in modules; as the standard asks where it is left out. */
  ground_modules?: number;
  /** Share of the bars' height that is drawn. */
  height: number;
  /** From the place where it belongs, in millimetres. */
  movedMm: [number, number];
}

export interface DrawnCover {
  record: ProofRecord;
  kind: SheetKind;
  pages: number;
  /** How much of the sheet is the page, and whether boxes say where it is cut. */
  page: 'with boxes' | 'plain' | 'bare' | 'with marks';
  /** Colour of the ground, and whether it ends at the cut; null for white. */
  ground: string | null;
  groundEndsAtCut: boolean;
  ink: string;
  code: DrawnCode | null;
  typed: string | null;
  front: string[];
  back: string[];
  spine: string | null;
  spinePt: number;
  spineMovedMm: number;
  /** A text of its own at a place from the top left of the cut sheet, in millimetres. */
  stray: { text: string; xMm: number; yMm: number } | null;
  picture: { bytes: Uint8Array; widthMm: number } | null;
  morePages: number;
  /** Set in a standard font that is not put in. */
  bareFont: boolean;
}

export function cover(
  record: ProofRecord,
  changes: Partial<DrawnCover> = {},
  code: Partial<DrawnCode> = {},
): DrawnCover {
  return {
    record,
    kind: record.sheet ?? 'paperback cover',
    pages: record.pages ?? 0,
    page: 'with boxes',
    ground: '#1d3a4f',
    groundEndsAtCut: false,
    ink: '#ffffff',
    code: {
      isbn13: record.isbn13 ?? '',
      addOn: { kind: 'price', amountMinor: 1_995, currency: 'USD' },
      magnification: 100,
      ink: '#000000',
      ground: '#ffffff',
      height: 1,
      movedMm: [0, 0],
      ...code,
    },
    typed: 'ISBN 979-8-969999-02-2',
    front: ['The Salt', 'Almanac', 'Maren Oskarsdal'],
    back: ['A year of tides in Nettlewick.', 'With a foreword by Tobias Wrenfield', 'Second edition'],
    spine: 'Maren Oskarsdal · The Salt Almanac',
    spinePt: 11,
    spineMovedMm: 0,
    stray: null,
    picture: null,
    morePages: 0,
    bareFont: false,
    ...changes,
  };
}

const PT = 72 / 25_400;
const MM = 72 / 25.4;
const MARKS_PT = 36;

const panel = (sheet: Sheet, kind: PanelKind): Panel => {
  const found = sheet.panels.find((one) => one.kind === kind);
  if (!found) throw new Error(`The sheet has no ${kind}.`);
  return found;
};

/** Draws a cover with PDFKit. */
export function coverPdf(drawn: DrawnCover): Promise<Uint8Array> {
  const sheet = computed(drawn.record, drawn.kind, drawn.pages);
  if (!sheet) throw new Error('The sheet cannot be computed.');
  const margin = drawn.page === 'with marks' ? MARKS_PT : 0;
  const cut = drawn.page === 'bare' ? sheet.edge.um * PT : 0;
  const size: [number, number] = [
    sheet.widthUm * PT + 2 * margin - 2 * cut,
    sheet.heightUm * PT + 2 * margin - 2 * cut,
  ];
  return drawPdf({ size, margin: 0 }, (doc) => {
    doc.addPage({ size, margin: 0 });
    if (drawn.page === 'with boxes' || drawn.page === 'with marks') {
      const box = ({ xUm, yUm, widthUm, heightUm }: Rect) => [
        margin + xUm * PT,
        size[1] - margin - (yUm + heightUm) * PT,
        margin + (xUm + widthUm) * PT,
        size[1] - margin - yUm * PT,
      ];
      const whole = { xUm: 0, yUm: 0, widthUm: sheet.widthUm, heightUm: sheet.heightUm };
      Object.assign(doc.page.dictionary.data, { TrimBox: box(sheet.trimmed), BleedBox: box(whole) });
    }
    if (drawn.page === 'with marks') cropMarks(doc, sheet, margin);
    doc.translate(margin - cut, margin - cut);
    drawSheet(doc, sheet, drawn);
    for (let i = 0; i < drawn.morePages; i += 1) doc.addPage({ size, margin: 0 }).text('Inside', 100, 100);
  });
}

function cropMarks(doc: PDFKit.PDFDocument, sheet: Sheet, margin: number): void {
  const { xUm, yUm, widthUm, heightUm } = sheet.trimmed;
  doc.lineWidth(0.25).strokeColor('#000000');
  for (const x of [margin + xUm * PT, margin + (xUm + widthUm) * PT]) {
    doc.moveTo(x, 0).lineTo(x, 20).stroke();
    doc
      .moveTo(x, doc.page.height - 20)
      .lineTo(x, doc.page.height)
      .stroke();
  }
  for (const y of [margin + yUm * PT, margin + (yUm + heightUm) * PT]) {
    doc.moveTo(0, y).lineTo(20, y).stroke();
    doc
      .moveTo(doc.page.width - 20, y)
      .lineTo(doc.page.width, y)
      .stroke();
  }
}

function drawSheet(doc: PDFKit.PDFDocument, sheet: Sheet, drawn: DrawnCover): void {
  if (drawn.ground) {
    const { xUm, yUm, widthUm, heightUm } = sheet.trimmed;
    if (drawn.groundEndsAtCut) doc.rect(xUm * PT, yUm * PT, widthUm * PT, heightUm * PT).fill(drawn.ground);
    else doc.rect(0, 0, sheet.widthUm * PT, sheet.heightUm * PT).fill(drawn.ground);
  }
  if (drawn.bareFont) doc.font('Helvetica');
  if (drawn.picture) {
    const front = panel(sheet, 'front cover');
    doc.image(Buffer.from(drawn.picture.bytes), (front.xUm + 30_000) * PT, (front.yUm + 120_000) * PT, {
      width: drawn.picture.widthMm * MM,
    });
  }
  doc.fillColor(drawn.ink);
  write(doc, panel(sheet, 'front cover'), drawn.front, 26);
  write(doc, panel(sheet, 'back cover'), drawn.back, 12);
  if (drawn.spine) writeSpine(doc, panel(sheet, 'spine'), drawn.spine, drawn);
  if (drawn.stray) {
    const { text, xMm, yMm } = drawn.stray;
    doc
      .fontSize(10)
      .text(text, sheet.trimmed.xUm * PT + xMm * MM, sheet.trimmed.yUm * PT + yMm * MM, { lineBreak: false });
  }
  if (drawn.code) drawCode(doc, sheet, drawn.code);
  if (drawn.typed) {
    const back = panel(sheet, 'back cover');
    doc.fillColor(drawn.ink).fontSize(9);
    doc.text(drawn.typed, (back.xUm + 12_000) * PT, (back.yUm + back.heightUm - 20_000) * PT, {
      lineBreak: false,
    });
  }
}

function write(doc: PDFKit.PDFDocument, at: Panel, lines: readonly string[], size: number): void {
  doc.fontSize(size);
  for (const [i, line] of lines.entries())
    doc.text(line, (at.xUm + 15_000) * PT, (at.yUm + 25_000) * PT + i * size * 1.6, { lineBreak: false });
}

/** Reads from head to foot. */
function writeSpine(doc: PDFKit.PDFDocument, at: Panel, text: string, drawn: DrawnCover): void {
  const x = (at.xUm + at.widthUm / 2) * PT + drawn.spineMovedMm * MM;
  const y = (at.yUm + 30_000) * PT;
  doc.save();
  doc.rotate(90, { origin: [x, y] });
  doc.fontSize(drawn.spinePt).text(text, x, y - drawn.spinePt * 0.68, { lineBreak: false });
  doc.restore();
}

function drawCode(doc: PDFKit.PDFDocument, sheet: Sheet, code: DrawnCode): void {
  const back = panel(sheet, 'back cover');
  const magnification = Math.max(80, code.magnification);
  const geometry = barcodeGeometry({ isbn13: code.isbn13, isbnLine: null, addOn: code.addOn, magnification });
  const by = (code.magnification / magnification) * MM;
  const right = (back.xUm + back.widthUm - 8_000) * PT + code.movedMm[0] * MM;
  const x = right - geometry.widthMm * by;
  const y = (back.yUm + back.heightUm - 8_000) * PT - geometry.heightMm * by + code.movedMm[1] * MM;
  const narrower =
    code.ground_modules === undefined ? 0 : (11 - code.ground_modules) * geometry.moduleMm * by;
  doc.rect(x + narrower, y, geometry.widthMm * by - narrower, geometry.heightMm * by).fill(code.ground);
  for (const bar of geometry.bars)
    doc.rect(x + bar.xMm * by, y + bar.yMm * by, bar.widthMm * by, bar.heightMm * by * code.height);
  doc.fill(code.ink);
}
