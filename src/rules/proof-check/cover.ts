import type { BarcodeFacts, CheckLine, PdfFacts, PictureFacts } from '../../contract/proof-checks/facts.ts';
import {
  barcodeColourLine,
  barcodeIsbnLine,
  barcodeLine,
  barcodePlaceLine,
  barcodeSizeLine,
  mainCode,
  quietLine,
} from './cover-barcode.ts';
import { bleedLine } from './cover-bleed.ts';
import { fitOf } from './cover-fit.ts';
import { frontLine, pictureSizeLine, unreadWordsLine } from './cover-picture.ts';
import { type Laid, laidOver } from './cover-place.ts';
import { priceLine } from './cover-price.ts';
import { fileLines, pictureResolutionLine, resolutionLine } from './cover-print.ts';
import { pagesLine, type SheetSeen, sheetOfPage, sheetOfPicture, sizeLine } from './cover-size.ts';
import { safeLine, spineLine } from './cover-text-place.ts';
import { editionLine, namesLine, titleLine, typedIsbnLine } from './cover-words.ts';
import type { ProofRecord } from './record.ts';

/** A cover against the record: a full sheet of a printed book, or the picture of an e-book or audiobook. */
export function checkCover(facts: PdfFacts | PictureFacts, record: ProofRecord): CheckLine[] {
  if (record.made !== 'print') return frontLines(facts, record);
  return facts.of === 'pdf' ? pdfLines(facts, record) : pictureLines(facts, record);
}

function fitting(seen: SheetSeen, record: ProofRecord) {
  const fit = fitOf(seen.size, record, record.figures.coverToleranceUm);
  return { fit, laid: fit && laidOver(fit, seen) };
}

function pdfLines(facts: PdfFacts, record: ProofRecord): CheckLine[] {
  const [page] = facts.pages;
  if (page === undefined) return [pagesLine(facts)];
  const seen = sheetOfPage(page);
  const { fit, laid } = fitting(seen, record);
  const lines = facts.lines.filter((line) => line.page === 1);
  return [
    pagesLine(facts),
    sizeLine(seen, fit, record),
    bleedLine(seen, laid, facts.edges, record),
    ...barcodeLines(facts.barcodes, laid, true, record),
    typedIsbnLine(facts, record),
    titleLine(facts, record),
    ...namesLine(facts, record),
    ...editionLine(facts, record),
    ...(laid === null ? [] : [spineLine(lines, laid, record), safeLine(lines, laid, record)]),
    resolutionLine(facts, record),
    ...fileLines(facts),
  ];
}

function pictureLines(facts: PictureFacts, record: ProofRecord): CheckLine[] {
  const seen = facts.ppi === null ? null : sheetOfPicture(facts, facts.ppi);
  const { fit, laid } = seen === null ? { fit: null, laid: null } : fitting(seen, record);
  return [
    pictureSizeLine(facts, seen, fit, record),
    ...(seen === null ? [] : [bleedLine(seen, laid, facts.edges, record)]),
    ...barcodeLines(facts.barcodes, laid, facts.ppi !== null, record),
    unreadWordsLine(),
    pictureResolutionLine(facts, record),
  ];
}

function barcodeLines(
  codes: readonly BarcodeFacts[],
  laid: Laid | null,
  ppiKnown: boolean,
  record: ProofRecord,
): CheckLine[] {
  const code = mainCode(codes, record);
  if (code === undefined) return [barcodeLine(codes)];
  return [
    barcodeLine(codes),
    barcodeIsbnLine(codes, record),
    priceLine(code, record),
    barcodeSizeLine(code, ppiKnown, record),
    quietLine(code),
    barcodeColourLine(code),
    ...(laid === null ? [] : [barcodePlaceLine(code, laid)]),
  ];
}

/** Bar codes have no use on what is sold as a file; one that is there belongs to the printed book. */
function frontLines(facts: PdfFacts | PictureFacts, record: ProofRecord): CheckLine[] {
  const codes = facts.barcodes;
  return [
    ...(facts.of === 'picture' ? [frontLine(facts), unreadWordsLine()] : [pagesLine(facts)]),
    ...(facts.of === 'pdf' ? [titleLine(facts, record), ...namesLine(facts, record)] : []),
    ...(facts.of === 'pdf' ? editionLine(facts, record) : []),
    ...(codes.length > 0 ? [barcodeIsbnLine(codes, record)] : []),
  ];
}
