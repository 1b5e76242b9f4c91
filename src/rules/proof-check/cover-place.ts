import type { Box } from '../../contract/proof-checks/facts.ts';
import type { Panel, PanelKind, Rect } from '../geometry/types.ts';
import type { Fit } from './cover-fit.ts';
import { rectOf } from './cover-line.ts';
import type { SheetSeen } from './cover-size.ts';

/** The computed sheet laid over the page as shown, in micrometres. */
export interface Laid {
  fit: Fit;
  /** Where the sheet is cut or turned in. */
  trimmed: Rect;
  panels: readonly Panel[];
}

const moved = (rect: Rect, xUm: number, yUm: number): Rect => ({
  ...rect,
  xUm: rect.xUm + xUm,
  yUm: rect.yUm + yUm,
});
const middle = ({ xUm, yUm, widthUm, heightUm }: Rect) => [xUm + widthUm / 2, yUm + heightUm / 2] as const;

/** Lays the sheet that fits over the one that is seen, middle on middle. */
export function laidOver(fit: Fit, seen: SheetSeen): Laid {
  const { sheet } = fit;
  const own =
    seen.trimmed || fit.bare
      ? sheet.trimmed
      : { xUm: 0, yUm: 0, widthUm: sheet.widthUm, heightUm: sheet.heightUm };
  const [toX, toY] = middle(seen.trimmed ?? seen.whole);
  const [fromX, fromY] = middle(own);
  const [x, y] = [toX - fromX, toY - fromY];
  return {
    fit,
    trimmed: moved(sheet.trimmed, x, y),
    panels: sheet.panels.map((panel) => ({
      ...panel,
      ...moved(panel, x, y),
      safe: panel.safe && moved(panel.safe, x, y),
    })),
  };
}

export const panelOf = ({ panels }: Laid, kind: PanelKind): Panel | undefined =>
  panels.find((panel) => panel.kind === kind);

/** The panel that the middle of a place lies on. */
export function panelAt({ panels }: Laid, box: Box): Panel | undefined {
  const [x, y] = middle(rectOf(box));
  return panels.find(
    ({ xUm, yUm, widthUm, heightUm }) => x >= xUm && x < xUm + widthUm && y >= yUm && y < yUm + heightUm,
  );
}

/** How far a rectangle stands out of another at its worst side; not above 0 where it lies within. */
export function beyond(inner: Rect, outer: Rect): number {
  return Math.max(
    outer.xUm - inner.xUm,
    outer.yUm - inner.yUm,
    inner.xUm + inner.widthUm - outer.xUm - outer.widthUm,
    inner.yUm + inner.heightUm - outer.yUm - outer.heightUm,
  );
}
