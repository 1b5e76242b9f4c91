import type { PagePicture, PictureFacts } from '../../../contract/proof-checks/facts.ts';
import { openPdf } from '../pdf/document.ts';
import { fileSource } from '../pdf/source.ts';
import { unreadable, type Watch } from '../watch.ts';
import type { Bytes } from './bytes.ts';
import { decodePng } from './decode-png.ts';
import { pagePictureOf } from './page-picture.ts';
import { viewOfPicture, viewOfRaster } from './page-view.ts';
import { type PictureHeader, pictureHeader } from './picture-header.ts';
import { pictureAsPdf } from './picture-pdf.ts';
import { readSheet } from './read-sheet.ts';
import { type SheetView, sizeAt } from './view.ts';

/** Where a picture states no resolution, places on it count so many pixels to the inch, one to the point. */
const UNSTATED_PPI = 72;
/** Longer side of the picture that is kept. */
const SHOWN_PX = 480;
/** Pixels that are wider than high by more than this are told. */
const SQUARE = 0.01;

/** Reads a cover that is a PNG or JPEG picture: what it states, its bar codes, its edges. */
export async function readPicture(
  path: string,
  format: PictureFacts['format'],
  watch: Watch,
): Promise<{ facts: PictureFacts; pictures: PagePicture[] }> {
  const source = fileSource(path);
  try {
    const header = pictureHeader(source, format);
    const { resolution } = header;
    const ppi = resolution === null ? null : Math.min(resolution.x, resolution.y);
    const stated = ppi === null ? null : Math.round(ppi * 100) / 100;
    return await withView(source, header, stated ?? UNSTATED_PPI, async (view) => {
      const { barcodes, edges } = await readSheet(view, 1, null, watch);
      const facts: PictureFacts = {
        of: 'picture',
        format,
        widthPx: header.widthPx,
        heightPx: header.heightPx,
        ppi: stated,
        colour: colourOf(header),
        barcodes,
        edges: stated === null ? null : edges,
        unread: unreadOf(header),
      };
      return { facts, pictures: [shown(view)] };
    });
  } finally {
    source.close();
  }
}

/** Opens a picture as something that can be drawn, and closes it again. */
async function withView<T>(
  source: Bytes,
  header: PictureHeader,
  ppi: number,
  use: (view: SheetView) => Promise<T>,
): Promise<T> {
  const page = pictureAsPdf(source, header);
  if (page === null) {
    if (header.format === 'JPEG') throw unreadable('The JPEG cannot be read: export it again.');
    return use(viewOfRaster(decodePng(header), ppi));
  }
  const document = await openPdf({ size: page.size, read: page.read, close: () => {} });
  const only = document.page(1);
  try {
    return await use(viewOfPicture(only, ppi));
  } finally {
    only.close();
    document.close();
  }
}

function shown(view: SheetView): PagePicture {
  const dpi = Math.min(view.finestDpi ?? 72, (SHOWN_PX * 72) / Math.max(view.widthPt, view.heightPt));
  return pagePictureOf(view.draw(dpi, { x: 0, y: 0, ...sizeAt(view, dpi) }), 1);
}

function colourOf(header: PictureHeader): PictureFacts['colour'] {
  if (header.format === 'JPEG') return header.components === 1 ? 'grey' : 'colour';
  if (header.kind !== 0 && header.kind !== 4) return 'colour';
  return header.depth === 1 ? 'black and white' : 'grey';
}

function unreadOf({ resolution }: PictureHeader): string[] {
  if (resolution === null || Math.abs(resolution.x / resolution.y - 1) <= SQUARE) return [];
  const { x, y } = resolution;
  return [
    `The picture states ${Math.round(x)} pixels to the inch across and ${Math.round(y)} down; the lower one was taken for both, so its size may be wrong.`,
  ];
}
