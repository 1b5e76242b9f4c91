import { Refusal } from '../contract/refusal.ts';
import { coverDrawing } from '../exchange/cover/drawing.ts';
import { coverPdf } from '../exchange/cover/pdf.ts';
import { coverSvg } from '../exchange/cover/svg.ts';
import { figuresWith, PAPERS } from '../rules/geometry/figures.ts';
import { caseCover, jacket, paperbackCover } from '../rules/geometry/sheets.ts';
import { boundPages } from '../rules/geometry/spine.ts';
import type { Book, PrinterFigures, Sheet, SheetKind } from '../rules/geometry/types.ts';
import { usualSheet } from '../rules/geometry/usual-sheet.ts';
import { formatById, type StoredFormat } from '../store/formats.ts';
import { readSettings } from '../store/settings.ts';
import type { Queries } from './context.ts';

const LAY: Record<SheetKind, (book: Book, figures: PrinterFigures) => Sheet> = {
  'paperback cover': paperbackCover,
  case: caseCover,
  jacket,
};

interface Given {
  pages?: number | undefined;
  trim?: { widthUm: number; heightUm: number } | undefined;
  bulk: Book['bulk'];
}

/** The book as recorded, or as it is tried; its pages as they are printed, before any blank ones are added. */
function bookOf(format: StoredFormat, given: Given): Book {
  const trimWidthUm = given.trim?.widthUm ?? format.trimWidthUm;
  const trimHeightUm = given.trim?.heightUm ?? format.trimHeightUm;
  if (!format.form.startsWith('B'))
    throw new Refusal('NOT_READY', 'This format is not printed and bound, so it has no spine.', 'formatId');
  if (trimWidthUm === null || trimHeightUm === null)
    throw new Refusal('NOT_READY', 'Enter the trim size of this format first, or one to try here.', 'trim');
  const pages = given.pages ?? format.pages;
  if (pages === null)
    throw new Refusal('NOT_READY', 'Enter the page count of this format first, or one to try here.', 'pages');
  return { trimWidthUm, trimHeightUm, pages, bulk: given.bulk, rightToLeft: format.rightToLeft };
}

function notesOf(sheet: Sheet, book: Book, bound: number, figures: PrinterFigures): string[] {
  const notes: string[] = [];
  if (bound !== book.pages)
    notes.push(
      bound === book.pages + 1 && figures.pageMultiple <= 2
        ? `${book.pages} pages are an odd count; a blank page is added, for a leaf has two.`
        : `${book.pages} pages are bound as ${bound}: blank ones are added up to a multiple of ${figures.pageMultiple}.`,
    );
  if (sheet.panels.some((panel) => panel.kind === 'spine' && panel.safe === null))
    notes.push(
      book.pages < figures.spineTextFromPages
        ? `With fewer than ${figures.spineTextFromPages} pages the spine carries no text.`
        : 'The spine is too thin for text within its margins.',
    );
  if (sheet.barcode === null) notes.push('The back cover has no room for the place of the bar code.');
  return notes;
}

export const coverQueries = {
  'covers.papers': ({ db }) => ({ papers: [...readSettings(db).papers, ...PAPERS] }),
  'covers.draw': ({ db }, input) => {
    const format = formatById(db, input.formatId);
    if (!format) throw new Refusal('NOT_FOUND', `There is no format ${input.formatId}.`, 'formatId');
    const book = bookOf(format, input);
    const figures = figuresWith(readSettings(db).printerFigures, input.figures);
    const pages = boundPages(boundPages(book.pages, 2), figures.pageMultiple);
    const sheet = LAY[input.sheet ?? usualSheet(format)]({ ...book, pages }, figures);
    const drawing = coverDrawing(sheet, `Template of the ${sheet.kind}, ${pages} pages`);
    const bytes = input.as === 'pdf' ? coverPdf(drawing) : new TextEncoder().encode(coverSvg(drawing));
    return {
      fileName: `${format.isbn13 ?? `format-${format.id}`}-${sheet.kind.replace(' ', '-')}-template.${input.as}`,
      mediaType: input.as === 'pdf' ? 'application/pdf' : 'image/svg+xml',
      base64: Buffer.from(bytes).toString('base64'),
      sheet: { ...sheet, panels: [...sheet.panels], foldsUm: [...sheet.foldsUm] },
      figures,
      notes: notesOf(sheet, book, pages, figures),
    };
  },
} satisfies Queries<'covers.papers' | 'covers.draw'>;
