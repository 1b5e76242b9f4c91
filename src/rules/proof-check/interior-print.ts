import type { CheckLine, PageFacts, PdfFacts } from '../../contract/proof-checks/facts.ts';
import { trimmedBox } from './interior-pages.ts';
import { counted, pagesNamed, placedLineOf } from './place-line.ts';
import type { ProofRecord } from './record.ts';

export function colourLine({ pages }: PdfFacts, { interior }: ProofRecord): CheckLine {
  const label = 'Colour';
  const coloured = pages.flatMap(({ colour }, i) => (colour ? [i + 1] : []));
  const [first] = coloured;
  const found = first === undefined ? 'black and white' : `colour on ${pagesNamed(coloured)}`;
  const place = first === undefined ? null : { page: first, box: null };
  const line = (state: CheckLine['state'], advice = '') =>
    placedLineOf('interior.colour', label, state, { expected: interior ?? '', found, advice, place });
  if (interior === null)
    return line('cannot tell', 'Whether the interior is black and white or in colour is not recorded.');
  if (interior === 'black and white' && first !== undefined)
    return line(
      'differs',
      'Turn these pages into greys, or record the interior as colour, which costs more to print.',
    );
  if (first === undefined && pages.some(({ colour }) => colour === null))
    return line('cannot tell', 'Some pages could not be drawn; look at them yourself.');
  if (interior === 'colour' && first === undefined)
    return line(
      'differs',
      'No page shows colour: see that this is the right file, or record it as black and white.',
    );
  return line('agreed');
}

type Image = PageFacts['images'][number];

/** Smaller pictures than a quarter of an inch each way are ornaments and dots. */
const LEAST_PT = 18;
/** Programs round when they scale pictures down: 298 for 300. */
const ROUNDING = 0.98;

const shows = ({ box }: Image, { xPt, yPt, widthPt, heightPt }: PageFacts['media']) =>
  Math.min(box.widthPt, box.heightPt) >= LEAST_PT &&
  box.xPt < xPt + widthPt &&
  box.xPt + box.widthPt > xPt &&
  box.yPt < yPt + heightPt &&
  box.yPt + box.heightPt > yPt;

export function picturesLine({ pages }: PdfFacts, { figures }: ProofRecord): CheckLine {
  const label = 'Resolution of pictures';
  const least = ({ colour }: Image) =>
    colour === 'black and white' ? figures.lineArtPpi : figures.picturePpi;
  const seen = pages.flatMap((page, i) =>
    page.images.filter((image) => shows(image, trimmedBox(page))).map((image) => ({ page: i + 1, image })),
  );
  const coarse = seen.filter(({ image }) => image.ppi < least(image) * ROUNDING);
  const expected = `${figures.picturePpi} pixels to the inch, line art ${figures.lineArtPpi}`;
  const lowest = (list: typeof seen) =>
    list.reduce((worst, one) => (one.image.ppi < worst.image.ppi ? one : worst));
  if (seen.length === 0)
    return placedLineOf('interior.pictures', label, 'agreed', { expected, found: 'no pictures' });
  if (coarse.length === 0)
    return placedLineOf('interior.pictures', label, 'agreed', {
      expected,
      found: `${counted(seen.length, 'picture')}, ${Math.round(lowest(seen).image.ppi)} and more`,
    });
  const { page, image } = lowest(coarse);
  return placedLineOf('interior.pictures', label, 'differs', {
    expected,
    found: `${Math.round(image.ppi)} at the lowest; too coarse on ${pagesNamed([...new Set(coarse.map((one) => one.page))])}`,
    advice: 'Put in larger originals or place them smaller; coarse pictures print blurred or with steps.',
    place: { page, box: image.box },
  });
}
