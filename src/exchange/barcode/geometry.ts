import { Refusal } from '../../contract/refusal.ts';
import { cellWidth, DIGIT_HEIGHT_EM, type Glyph } from './glyphs.ts';
import { ADD_ON_MODULES, addOnModules, darkRuns, MAIN_MODULES, mainModules } from './modules.ts';
import { type BarcodeContent, type BarcodeOptions, parseOptions } from './options.ts';

/** Module width at 100 %, in mm (STANDARDS B1). */
export const NOMINAL_MODULE_MM = 0.33;

/** Heights and type size at 100 %. */
const NOMINAL = {
  /** Ordinary bars (STANDARDS B1). */
  barMm: 22.85,
  /** From the top of the bars to the foot of the digits (STANDARDS B1, 25.91 to 25.93). */
  withDigitsMm: 25.93,
  /** What remains of that below the bars and a gap of one module. */
  digitMm: 2.75,
  /** The whole, with the ISBN line (STANDARDS B1: 38 × 31 mm). */
  totalWithLineMm: 31,
  /** Between the foot of the ISBN line and the bars: ours, no source gives a figure. */
  lineGapMm: 1.5,
  /** The ISBN manual's smallest type (STANDARDS A13). */
  linePt: 9,
} as const;

/** Lengths in modules: quiet zones and guards from STANDARDS B1, the add-on's from B3, margin and gap ours. */
const MODULES = {
  quietLeft: 11,
  quietRight: 7,
  addOnGap: 9,
  addOnQuietRight: 5,
  guardDrop: 5,
  margin: 1,
} as const;

const MM_PER_POINT = 25.4 / 72;

/** One bar. `startModule` counts from the left edge of the whole, the quiet zone included. */
export interface Bar {
  part: 'main' | 'addOn';
  guard: boolean;
  startModule: number;
  modules: number;
  xMm: number;
  yMm: number;
  widthMm: number;
  heightMm: number;
}

/** Every dimension of one bar code, in mm from the top left corner of its white ground, y downwards. */
export interface BarcodeGeometry {
  isbn13: string;
  isbnLine: string | null;
  /** Modules left to right, '1' a bar. */
  mainModules: string;
  magnificationPercent: number;
  moduleMm: number;
  barWidthReductionUm: number;
  /** The white ground: quiet zones, digits and line included. */
  widthMm: number;
  heightMm: number;
  quietLeftMm: number;
  /** White to the right of the main bars: 7 modules, or the gap of 9 before an add-on. */
  quietRightMm: number;
  mainWidthMm: number;
  barHeightMm: number;
  guardHeightMm: number;
  /** From the top of the bars to the foot of the digits. */
  heightWithDigitsMm: number;
  isbnLinePt: number | null;
  addOn: {
    digits: string;
    modules: string;
    gapMm: number;
    widthMm: number;
    barHeightMm: number;
    quietRightMm: number;
  } | null;
  bars: Bar[];
  glyphs: Glyph[];
  /** Advice, one sentence each; nothing here stops the drawing. */
  notes: string[];
}

/**
 * All dimensions of the bar code of a book, without drawing it.
 * @throws Refusal BAD_INPUT naming the field
 */
export function barcodeGeometry(options: BarcodeOptions): BarcodeGeometry {
  const content = parseOptions(options);
  return layOut(content, (NOMINAL_MODULE_MM * content.magnification) / 100);
}

