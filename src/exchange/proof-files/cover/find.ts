import type { Box } from '../../../contract/proof-checks/facts.ts';
import { type FoundBarcode, measured, type Placed } from './measured.ts';
import { opposite, uprightSpot } from './place.ts';
import { lightness, type Raster, upright } from './raster.ts';
import { scan } from './scan.ts';
import { scanLines } from './scan-lines.ts';
import { boundedDpi, type SheetView, sizeAt } from './view.ts';

/** At 300 pixels to the inch a module of the smallest size that GS1 allows has three pixels; the reader needs one and a half. */
const LOOK_DPI = 300;
const LOOK_PIXELS = 20_000_000;
const TILE = 3_000;
/** A code of 120 % with its quiet zones is so wide at 600 pixels to the inch. */
const TILE_OVERLAP = 1_060;
const MOST_TILES = 80;
const MOST_BARCODES = 50;

/** What is told while a sheet is looked through; may throw where the work was called off. */
export type Step = (done: number, total: number, what: string) => void;

/** The first look at a sheet, kept for what else is to be seen in it. */
export interface Look {
  raster: Raster;
  dpi: number;
}

export function lookAt(view: SheetView): Look {
  const dpi = boundedDpi(view, view.finestDpi ?? LOOK_DPI, LOOK_PIXELS);
  return { raster: view.draw(dpi, { x: 0, y: 0, ...sizeAt(view, dpi) }), dpi };
}

/** All ISBNs in bar codes on a sheet, each measured; from the top down. */
export async function findBarcodes(view: SheetView, look: Look, step: Step): Promise<FoundBarcode[]> {
  let seen: Placed[] = (await scan(look.raster)).map((one) => ({ ...one, dpi: look.dpi }));
  if (seen.length === 0) seen = byBarsAlone(look);
  if (seen.length === 0) seen = await lookCloser(view, look.dpi, step);
  const found: FoundBarcode[] = [];
  for (const [i, sighting] of seen.entries()) {
    step(i, seen.length, 'Measuring bar codes');
    const one = measured(view, sighting);
    const same = found.findIndex((other) => other.digits === one.digits && meet(other.box, one.box));
    if (same === -1) found.push(one);
    else if (found[same]?.barHeightPt === null) found[same] = one;
  }
  found.sort((a, b) => a.box.yPt - b.box.yPt || a.box.xPt - b.box.xPt);
  return found.slice(0, MOST_BARCODES);
}

/** Codes whose quiet zones are too narrow for the reader, lying or standing. */
function byBarsAlone({ raster, dpi }: Look): Placed[] {
  const grey = lightness(raster);
  return ([0, 90] as const).flatMap((turned) => {
    const lines = upright(grey, turned);
    return scanLines(lines).map(({ digits, reversed, ...spot }) => ({
      digits,
      addOn: null,
      inverted: false,
      dpi,
      turned: reversed ? opposite(turned) : turned,
      ...uprightSpot(spot, lines, turned === 0 ? 0 : 270),
    }));
  });
}

/** Looks again at a higher resolution, part by part. */
async function lookCloser(view: SheetView, before: number, step: Step): Promise<Placed[]> {
  const dpi = view.finestDpi ?? LOOK_DPI;
  if (dpi <= before * 1.01) return [];
  const size = sizeAt(view, dpi);
  const stride = TILE - TILE_OVERLAP;
  const columns = Math.max(1, Math.ceil((size.width - TILE_OVERLAP) / stride));
  const rows = Math.max(1, Math.ceil((size.height - TILE_OVERLAP) / stride));
  const total = Math.min(columns * rows, MOST_TILES);
  const found: Placed[] = [];
  for (let tile = 0; tile < total; tile += 1) {
    step(tile, total, 'Looking for small bar codes');
    const x = (tile % columns) * stride;
    const y = Math.floor(tile / columns) * stride;
    const part = { x, y, width: Math.min(TILE, size.width - x), height: Math.min(TILE, size.height - y) };
    for (const one of await scan(view.draw(dpi, part)))
      found.push({
        ...one,
        dpi,
        left: one.left + x,
        right: one.right + x,
        top: one.top + y,
        bottom: one.bottom + y,
      });
  }
  return found;
}

function meet(a: Box, b: Box): boolean {
  return (
    Math.max(a.xPt, b.xPt) < Math.min(a.xPt + a.widthPt, b.xPt + b.widthPt) &&
    Math.max(a.yPt, b.yPt) < Math.min(a.yPt + a.heightPt, b.yPt + b.heightPt)
  );
}
