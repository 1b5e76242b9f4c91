import type { CheckLine, PdfFacts, PictureFacts } from '../../contract/proof-checks/facts.ts';
import { computed } from './cover-fit.ts';
import { coverLine } from './cover-line.ts';
import { encryptionLine, fontsLine } from './interior-file.ts';
import { umOf } from './place-line.ts';
import type { ProofRecord } from './record.ts';

/** Pictures smaller than a centimetre each way are signs and ornaments. */
const LEAST_UM = 10_000;
/** Rounding of sizes in programs. */
const SHARE = 0.98;

const LABEL = 'Resolution of pictures';

/** Pixels to the inch of the pictures on the sheet (the settings' figures). */
export function resolutionLine({ pages }: PdfFacts, record: ProofRecord): CheckLine {
  const { picturePpi, lineArtPpi } = record.figures;
  const images = (pages[0]?.images ?? []).filter(
    ({ box }) => umOf(box.widthPt) > LEAST_UM || umOf(box.heightPt) > LEAST_UM,
  );
  const least = (colour: string) => (colour === 'black and white' ? lineArtPpi : picturePpi);
  const share = (image: (typeof images)[number]) => image.ppi / least(image.colour);
  const expected = `${picturePpi} to the inch or more, ${lineArtPpi} for line art`;
  const [worst] = images.toSorted((a, b) => share(a) - share(b));
  if (worst === undefined)
    return coverLine('resolution', LABEL, 'agreed', { expected, found: 'no pictures' });
  const low = share(worst) < SHARE;
  return coverLine('resolution', LABEL, low ? 'differs' : 'agreed', {
    expected,
    found: `${Math.round(worst.ppi)} to the inch${images.length > 1 ? ' at least' : ''}`,
    advice: low
      ? 'It will look soft or stepped in print; have the picture put in larger, or placed smaller.'
      : '',
    page: 1,
    box: worst.box,
  });
}

/** What a picture states, and what it would be if it were the full cover. */
export function pictureResolutionLine(facts: PictureFacts, record: ProofRecord): CheckLine {
  const { picturePpi } = record.figures;
  const expected = `${picturePpi} to the inch or more`;
  const sheet = record.sheet === null ? null : computed(record, record.sheet);
  const asFull = sheet === null ? null : Math.round(facts.widthPx / (sheet.widthUm / 25_400));
  if (facts.ppi === null)
    return coverLine('resolution', LABEL, 'cannot tell', {
      expected,
      found: `${facts.widthPx} × ${facts.heightPx} pixels, no resolution stated`,
      advice: `Have it exported with its resolution.${asFull === null ? '' : ` As the full cover it would have ${asFull} to the inch.`}`,
    });
  const low = facts.ppi < picturePpi * SHARE;
  return coverLine('resolution', LABEL, low ? 'differs' : 'agreed', {
    expected,
    found: `${Math.round(facts.ppi)} to the inch`,
    advice: low
      ? `It will look soft in print at the size it states.${asFull === null ? '' : ` As the full cover it would have ${asFull} to the inch: if that is meant, export it so.`}`
      : '',
  });
}

/** What holds for any PDF that is printed. */
export function fileLines(facts: PdfFacts): CheckLine[] {
  return [
    { ...fontsLine(facts), check: 'cover.fonts' },
    { ...encryptionLine(facts), check: 'cover.protection' },
  ];
}