/** Lays out checked content for a given module width; a picture calls it with a module of whole pixels. */
export function layOut(content: BarcodeContent, moduleMm: number): BarcodeGeometry {
  const scale = moduleMm / NOMINAL_MODULE_MM;
  const reductionMm = reductionWithin(content.barWidthReductionUm, moduleMm);
  const addOn = content.addOn === null ? null : addOnModules(content.addOn);
  const main = mainModules(content.isbn13);
  const rows = rowsFor(content.isbnLine !== null, content.caution !== null, moduleMm);
  const addOnStart = MODULES.quietLeft + MAIN_MODULES + MODULES.addOnGap;
  const totalModules = addOn
    ? addOnStart + ADD_ON_MODULES + MODULES.addOnQuietRight
    : MODULES.quietLeft + MAIN_MODULES + MODULES.quietRight;
  const linePt = NOMINAL.linePt * scale;
  return {
    isbn13: content.isbn13,
    isbnLine: content.isbnLine,
    mainModules: main,
    magnificationPercent: scale * 100,
    moduleMm,
    barWidthReductionUm: content.barWidthReductionUm,
    widthMm: totalModules * moduleMm,
    heightMm: rows.total,
    quietLeftMm: MODULES.quietLeft * moduleMm,
    quietRightMm: (addOn ? MODULES.addOnGap : MODULES.quietRight) * moduleMm,
    mainWidthMm: MAIN_MODULES * moduleMm,
    barHeightMm: rows.barFoot - rows.barTop,
    guardHeightMm: rows.guardFoot - rows.barTop,
    heightWithDigitsMm: rows.digitFoot - rows.barTop,
    isbnLinePt: content.isbnLine === null ? null : linePt,
    addOn:
      addOn === null || content.addOn === null
        ? null
        : {
            digits: content.addOn,
            modules: addOn,
            gapMm: MODULES.addOnGap * moduleMm,
            widthMm: ADD_ON_MODULES * moduleMm,
            barHeightMm: rows.guardFoot - rows.addOnTop,
            quietRightMm: MODULES.addOnQuietRight * moduleMm,
          },
    bars: [
      ...mainBars(main, rows, moduleMm, reductionMm),
      ...(addOn ? addOnBars(addOn, addOnStart, rows, moduleMm, reductionMm) : []),
    ],
    glyphs: [
      ...mainDigits(content.isbn13, rows, moduleMm),
      ...(content.addOn === null ? [] : addOnText(content.addOn, addOnStart, rows, moduleMm)),
      ...(content.isbnLine === null
        ? []
        : lineText(content.isbnLine, rows.lineFoot, linePt * MM_PER_POINT, rows, moduleMm)),
      ...(content.caution === null ? [] : cautionText(content.caution, rows, moduleMm)),
    ],
    notes: [...lineNotes(content.isbnLine, linePt), ...content.notes],
  };
}

/** The reduction in mm. @throws Refusal BAD_INPUT when the narrowest bar would lose more than half its width */
function reductionWithin(reductionUm: number, moduleMm: number): number {
  const moduleUm = moduleMm * 1000;
  if (reductionUm > moduleUm / 2)
    throw new Refusal(
      'BAD_INPUT',
      `A bar width reduction of ${reductionUm} µm leaves less than half of a module of ${Math.round(moduleUm)} µm: keep it to ${Math.floor(moduleUm / 2)} µm or draw the code larger.`,
      'barWidthReductionUm',
    );
  return reductionUm / 1000;
}

/** Where the horizontal lines of the drawing run, in mm from the top. */
interface Rows {
  lineFoot: number;
  barTop: number;
  addOnTop: number;
  barFoot: number;
  guardFoot: number;
  digitFoot: number;
  digitMm: number;
  cautionFoot: number;
  total: number;
}

function rowsFor(withLine: boolean, withCaution: boolean, moduleMm: number): Rows {
  const scale = moduleMm / NOMINAL_MODULE_MM;
  const margin = MODULES.margin * moduleMm;
  const barTop = withLine ? (NOMINAL.totalWithLineMm - NOMINAL.withDigitsMm) * scale - margin : margin;
  const barFoot = barTop + NOMINAL.barMm * scale;
  const digitFoot = barTop + NOMINAL.withDigitsMm * scale;
  const digitMm = NOMINAL.digitMm * scale;
  return {
    lineFoot: barTop - NOMINAL.lineGapMm * scale,
    barTop,
    // The add-on's digits stand level with the tops of the main bars, its bars below them (STANDARDS B3).
    addOnTop: barTop + digitMm + moduleMm,
    barFoot,
    guardFoot: barFoot + MODULES.guardDrop * moduleMm,
    digitFoot,
    digitMm,
    cautionFoot: digitFoot + 2 * digitMm,
    total: digitFoot + margin + (withCaution ? 2 * digitMm : 0),
  };
}

