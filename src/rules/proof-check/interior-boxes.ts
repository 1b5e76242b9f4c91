import type { Box, CheckLine, PageFacts, PdfFacts } from '../../contract/proof-checks/facts.ts';
import { trimmedBox } from './interior-pages.ts';
import { pagesNamed, placedLineOf, shownUm, umOf } from './place-line.ts';
import type { ProofRecord } from './record.ts';

/** Boxes are written with rounded figures: half a point is no fault. */
const SLACK_PT = 0.5;

const within = (inner: Box, outer: Box) =>
  inner.xPt >= outer.xPt - SLACK_PT &&
  inner.yPt >= outer.yPt - SLACK_PT &&
  inner.xPt + inner.widthPt <= outer.xPt + outer.widthPt + SLACK_PT &&
  inner.yPt + inner.heightPt <= outer.yPt + outer.heightPt + SLACK_PT;

/** What is wrong with the boxes of one page in themselves (ISO 32000-1, 14.11.2; from memory); null where nothing is. */
function fault({ media, crop, bleed, trim }: PageFacts): string | null {
  if (trim !== null && !within(trim, media)) return 'the trim box lies beyond the page';
  if (bleed !== null && trim !== null && !within(trim, bleed))
    return 'the trim box lies beyond the bleed box';
  if (bleed !== null && !within(bleed, media)) return 'the bleed box lies beyond the page';
  if (crop !== null && trim !== null && !within(trim, crop)) return 'the crop box cuts into the trimmed page';
  return null;
}

const sameBox = (a: Box | null, b: Box | null, slack: number) =>
  a === null || b === null
    ? a === b
    : Math.abs(a.widthPt - b.widthPt) <= slack && Math.abs(a.heightPt - b.heightPt) <= slack;

/** What sets the boxes of a page apart from those of the first; its trimmed size is judged elsewhere. */
function unlike(page: PageFacts, first: PageFacts): string | null {
  if (page.rotate !== first.rotate) return `turned by ${page.rotate} degrees, the first by ${first.rotate}`;
  if ((page.trim === null) !== (first.trim === null))
    return page.trim === null ? 'no trim box, unlike the first page' : 'a trim box, unlike the first page';
  if (sameBox(trimmedBox(page), trimmedBox(first), SLACK_PT) && !sameBox(page.media, first.media, SLACK_PT))
    return 'another sheet size round the same trim';
  return null;
}

export function boxesLine({ pages }: PdfFacts): CheckLine {
  const label = 'Page boxes';
  const expected = 'the same on every page, trim within bleed within the page';
  const [first] = pages;
  const faults = pages.map((page) => fault(page) ?? (first ? unlike(page, first) : null));
  const at = faults.findIndex((one) => one !== null);
  const words = faults[at];
  if (words === undefined || words === null || first === undefined)
    return placedLineOf('interior.boxes', label, 'agreed', {
      expected,
      found: first?.trim ? 'trim boxes, alike on every page' : 'no trim boxes; the page is the trim',
    });
  const same = faults.flatMap((one, i) => (one === words ? [i + 1] : []));
  const page = pages[at];
  return placedLineOf('interior.boxes', label, 'differs', {
    expected,
    found: `${words} (${pagesNamed(same)})`,
    advice:
      'Export the whole interior in one go with the same settings; printers place pages by these boxes.',
    place: { page: at + 1, box: page ? trimmedBox(page) : null },
  });
}

/** How far a page reaches beyond its trim at head, foot and the wider of its sides (the other lies in the binding), in µm. */
function bleedOf(page: PageFacts, { trimWidthUm, trimHeightUm }: ProofRecord): number {
  const outer = page.bleed ?? page.crop ?? page.media;
  const { trim } = page;
  if (trim !== null) {
    const left = trim.xPt - outer.xPt;
    const right = outer.xPt + outer.widthPt - trim.xPt - trim.widthPt;
    const head = trim.yPt - outer.yPt;
    const foot = outer.yPt + outer.heightPt - trim.yPt - trim.heightPt;
    return umOf(Math.min(Math.max(left, right), head, foot));
  }
  if (trimWidthUm === null || trimHeightUm === null) return 0;
  return Math.min(umOf(outer.widthPt) - trimWidthUm, (umOf(outer.heightPt) - trimHeightUm) / 2);
}

export function bleedLine({ pages }: PdfFacts, record: ProofRecord): CheckLine {
  const label = 'Bleed';
  const { bleedUm } = record.printer;
  const unit = record.lengthUnit;
  const bleeding = pages.flatMap((page, i) => (page.bleeds ? [i + 1] : []));
  const short = bleeding.filter((number) => {
    const page = pages[number - 1];
    return page !== undefined && bleedOf(page, record) < bleedUm - record.figures.sizeToleranceUm;
  });
  const expected = `${shownUm(bleedUm, unit)} beyond the trim where print runs off the page`;
  const [at] = short;
  if (at !== undefined) {
    const page = pages[at - 1];
    const reach = page ? Math.max(0, bleedOf(page, record)) : 0;
    return placedLineOf('interior.bleed', label, 'differs', {
      expected,
      found: `${shownUm(reach, unit)} on ${pagesNamed(short)}`,
      advice:
        'Export with bleed, or keep print off the edge: a white sliver shows where the knife cuts a hair wide.',
      place: { page: at, box: page ? trimmedBox(page) : null },
    });
  }
  if (bleeding.length === 0 && pages.every(({ bleeds }) => bleeds === null))
    return placedLineOf('interior.bleed', label, 'cannot tell', {
      expected,
      advice: 'No page could be drawn.',
    });
  return placedLineOf('interior.bleed', label, 'agreed', {
    expected,
    found: bleeding.length === 0 ? 'nothing runs off the page' : `print runs off ${pagesNamed(bleeding)}`,
    place: bleeding[0] === undefined ? null : { page: bleeding[0], box: null },
  });
}
