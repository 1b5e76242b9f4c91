import type { CheckLine, PictureFacts } from '../../contract/proof-checks/facts.ts';
import type { Sheet } from '../geometry/types.ts';
import { computed, type Fit, fitOf, offBy } from './cover-fit.ts';
import { coverLine, sizeIn } from './cover-line.ts';
import { type SheetSeen, sheetOfPicture, sizeLine } from './cover-size.ts';
import { shownUm } from './place-line.ts';
import type { ProofRecord } from './record.ts';

const LABEL = 'Size of the cover';
const UM_PER_INCH = 25_400;

/** The resolution at which a picture would be as wide as the full cover, where it would be as high as well; else null. */
function ppiAsFull(facts: PictureFacts, own: Sheet, record: ProofRecord): number | null {
  const ppi = facts.widthPx / (own.widthUm / UM_PER_INCH);
  const { heightUm, bare } = offBy(sheetOfPicture(facts, ppi).size, own);
  return !bare && Math.abs(heightUm) <= record.figures.coverToleranceUm ? ppi : null;
}

/** The size of a cover that is a picture, by the resolution it states; where it states none, both readings of it. */
export function pictureSizeLine(
  facts: PictureFacts,
  seen: SheetSeen | null,
  fit: Fit | null,
  record: ProofRecord,
): CheckLine {
  const own = record.sheet === null ? null : computed(record, record.sheet);
  const asFull = own && ppiAsFull(facts, own, record);
  if (seen !== null) {
    const line = sizeLine(seen, fit, record);
    return line.state === 'differs' && asFull !== null
      ? {
          ...line,
          advice: `Its shape fits: at ${Math.round(asFull)} pixels to the inch it would have the right size, so the file states the wrong resolution. Have it exported with the right one.`,
        }
      : line;
  }
  return unstatedLine(facts, own, asFull, record);
}

function unstatedLine(
  facts: PictureFacts,
  own: Sheet | null,
  asFull: number | null,
  record: ProofRecord,
): CheckLine {
  const { lengthUnit: unit, figures } = record;
  const found = `${facts.widthPx} × ${facts.heightPx} pixels, no resolution stated`;
  const usual = sheetOfPicture(facts, figures.picturePpi);
  const fits = fitOf(usual.size, record, figures.coverToleranceUm);
  const atUsual = `at ${figures.picturePpi} pixels to the inch it is ${sizeIn(usual.size.whole, unit)}${fits ? `, which fits a ${fits.sheet.kind} of ${fits.pages} pages` : ''}`;
  if (own === null)
    return coverLine('size', LABEL, 'cannot tell', {
      found,
      advice: `The picture states no resolution; ${atUsual}. The full cover cannot be computed from what is on record.`,
    });
  const expected = `${sizeIn(own, unit)} with ${own.edge.kind} ${shownUm(own.edge.um, unit)}`;
  if (asFull === null && fits === null)
    return coverLine('size', LABEL, 'differs', {
      expected,
      found,
      advice: `It states no resolution, and its shape fits the full cover at none; ${atUsual}. See that it is the whole sheet.`,
    });
  const first =
    asFull === null
      ? 'its shape fits the recorded book at no resolution'
      : `as the full cover it has ${Math.round(asFull)} to the inch`;
  return coverLine('size', LABEL, 'cannot tell', {
    expected,
    found,
    advice: `It states no resolution, so there are two readings: ${first}; ${atUsual}. Have it exported with its resolution.`,
  });
}

/** Shops ask for a longer side of so many pixels or more (common practice, no source). */
const LEAST_PX = 1_000;

/** The cover of an e-book or audiobook is a picture of one side. */
export function frontLine(facts: PictureFacts): CheckLine {
  const longer = Math.max(facts.widthPx, facts.heightPx);
  const said = {
    expected: `${LEAST_PX.toLocaleString('en')} pixels or more on the longer side`,
    found: `${facts.widthPx} × ${facts.heightPx} pixels`,
  };
  return longer >= LEAST_PX
    ? coverLine('pixels', 'Size of the picture', 'agreed', said)
    : coverLine('pixels', 'Size of the picture', 'differs', {
        ...said,
        advice:
          'Shops refuse small pictures or show them blurred; have it exported larger. Each channel states its own least size.',
      });
}

/** Type in a picture cannot be read. */
export function unreadWordsLine(): CheckLine {
  return coverLine('words', 'Title, names, ISBN in type, spine', 'cannot tell', {
    advice: 'Type in a picture cannot be read; compare these with the record yourself, or check the PDF.',
  });
}
