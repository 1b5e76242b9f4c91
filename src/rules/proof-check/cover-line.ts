import type { Box, CheckLine, CheckState } from '../../contract/proof-checks/facts.ts';
import type { Rect } from '../geometry/types.ts';
import { placedLineOf, shownSize, umOf } from './place-line.ts';

interface Said {
  expected?: string;
  found?: string;
  advice?: string;
  page?: number;
  box?: Box | null;
}

/** One line about a cover, with the place it was seen at where there is one. */
export function coverLine(
  check: string,
  label: string,
  state: CheckState,
  { page = 1, box, ...said }: Said = {},
): CheckLine {
  return placedLineOf(`cover.${check}`, label, state, { ...said, place: box ? { page, box } : null });
}

/** A place on a page in micrometres. */
export function rectOf({ xPt, yPt, widthPt, heightPt }: Box): Rect {
  return { xUm: umOf(xPt), yUm: umOf(yPt), widthUm: umOf(widthPt), heightUm: umOf(heightPt) };
}

/** '324.9 × 235 mm' */
export const sizeIn = ({ widthUm, heightUm }: { widthUm: number; heightUm: number }, unit: 'mm' | 'in') =>
  shownSize(widthUm, heightUm, unit);
