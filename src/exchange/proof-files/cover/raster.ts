/** Pixels row by row from the top left; four bytes each: red, green, blue, 255. */
export interface Raster {
  width: number;
  height: number;
  rgba: Uint8Array;
}

/** One byte a pixel: 0 is black, 255 white. */
export interface Grey {
  width: number;
  height: number;
  values: Uint8Array;
}

/** How light each pixel is to the eye (ITU-R BT.601 weights). */
export function lightness({ width, height, rgba }: Raster): Grey {
  const values = new Uint8Array(width * height);
  for (let i = 0, at = 0; i < values.length; i += 1, at += 4)
    values[i] = ((rgba[at] ?? 0) * 77 + (rgba[at + 1] ?? 0) * 151 + (rgba[at + 2] ?? 0) * 28) >> 8;
  return { width, height, values };
}

/** How light each pixel is under the red light of a scanner. */
export function redness({ width, height, rgba }: Raster): Grey {
  const values = new Uint8Array(width * height);
  for (let i = 0; i < values.length; i += 1) values[i] = rgba[i * 4] ?? 0;
  return { width, height, values };
}

export function negative({ width, height, values }: Grey): Grey {
  return { width, height, values: values.map((value) => 255 - value) };
}

/** Turned so that what reads `turned` degrees clockwise reads from left to right. */
export function upright(grey: Grey, turned: 0 | 90 | 180 | 270): Grey {
  if (turned === 0) return grey;
  const { width, height, values } = grey;
  const sideways = turned !== 180;
  const out = {
    width: sideways ? height : width,
    height: sideways ? width : height,
    values: new Uint8Array(values.length),
  };
  for (let y = 0; y < out.height; y += 1)
    for (let x = 0; x < out.width; x += 1) {
      const from =
        turned === 90
          ? x * width + (width - 1 - y)
          : turned === 180
            ? (height - 1 - y) * width + (width - 1 - x)
            : (height - 1 - x) * width + y;
      out.values[y * out.width + x] = values[from] ?? 255;
    }
  return out;
}

/** A part of pixels, cut to what there is of it. */
export function cropped(raster: Raster, x: number, y: number, width: number, height: number): Raster {
  const wide = Math.max(0, Math.min(width, raster.width - x));
  const high = Math.max(0, Math.min(height, raster.height - y));
  const rgba = new Uint8Array(wide * high * 4);
  for (let row = 0; row < high; row += 1) {
    const start = ((y + row) * raster.width + x) * 4;
    rgba.set(raster.rgba.subarray(start, start + wide * 4), row * wide * 4);
  }
  return { width: wide, height: high, rgba };
}
