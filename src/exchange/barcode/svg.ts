import { barcodeGeometry } from './geometry.ts';
import { glyphSegments, type Segment } from './glyphs.ts';
import type { BarcodeOptions } from './options.ts';

/**
 * The bar code as a stand-alone SVG of true size: width and height in mm, user units of one mm, black on a
 * white ground, digits as outlines.
 * @throws Refusal BAD_INPUT naming the field
 */
export function barcodeSvg(options: BarcodeOptions): string {
  const geometry = barcodeGeometry(options);
  const width = mm(geometry.widthMm);
  const height = mm(geometry.heightMm);
  const bars = geometry.bars.map(
    (bar) => `M${mm(bar.xMm)} ${mm(bar.yMm)}h${mm(bar.widthMm)}v${mm(bar.heightMm)}h${mm(-bar.widthMm)}z`,
  );
  const text = geometry.glyphs.map((glyph) => glyphSegments(glyph).map(pathStep).join(''));
  const addOn = geometry.addOn ? `, add-on ${geometry.addOn.digits}` : '';
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img">`,
    `<title>Bar code ${geometry.isbn13}${addOn}</title>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    `<path fill="#000" d="${bars.join('')}"/>`,
    `<path fill="#000" d="${text.join('')}"/>`,
    '</svg>',
    '',
  ].join('\n');
}

/** Tenths of a micrometre are well below any press. */
function mm(value: number): string {
  return String(Number(value.toFixed(4)));
}

function pathStep(segment: Segment): string {
  const end = `${mm(segment.x)} ${mm(segment.y)}`;
  if (segment.type === 'Q') return `Q${mm(segment.cx)} ${mm(segment.cy)} ${end}`;
  if (segment.type === 'C')
    return `C${mm(segment.cx1)} ${mm(segment.cy1)} ${mm(segment.cx2)} ${mm(segment.cy2)} ${end}`;
  return segment.type + end;
}
