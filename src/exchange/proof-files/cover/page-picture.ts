import { encode } from 'fast-png';
import type { PagePicture } from '../../../contract/proof-checks/facts.ts';
import type { Raster } from './raster.ts';

/** A page as it is shown on a screen: PNG without transparency. */
export function pagePictureOf({ width, height, rgba }: Raster, page: number): PagePicture {
  const data = new Uint8Array(width * height * 3);
  for (let from = 0, to = 0; from < rgba.length; from += 4, to += 3)
    data.set(rgba.subarray(from, from + 3), to);
  const png = encode({ width, height, data, channels: 3, depth: 8 });
  return { page, widthPx: width, heightPx: height, png: Buffer.from(png).toString('base64') };
}
