/** The bar code of a book: EAN-13 with the ISBN above it and, where asked for, a five-digit add-on. */
export { type BarcodeGeometry, barcodeGeometry } from './geometry.ts';
export type { BarcodeOptions, BarcodePngOptions } from './options.ts';
export { barcodePdf } from './pdf.ts';
export { type BarcodePixels, barcodePixels } from './pixels.ts';
export { barcodePng } from './png.ts';
export { barcodeSvg } from './svg.ts';
