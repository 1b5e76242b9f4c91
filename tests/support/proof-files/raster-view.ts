import { cropped, type Raster } from '../../../src/exchange/proof-files/cover/raster.ts';
import type { SheetView } from '../../../src/exchange/proof-files/cover/view.ts';

/** Pixels as a sheet of `dpi`; drawn smaller by leaving pixels out. */
export function viewOf(raster: Raster, dpi: number): SheetView {
  return {
    widthPt: (raster.width * 72) / dpi,
    heightPt: (raster.height * 72) / dpi,
    finestDpi: dpi,
    draw(asked, { x, y, width, height }) {
      if (asked === dpi) return cropped(raster, x, y, width, height);
      const by = dpi / asked;
      const words = new Uint32Array(raster.rgba.buffer);
      const out = new Uint32Array(width * height);
      for (let row = 0; row < height; row += 1)
        for (let column = 0; column < width; column += 1)
          out[row * width + column] =
            words[Math.floor((y + row) * by) * raster.width + Math.floor((x + column) * by)] ?? 0;
      return { width, height, rgba: new Uint8Array(out.buffer) };
    },
  };
}