function bar(
  place: Pick<Bar, 'part' | 'guard' | 'startModule' | 'modules'>,
  [top, foot]: [number, number],
  moduleMm: number,
  reductionMm: number,
): Bar {
  return {
    ...place,
    xMm: place.startModule * moduleMm + reductionMm / 2,
    yMm: top,
    widthMm: place.modules * moduleMm - reductionMm,
    heightMm: foot - top,
  };
}

function mainBars(modules: string, rows: Rows, moduleMm: number, reductionMm: number): Bar[] {
  return darkRuns(modules).map((run) => {
    const guard = run.start < 3 || (run.start >= 45 && run.start < 50) || run.start >= 92;
    return bar(
      { part: 'main', guard, startModule: MODULES.quietLeft + run.start, modules: run.modules },
      [rows.barTop, guard ? rows.guardFoot : rows.barFoot],
      moduleMm,
      reductionMm,
    );
  });
}

function addOnBars(modules: string, start: number, rows: Rows, moduleMm: number, reductionMm: number): Bar[] {
  return darkRuns(modules).map((run) =>
    bar(
      { part: 'addOn', guard: false, startModule: start + run.start, modules: run.modules },
      [rows.addOnTop, rows.guardFoot],
      moduleMm,
      reductionMm,
    ),
  );
}

/** Middle of the seven modules that belong to a digit of the main symbol; the first digit has none and stands outside. */
function digitMiddle(index: number): number {
  if (index === 0) return 3.5;
  const inBars = index <= 6 ? 3 + (index - 1) * 7 : 50 + (index - 7) * 7;
  return MODULES.quietLeft + inBars + 3.5;
}

function mainDigits(isbn13: string, rows: Rows, moduleMm: number): Glyph[] {
  return [...isbn13].map((char, i) => ({
    char,
    centreX: digitMiddle(i) * moduleMm,
    baselineY: rows.digitFoot,
    size: rows.digitMm / DIGIT_HEIGHT_EM,
  }));
}

function addOnText(digits: string, start: number, rows: Rows, moduleMm: number): Glyph[] {
  return [...digits].map((char, i) => ({
    char,
    // Four modules of start, then digits of seven with a separator of two between.
    centreX: (start + 4 + i * 9 + 3.5) * moduleMm,
    baselineY: rows.barTop + rows.digitMm,
    size: rows.digitMm / DIGIT_HEIGHT_EM,
  }));
}

/** Spreads the line from the left edge of the first digit to the right edge of the last bar. */
function lineText(line: string, foot: number, size: number, rows: Rows, moduleMm: number): Glyph[] {
  const digitWidth = (cellWidth('0') * rows.digitMm) / DIGIT_HEIGHT_EM;
  const left = digitMiddle(0) * moduleMm - digitWidth / 2;
  const right = (MODULES.quietLeft + MAIN_MODULES) * moduleMm;
  const cells = [...line].map((char) => ({ char, width: cellWidth(char) * size }));
  const ink = cells.reduce((sum, cell) => sum + cell.width, 0);
  const gap = (right - left - ink) / (cells.length - 1);
  let x = left;
  const glyphs: Glyph[] = [];
  for (const { char, width } of cells) {
    if (char !== ' ') glyphs.push({ char, centreX: x + width / 2, baselineY: foot, size });
    x += width + gap;
  }
  return glyphs;
}

/** The caution, spread like the ISBN line, as large as fits. */
function cautionText(text: string, rows: Rows, moduleMm: number): Glyph[] {
  const ems = [...text].reduce((sum, char) => sum + cellWidth(char), 0);
  const size = Math.min((MAIN_MODULES * moduleMm) / ems, rows.digitMm / DIGIT_HEIGHT_EM);
  return lineText(text, rows.cautionFoot, size, rows, moduleMm);
}

function lineNotes(line: string | null, linePt: number): string[] {
  if (line === null)
    return [
      'The ISBN manual wants the ISBN in readable form directly above the bars; this code leaves it out.',
    ];
  if (linePt < NOMINAL.linePt - 1e-9)
    return [
      `The ISBN line is set in ${linePt.toFixed(1)} point; the ISBN manual asks for ${NOMINAL.linePt} point or larger, which takes a magnification of 100 per cent.`,
    ];
  return [];
}
