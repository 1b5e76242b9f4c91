import { addOnModules, darkRuns, mainModules } from '../../../src/exchange/barcode/modules.ts';
import type { Raster } from '../../../src/exchange/proof-files/cover/raster.ts';

type Rgb = readonly [number, number, number];

/** A sheet of one colour. */
export function sheetOf(width: number, height: number, colour: Rgb = [255, 255, 255]): Raster {
  const rgba = new Uint8Array(width * height * 4).fill(255);
  const raster = { width, height, rgba };
  fill(raster, 0, 0, width, height, colour);
  return raster;
}

export function fill(raster: Raster, x: number, y: number, width: number, height: number, colour: Rgb): void {
  const words = new Uint32Array(raster.rgba.buffer);
  const [red, green, blue] = colour;
  const word = ((255 << 24) | (blue << 16) | (green << 8) | red) >>> 0;
  const [from, to] = [Math.max(0, x), Math.min(raster.width, x + width)];
  for (let row = Math.max(0, y); row < Math.min(raster.height, y + height); row += 1)
    words.fill(word, row * raster.width + from, row * raster.width + to);
}

export interface PaintedCode {
  digits: string;
  addOn?: string;
  /** Pixels to a module. */
  module: number;
  /** Pixels of ordinary bars; guards stand out by five modules. */
  height: number;
  gap?: number;
  ink?: Rgb;
  ground?: Rgb;
}

/** Bars from (x, y) on, without any ground around them. */
export function paintBars(raster: Raster, x: number, y: number, code: PaintedCode): void {
  const { digits, addOn, module, height, gap = 9, ink = [0, 0, 0] } = code;
  for (const { start, modules } of darkRuns(mainModules(digits))) {
    const guard = start < 3 || (start >= 45 && start < 50) || start >= 92;
    fill(raster, x + start * module, y, modules * module, height + (guard ? 5 * module : 0), ink);
  }
  if (addOn === undefined) return;
  for (const { start, modules } of darkRuns(addOnModules(addOn)))
    fill(raster, x + (95 + gap + start) * module, y + 9 * module, modules * module, height - 4 * module, ink);
}

/** Turned clockwise by quarters. */
export function turned(raster: Raster, quarters: number): Raster {
  let out = raster;
  for (let i = 0; i < quarters; i += 1) {
    const { width, height } = out;
    const words = new Uint32Array(out.rgba.buffer);
    const next = new Uint32Array(words.length);
    for (let y = 0; y < height; y += 1)
      for (let x = 0; x < width; x += 1) next[x * height + height - 1 - y] = words[y * width + x] ?? 0;
    out = { width: height, height: width, rgba: new Uint8Array(next.buffer) };
  }
  return out;
}
