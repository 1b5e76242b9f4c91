import type { CheckLine, PageFacts, PdfFacts } from '../../contract/proof-checks/facts.ts';
import { counted, pagesNamed, placedLineOf, shownSize, shownUm, umOf } from './place-line.ts';
import type { ProofRecord } from './record.ts';

export function pageCountLine({ pages }: PdfFacts, { pages: recorded }: ProofRecord): CheckLine {
  const found = counted(pages.length, 'page');
  if (recorded === null)
    return placedLineOf('interior.pages', 'Page count', 'cannot tell', {
      found,
      advice: 'No page count is recorded; the spine is computed from it, so record it.',
    });
  const expected = counted(recorded, 'page');
  if (pages.length === recorded)
    return placedLineOf('interior.pages', 'Page count', 'agreed', { expected, found });
  return placedLineOf('interior.pages', 'Page count', 'differs', {
    expected,
    found,
    advice:
      'Correct the record or the file before the cover is made: the width of the spine follows from the page count.',
    place: { page: Math.max(1, Math.min(pages.length, recorded)), box: null },
  });
}

/** A leaf has two pages (STANDARDS E5); channels may ask for more. */
const LEAF = 2;

export function multipleLine({ pages }: PdfFacts, { pageMultiples }: ProofRecord): CheckLine {
  const wanted = [{ channelName: '', multiple: LEAF }, ...pageMultiples];
  const missed = wanted.filter(({ multiple }) => pages.length % multiple !== 0);
  const named = ({ channelName, multiple }: (typeof wanted)[number]) =>
    channelName === '' ? 'an even count' : `a multiple of ${multiple} (${channelName})`;
  const expected = wanted.map(named).join(', ');
  const found = counted(pages.length, 'page');
  if (missed.length === 0)
    return placedLineOf('interior.multiple', 'Pages by the leaf', 'agreed', { expected, found });
  const lacking = missed.map(({ multiple }) => multiple - (pages.length % multiple));
  return placedLineOf('interior.multiple', 'Pages by the leaf', 'differs', {
    expected: missed.map(named).join(', '),
    found,
    advice: `Add ${counted(Math.max(...lacking), 'blank page')} at the end, or the printer will add them as they see fit.`,
    place: { page: Math.max(1, pages.length), box: null },
  });
}

interface Sized {
  page: number;
  widthUm: number;
  heightUm: number;
}

/** The trimmed page as the file states it: its trim box, or else the page as shown. */
export const trimmedBox = ({ trim, crop, media }: PageFacts) => trim ?? crop ?? media;

const sized = (facts: PageFacts, index: number): Sized => {
  const { widthPt, heightPt } = trimmedBox(facts);
  return { page: index + 1, widthUm: umOf(widthPt), heightUm: umOf(heightPt) };
};

/** How a page's size stands to the recorded trim. */
type Fit = 'fits' | 'with bleed' | 'turned' | 'spread' | 'other';

function fitOf(facts: PageFacts, size: Sized, record: Trimmed): Fit {
  const { trimWidthUm: width, trimHeightUm: height, printer, figures } = record;
  const near = (a: number, b: number) => Math.abs(a - b) <= figures.sizeToleranceUm;
  const is = (w: number, h: number) => near(size.widthUm, w) && near(size.heightUm, h);
  const { bleedUm } = printer;
  if (is(width, height)) return 'fits';
  // Without a trim box a page may bring its bleed: at head, foot and the outer edge, or all round.
  if (
    facts.trim === null &&
    (is(width + bleedUm, height + 2 * bleedUm) || is(width + 2 * bleedUm, height + 2 * bleedUm))
  )
    return 'with bleed';
  if (is(height, width)) return 'turned';
  const double = (extra: number) => near(size.widthUm, 2 * width + extra);
  if (size.heightUm >= height - figures.sizeToleranceUm && (double(0) || double(2 * bleedUm)))
    return 'spread';
  return 'other';
}

interface Trimmed extends ProofRecord {
  trimWidthUm: number;
  trimHeightUm: number;
}

const isTrimmed = (record: ProofRecord): record is Trimmed =>
  record.trimWidthUm !== null && record.trimHeightUm !== null;

interface Fitted extends Sized {
  fit: Fit;
}

const fitted = (facts: PdfFacts, record: Trimmed): Fitted[] =>
  facts.pages.map((page, i) => {
    const size = sized(page, i);
    return { ...size, fit: fitOf(page, size, record) };
  });

/** Every page's trimmed size against the record; spreads have a line of their own. */
export function trimLine(facts: PdfFacts, record: ProofRecord): CheckLine {
  const label = 'Trim size of every page';
  const unit = record.lengthUnit;
  const [first] = facts.pages.map(sized);
  if (!isTrimmed(record) || first === undefined)
    return placedLineOf('interior.trim', label, 'cannot tell', {
      found: first ? shownSize(first.widthUm, first.heightUm, unit) : '',
      advice: 'No trim size is recorded.',
    });
  const expected = `${shownSize(record.trimWidthUm, record.trimHeightUm, unit)}, within ${shownUm(record.figures.sizeToleranceUm, unit)}`;
  const pages = fitted(facts, record);
  const single = pages.filter(({ fit }) => fit !== 'spread');
  const wrong = single.filter(({ fit }) => fit === 'turned' || fit === 'other');
  const [at] = wrong;
  if (at !== undefined)
    return placedLineOf('interior.trim', label, 'differs', {
      expected,
      found: `${shownSize(at.widthUm, at.heightUm, unit)} on ${pagesNamed(wrong.map(({ page }) => page))}`,
      advice:
        at.fit === 'turned'
          ? 'The page lies on its side: turn it in the program that it comes from.'
          : 'Set the pages to the recorded trim size, or correct the record; printers scale or refuse other sizes.',
      place: { page: at.page, box: boxOn(facts, at.page) },
    });
  if (single.length === 0)
    return placedLineOf('interior.trim', label, 'cannot tell', {
      expected,
      found: 'double pages only',
      advice: 'The size of single pages shows once they are exported one by one.',
    });
  const withBleed = single.some(({ fit }) => fit === 'with bleed');
  const [fits = first] = single;
  const found = `${shownSize(fits.widthUm, fits.heightUm, unit)}${withBleed ? ' with bleed' : ''}`;
  return placedLineOf('interior.trim', label, 'agreed', {
    expected,
    found,
    place: { page: fits.page, box: boxOn(facts, fits.page) },
  });
}

function boxOn({ pages }: PdfFacts, page: number) {
  const facts = pages[page - 1];
  return facts ? trimmedBox(facts) : null;
}

export function spreadsLine(facts: PdfFacts, record: ProofRecord): CheckLine {
  const label = 'Single pages';
  const expected = 'one page of the book to a page of the file';
  if (!isTrimmed(record))
    return placedLineOf('interior.spreads', label, 'cannot tell', {
      expected,
      advice: 'No trim size is recorded to tell double pages by.',
    });
  const spreads = fitted(facts, record).filter(({ fit }) => fit === 'spread');
  const [at] = spreads;
  if (at === undefined)
    return placedLineOf('interior.spreads', label, 'agreed', { expected, found: 'single pages' });
  return placedLineOf('interior.spreads', label, 'differs', {
    expected,
    found: `double pages: ${pagesNamed(spreads.map(({ page }) => page))}`,
    advice: 'Export single pages; printers arrange them on the sheet themselves.',
    place: { page: at.page, box: boxOn(facts, at.page) },
  });
}
