import { Refusal } from '../../contract/refusal.ts';
import { type BarcodeGeometry, layOut, NOMINAL_MODULE_MM } from './geometry.ts';
import { type BarcodeContent, type BarcodePngOptions, MAGNIFICATION, parsePngOptions } from './options.ts';

/** How far whole pixels may move the size from the one asked for, in per cent of it. Ours: no source gives a figure. */
export const SIZE_TOLERANCE_PERCENT = 5;

/** How far whole pixels may move the bar width reduction, in µm. Ours as well. */
export const REDUCTION_TOLERANCE_UM = 10;

const MM_PER_INCH = 25.4;

/** Resolutions that a refusal may point to. */
const COMMON_DPI = [300, 600, 1200, 2400] as const;

/** What becomes of a bar code on a grid of pixels. */
export interface BarcodePixels {
  dpi: number;
  pixelsPerModule: number;
  reductionPixels: number;
  widthPixels: number;
  heightPixels: number;
  /** The size really reached, in per cent of nominal, and its distance from the one asked for. */
  magnificationPercent: number;
  deviationPercent: number;
  /** The bar width reduction really reached. */
  reductionUm: number;
}

/**
 * The pixel sizes of a picture, for showing before it is made: modules are whole pixels, so the size moves a
 * little.
 * @throws Refusal BAD_INPUT when it moves by more than 5 per cent, or the reduction by more than 10 µm
 */
export function barcodePixels(options: BarcodePngOptions): BarcodePixels {
  const { content, dpi } = parsePngOptions(options);
  return fitToPixels(content, dpi).pixels;
}

/** The pixel sizes together with the geometry redrawn at the size that whole pixels give. */
export function fitToPixels(
  content: BarcodeContent,
  dpi: number,
): { pixels: BarcodePixels; geometry: BarcodeGeometry } {
  const pixelsPerModule = wholePixels(content.magnification, dpi);
  const magnificationPercent = percentOf(pixelsPerModule, dpi);
  const deviationPercent = deviation(content.magnification, dpi);
  if (Math.abs(deviationPercent) > SIZE_TOLERANCE_PERCENT)
    throw new Refusal('BAD_INPUT', sizeMessage(content.magnification, dpi), 'dpi');
  const geometry = layOut(content, (pixelsPerModule * MM_PER_INCH) / dpi);
  const reductionPixels = reductionInPixels(content.barWidthReductionUm, pixelsPerModule, dpi);
  return {
    geometry,
    pixels: {
      dpi,
      pixelsPerModule,
      reductionPixels,
      widthPixels: Math.round((geometry.widthMm * dpi) / MM_PER_INCH),
      heightPixels: Math.round((geometry.heightMm * dpi) / MM_PER_INCH),
      magnificationPercent,
      deviationPercent,
      reductionUm: (reductionPixels * MM_PER_INCH * 1000) / dpi,
    },
  };
}

/** Pixels of one module, fractions included. */
function modulePixels(magnification: number, dpi: number): number {
  return (NOMINAL_MODULE_MM * magnification * dpi) / 100 / MM_PER_INCH;
}

function percentOf(pixelsPerModule: number, dpi: number): number {
  return (pixelsPerModule / modulePixels(100, dpi)) * 100;
}

/** The nearest whole number of pixels whose size is still one that GS1 allows. */
function wholePixels(magnification: number, dpi: number): number {
  const least = Math.ceil(modulePixels(MAGNIFICATION.min, dpi));
  const most = Math.floor(modulePixels(MAGNIFICATION.max, dpi));
  return Math.max(least, Math.min(most, Math.round(modulePixels(magnification, dpi))));
}

function deviation(magnification: number, dpi: number): number {
  return (percentOf(wholePixels(magnification, dpi), dpi) / magnification - 1) * 100;
}

function sizeMessage(magnification: number, dpi: number): string {
  const reached = percentOf(wholePixels(magnification, dpi), dpi).toFixed(1);
  const better = COMMON_DPI.find(
    (other) => other > dpi && Math.abs(deviation(magnification, other)) <= SIZE_TOLERANCE_PERCENT,
  );
  const way = better === undefined ? '' : `a resolution of ${better} dpi, `;
  return `At ${dpi} dpi a code of ${magnification} per cent has modules of ${modulePixels(magnification, dpi).toFixed(2)} pixels, and whole pixels would make it ${reached} per cent: choose ${way}a magnification of ${reached} per cent, or SVG or PDF.`;
}

function reductionInPixels(reductionUm: number, pixelsPerModule: number, dpi: number): number {
  const pixelUm = (MM_PER_INCH * 1000) / dpi;
  const pixels = Math.min(Math.round(reductionUm / pixelUm), Math.floor(pixelsPerModule / 2));
  if (Math.abs(pixels * pixelUm - reductionUm) > REDUCTION_TOLERANCE_UM)
    throw new Refusal(
      'BAD_INPUT',
      `At ${dpi} dpi bars can only be narrowed in steps of ${pixelUm.toFixed(1)} µm, too coarse for ${reductionUm} µm: choose a whole step, a higher resolution, or SVG or PDF.`,
      'barWidthReductionUm',
    );
  return pixels;
}
