import type { CheckLine, PageFacts, PdfFacts, PictureFacts } from '../../contract/proof-checks/facts.ts';
import type { Rect, Sheet } from '../geometry/types.ts';
import { computed, type Fit, fitOf, offBy, type SheetSize } from './cover-fit.ts';
import { coverLine, rectOf, sizeIn } from './cover-line.ts';
import { shownUm } from './place-line.ts';
import type { ProofRecord } from './record.ts';

/** A sheet as the file shows it, in micrometres from the top left of the page as shown. */
export interface SheetSeen {
  size: SheetSize;
  /** With bleed or turn-in: the bleed box, or the page where none is stated. */
  whole: Rect;
  /** Where it is cut, where the file says so. */
  trimmed: Rect | null;
}

/** A box that is this near to another says nothing of its own. */
const SAME_UM = 300;

export function sheetOfPage(page: PageFacts): SheetSeen {
  const shown = rectOf(page.crop ?? page.media);
  const whole = page.bleed ? rectOf(page.bleed) : { ...shown, xUm: 0, yUm: 0 };
  const stated = page.trim ? rectOf(page.trim) : null;
  const differs =
    stated &&
    (Math.abs(stated.widthUm - whole.widthUm) > SAME_UM ||
      Math.abs(stated.heightUm - whole.heightUm) > SAME_UM);
  const trimmed = differs ? stated : null;
  return { size: { whole, trimmed }, whole, trimmed };
}

/** A picture at so many pixels to the inch. */
export function sheetOfPicture({ widthPx, heightPx }: PictureFacts, ppi: number): SheetSeen {
  const whole = {
    xUm: 0,
    yUm: 0,
    widthUm: (widthPx / ppi) * 25_400,
    heightUm: (heightPx / ppi) * 25_400,
  };
  return { size: { whole, trimmed: null }, whole, trimmed: null };
}

const LABEL = 'Size of the cover';

/** What the file's size comes to in words. */
function seenIn({ size }: SheetSeen, record: ProofRecord): string {
  const whole = sizeIn(size.whole, record.lengthUnit);
  return size.trimmed ? `${sizeIn(size.trimmed, record.lengthUnit)} cut, ${whole} in all` : whole;
}

function asked(sheet: Sheet, seen: SheetSeen, record: ProofRecord): string {
  const { lengthUnit: unit } = record;
  const around = `${sheet.edge.kind} ${shownUm(sheet.edge.um, unit)}`;
  const size = seen.size.trimmed
    ? `${sizeIn(sheet.trimmed, unit)} cut`
    : `${sizeIn(sheet, unit)} with ${around}`;
  return `${size}: ${sheet.kind} of ${record.pages} pages, spine ${shownUm(sheet.spineUm, unit)}`;
}

/** What is missing in the record for the size to be computed, in words; null where nothing is. */
function missing(record: ProofRecord): string | null {
  if (record.trimWidthUm === null || record.trimHeightUm === null)
    return 'Record the trim size of this format';
  if (record.pages === null) return 'Record the page count of this format';
  if (record.bulk === null) return 'Record the paper of this format and its thickness';
  return null;
}

/** The full cover against its computed size (STANDARDS E1–E4, the printer's own figures); tolerance by the settings. */
export function sizeLine(seen: SheetSeen, fit: Fit | null, record: ProofRecord): CheckLine {
  const found = seenIn(seen, record);
  const lacking = missing(record);
  const own = record.sheet === null ? null : computed(record, record.sheet);
  if (own === null || lacking !== null)
    return coverLine('size', LABEL, 'cannot tell', {
      found,
      advice: `${lacking ?? 'Record the form of this format'}; its cover cannot be computed without.${leftForSpine(seen, record)}`,
    });
  const tolerance = shownUm(record.figures.coverToleranceUm, record.lengthUnit);
  const said = { expected: `${asked(own, seen, record)} (± ${tolerance})`, found };
  if (fit?.sheet.kind === own.kind && fit.pages === record.pages)
    return coverLine('size', LABEL, 'agreed', said);
  return coverLine('size', LABEL, 'differs', { ...said, advice: sizeAdvice(seen, fit, own, record) });
}

function sizeAdvice(seen: SheetSeen, fit: Fit | null, own: Sheet, record: ProofRecord): string {
  const template = 'Have it made to the printer’s template for this book.';
  if (fit && fit.sheet.kind !== own.kind) {
    const count = fit.pages === record.pages ? '' : ` of ${fit.pages} pages`;
    return `It fits a ${fit.sheet.kind}${count}, and this format has a ${own.kind}: see that it is not the cover of another format. ${template}`;
  }
  if (fit)
    return `It fits ${fit.pages} pages, the record says ${record.pages}: the spine would be off by ${shownUm(Math.abs(fit.sheet.spineUm - own.spineUm), record.lengthUnit)}. Correct the page count, or have the cover made anew.`;
  const { widthUm, heightUm } = seen.size.whole;
  const side = { whole: { widthUm: heightUm, heightUm: widthUm }, trimmed: null };
  if (fitOf(side, record, record.figures.coverToleranceUm))
    return 'It would fit, but lies on its side: have the page turned.';
  const tolerance = record.figures.coverToleranceUm;
  if (isFrontAlone(seen, record, tolerance))
    return `It has the size of one side only: the front cover alone. ${template}`;
  const off = offBy(seen.size, own);
  const by = (um: number, more: string, less: string) =>
    Math.abs(um) <= tolerance
      ? ''
      : `${shownUm(Math.abs(um), record.lengthUnit)} too ${um > 0 ? more : less}`;
  const offs = [by(off.widthUm, 'wide', 'narrow'), by(off.heightUm, 'high', 'low')].filter(Boolean);
  return `It is ${offs.join(' and ')}, and fits no sheet of this book at any page count. ${template}`;
}

function isFrontAlone({ size }: SheetSeen, record: ProofRecord, tolerance: number): boolean {
  const { trimWidthUm, trimHeightUm, printer } = record;
  const { widthUm, heightUm } = size.trimmed ?? size.whole;
  const near = (aroundUm: number) =>
    Math.abs(widthUm - (trimWidthUm ?? 0) - aroundUm) <= tolerance &&
    Math.abs(heightUm - (trimHeightUm ?? 0) - aroundUm) <= tolerance;
  return near(0) || near(printer.bleedUm) || near(2 * printer.bleedUm);
}

/** For a book whose page count or paper is not known: what the width leaves for its spine. */
function leftForSpine({ size }: SheetSeen, record: ProofRecord): string {
  if (record.trimWidthUm === null || record.sheet !== 'paperback cover') return '';
  const around = size.trimmed ? 0 : 2 * record.printer.bleedUm;
  const leftUm = (size.trimmed ?? size.whole).widthUm - 2 * record.trimWidthUm - around;
  return leftUm > 0 ? ` As it is, it leaves ${shownUm(leftUm, record.lengthUnit)} for the spine.` : '';
}

/** One sheet: a cover is one page. */
export function pagesLine({ pages }: PdfFacts): CheckLine {
  const said = { expected: '1 page', found: `${pages.length} ${pages.length === 1 ? 'page' : 'pages'}` };
  return pages.length === 1
    ? coverLine('pages', 'One sheet', 'agreed', said)
    : coverLine('pages', 'One sheet', 'differs', {
        ...said,
        advice: 'A cover is one page, back, spine and front side by side; only the first page was checked.',
      });
}
