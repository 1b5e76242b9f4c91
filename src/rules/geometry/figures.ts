import type { GivenFigures } from '../../contract/covers.ts';
import type { Paper, PrinterFigures } from './types.ts';

const inches = (value: number): number => Math.round(value * 25_400);

const STOCK = 'STANDARDS E1, a published stock table';

/** Papers to start from; the user keeps a table of their printers' own. */
export const PAPERS: readonly Paper[] = [
  { name: 'Uncoated white, 50 lb', bulk: { pagesPerInch: 515 }, source: STOCK },
  { name: 'Uncoated white, 60 lb', bulk: { pagesPerInch: 435 }, source: STOCK },
  { name: 'Uncoated white, 70 lb', bulk: { pagesPerInch: 395 }, source: STOCK },
  { name: 'Book paper, 55 lb', bulk: { pagesPerInch: 360 }, source: STOCK },
  { name: 'White, print on demand', bulk: { pagesPerInch: 444 }, source: 'common practice, no source' },
  { name: 'Cream, print on demand', bulk: { pagesPerInch: 400 }, source: 'common practice, no source' },
];

/** Starting figures: bleed E2, case E3, jacket E4, bar code B1 (100 %, with its line); margins common practice, no source. */
export const USUAL_FIGURES: PrinterFigures = {
  bleedUm: inches(0.125),
  coverAllowanceUm: 0,
  safeMarginUm: inches(0.125),
  spineMarginUm: inches(0.0625),
  spineTextFromPages: 80,
  boardUm: inches(0.125),
  hingeUm: inches(0.375),
  turnInUm: inches(0.625),
  overhangUm: inches(0.125),
  boardWiderUm: 0,
  flapUm: inches(3.5),
  jacketWiderUm: inches(0.125),
  barcodeFromSpineUm: inches(0.25),
  barcodeFromFootUm: inches(0.25),
  barcodeWidthUm: 38_000,
  barcodeHeightUm: 31_000,
  spineStepUm: 0,
  pageMultiple: 2,
};

/** The usual figures with whatever the printer states in their place. */
export function figuresWith(...given: readonly GivenFigures[]): PrinterFigures {
  const stated = given.flatMap((figures) => Object.entries(figures).filter(([, um]) => um !== undefined));
  return { ...USUAL_FIGURES, ...Object.fromEntries(stated) };
}
