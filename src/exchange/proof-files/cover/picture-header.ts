import type { PictureFacts } from '../../../contract/proof-checks/facts.ts';
import { unreadable } from '../watch.ts';
import type { Bytes } from './bytes.ts';
import { type JpegHeader, jpegHeader } from './jpeg-header.ts';
import { type PngHeader, pngHeader } from './png-header.ts';

export type PictureHeader = PngHeader | JpegHeader;

/**
 * Most pixels of a picture: a jacket of 20 × 9.5 inches has 68 million at 600 to the inch. Parts are decoded as they are
 * drawn, so this bounds time more than memory.
 */
const MOST_PIXELS = 150_000_000;
const MOST_SIDE = 60_000;

/**
 * What a PNG or JPEG says of itself; nothing is decoded.
 * @throws Refusal BAD_INPUT where it is damaged, cut short or too large
 */
export function pictureHeader(source: Bytes, format: PictureFacts['format']): PictureHeader {
  const header = format === 'PNG' ? pngHeader(source) : jpegHeader(source);
  const { widthPx, heightPx } = header;
  if (widthPx < 1 || heightPx < 1) throw unreadable('The picture has no size: export it again.');
  if (widthPx > MOST_SIDE || heightPx > MOST_SIDE || widthPx * heightPx > MOST_PIXELS)
    throw unreadable(
      `The picture has ${widthPx} × ${heightPx} pixels; at most ${MOST_PIXELS / 1_000_000} million are read. 600 to the inch are enough for a cover: export it at that.`,
    );
  return header;
}
