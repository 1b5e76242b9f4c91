import type { BarcodeFacts, Box, SheetEdges } from '../../../contract/proof-checks/facts.ts';
import type { PdfPage } from '../pdf/page.ts';
import { told, type Watch } from '../watch.ts';
import { findBarcodes, lookAt } from './find.ts';
import { viewOfPage } from './page-view.ts';
import { lightness } from './raster.ts';
import { sheetEdgesOf } from './sheet-edges.ts';
import type { SheetView } from './view.ts';

/** What is to be seen on a sheet alone: its bar codes, and how near its edges print begins. */
export interface SheetFacts {
  barcodes: BarcodeFacts[];
  edges: SheetEdges;
}

/**
 * Looks at a sheet as it is drawn. `within` is the part that its edges are looked for at, the whole where it is null.
 * @throws Refusal CANCELLED where it was called off
 */
export async function readSheet(
  view: SheetView,
  page: number,
  within: Box | null,
  watch: Watch,
): Promise<SheetFacts> {
  told(watch, 0, 2, 'Drawing the cover');
  const look = lookAt(view);
  told(watch, 1, 2, 'Looking for bar codes');
  const found = await findBarcodes(view, look, (done, total, what) => told(watch, done, total, what));
  const whole = { xPt: 0, yPt: 0, widthPt: view.widthPt, heightPt: view.heightPt };
  return {
    barcodes: found.map((one) => ({ ...one, page })),
    edges: sheetEdgesOf(lightness(look.raster), look.dpi / 72, within ?? whole),
  };
}

/** The same of a page of a PDF, within its bleed box where it states one. */
export function readCoverPage(page: PdfPage, bleed: Box | null, watch: Watch): Promise<SheetFacts> {
  return readSheet(viewOfPage(page), page.number, bleed, watch);
}
