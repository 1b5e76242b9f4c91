import { caseCover, jacket, paperbackCover } from '../geometry/sheets.ts';
import type { Book, PrinterFigures, Sheet, SheetKind } from '../geometry/types.ts';
import type { ProofRecord } from './record.ts';

/** A sheet as seen: its size with bleed or turn-in, and after the cut where the file states that. */
export interface SheetSize {
  whole: { widthUm: number; heightUm: number };
  trimmed: { widthUm: number; heightUm: number } | null;
}

/** What a sheet was found to be. */
export interface Fit {
  sheet: Sheet;
  pages: number;
  /** The page of the file has the size after the cut, without anything around it. */
  bare: boolean;
}

const LAY: Record<SheetKind, (book: Book, figures: PrinterFigures) => Sheet> = {
  'paperback cover': paperbackCover,
  case: caseCover,
  jacket,
};
const KINDS: readonly SheetKind[] = ['paperback cover', 'case', 'jacket'];
const UM_PER_INCH = 25_400;
/** Books of other page counts are not thought of. */
const PAGES = { least: 8, most: 2_000 };

/** The book on record, in whatever page count; null where its trim size or its paper's bulk is not known. */
function bookOf(record: ProofRecord, pages: number): Book | null {
  const { trimWidthUm, trimHeightUm, bulk, rightToLeft } = record;
  if (trimWidthUm === null || trimHeightUm === null || bulk === null) return null;
  return { trimWidthUm, trimHeightUm, pages, bulk, rightToLeft };
}

/** The sheet that is computed for a book on record; null where something is missing for it. */
export function computed(record: ProofRecord, kind: SheetKind, pages = record.pages): Sheet | null {
  const book = pages === null ? null : bookOf(record, pages);
  return book === null ? null : LAY[kind](book, record.printer);
}

interface Off {
  widthUm: number;
  heightUm: number;
  bare: boolean;
}

/** How far a sheet is from a computed one: by its size after the cut where that is stated, else by the whole. */
export function offBy(size: SheetSize, sheet: Sheet): Off {
  const against = (seen: { widthUm: number; heightUm: number }, asked: typeof seen) => ({
    widthUm: seen.widthUm - asked.widthUm,
    heightUm: seen.heightUm - asked.heightUm,
  });
  if (size.trimmed) return { ...against(size.trimmed, sheet.trimmed), bare: false };
  const whole = { ...against(size.whole, sheet), bare: false };
  const bare = { ...against(size.whole, sheet.trimmed), bare: true };
  const far = (off: Off) => Math.abs(off.widthUm) + Math.abs(off.heightUm);
  return far(bare) < far(whole) ? bare : whole;
}

const within = (off: Off, um: number) => Math.abs(off.widthUm) <= um && Math.abs(off.heightUm) <= um;

/** Pages whose block is so much thicker or thinner than that of the computed sheet, to the nearest even count. */
function pagesFor(sheet: Sheet, kind: SheetKind, moreUm: number, record: ProofRecord): number | null {
  const { bulk, printer } = record;
  if (bulk === null) return null;
  const added = kind === 'paperback cover' ? printer.coverAllowanceUm : printer.boardUm;
  const blockUm = sheet.spineUm + moreUm - added;
  const leaves = 'leafUm' in bulk ? blockUm / bulk.leafUm : (blockUm * bulk.pagesPerInch) / UM_PER_INCH / 2;
  const pages = Math.round(leaves) * 2;
  return pages >= PAGES.least && pages <= PAGES.most ? pages : null;
}

/**
 * The sheet that fits a size: the one on record if it does, else another kind of the same book, else one of these with
 * another page count, which shows in the spine alone; null where none does.
 */
export function fitOf(size: SheetSize, record: ProofRecord, toleranceUm: number): Fit | null {
  const { sheet: own, pages } = record;
  if (own === null || pages === null) return null;
  const kinds = [own, ...KINDS.filter((kind) => kind !== own)];
  const tried = kinds.flatMap((kind) => {
    const sheet = computed(record, kind);
    return sheet ? [{ kind, sheet, off: offBy(size, sheet) }] : [];
  });
  const [exact] = tried.filter(({ off }) => within(off, toleranceUm));
  if (exact) return { sheet: exact.sheet, pages, bare: exact.off.bare };
  for (const { kind, sheet, off } of tried) {
    if (Math.abs(off.heightUm) > toleranceUm) continue;
    const other = pagesFor(sheet, kind, off.widthUm, record);
    const fitting = other === null ? null : computed(record, kind, other);
    if (fitting && other !== null && within(offBy(size, fitting), toleranceUm))
      return { sheet: fitting, pages: other, bare: off.bare };
  }
  return null;
}
