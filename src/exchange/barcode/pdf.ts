import { assemblePdf } from '../pdf-file.ts';
import { type BarcodeGeometry, barcodeGeometry } from './geometry.ts';
import { glyphSegments, mapSegment, type Segment } from './glyphs.ts';
import type { BarcodeOptions } from './options.ts';

const POINTS_PER_MM = 72 / 25.4;

/**
 * The bar code as a one-page vector PDF whose MediaBox is the true size in points. Bars and digits are filled
 * paths in DeviceGray black on a white ground: nothing for a press to separate, and no font to embed. The same
 * options always give the same bytes.
 * @throws Refusal BAD_INPUT naming the field
 */
export function barcodePdf(options: BarcodeOptions): Uint8Array {
  const geometry = barcodeGeometry(options);
  const box = `0 0 ${pt(geometry.widthMm)} ${pt(geometry.heightMm)}`;
  const content = drawing(geometry);
  return assemblePdf([
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    `<< /Type /Page /Parent 2 0 R /MediaBox [${box}] /TrimBox [${box}] /Resources << >> /Contents 4 0 R >>`,
    `<< /Length ${content.length} >>\nstream\n${content}\nendstream`,
    `<< /Title (Bar code ${geometry.isbn13}) /Producer (Edition Ledger) >>`,
  ]);
}

/** The page's content: PDF counts y upwards, the geometry downwards. All of it is ASCII. */
function drawing(geometry: BarcodeGeometry): string {
  const up = (y: number) => geometry.heightMm - y;
  const bars = geometry.bars.map(
    (bar) => `${pt(bar.xMm)} ${pt(up(bar.yMm + bar.heightMm))} ${pt(bar.widthMm)} ${pt(bar.heightMm)} re`,
  );
  const text = geometry.glyphs.flatMap((glyph) =>
    outlineSteps(glyphSegments(glyph).map((segment) => mapSegment(segment, (x) => x, up))),
  );
  return [
    '1 g',
    `0 0 ${pt(geometry.widthMm)} ${pt(geometry.heightMm)} re f`,
    '0 g',
    ...bars,
    'f',
    ...text,
    'f',
  ].join('\n');
}

function outlineSteps(segments: Segment[]): string[] {
  let from = { x: 0, y: 0 };
  return segments.map((segment) => {
    const step = outlineStep(segment, from);
    from = segment;
    return step;
  });
}

/** PDF has cubic curves only; a quadratic one is raised, its control points two thirds of the way. */
function outlineStep(segment: Segment, from: { x: number; y: number }): string {
  const end = `${pt(segment.x)} ${pt(segment.y)}`;
  if (segment.type === 'M') return `${end} m`;
  if (segment.type === 'L') return `${end} l`;
  if (segment.type === 'C')
    return `${pt(segment.cx1)} ${pt(segment.cy1)} ${pt(segment.cx2)} ${pt(segment.cy2)} ${end} c`;
  const raise = (start: number, control: number) => pt(start + (2 / 3) * (control - start));
  const first = `${raise(from.x, segment.cx)} ${raise(from.y, segment.cy)}`;
  return `${first} ${raise(segment.x, segment.cx)} ${raise(segment.y, segment.cy)} ${end} c`;
}

/** Millimetres as points; the fourth decimal is a thirtieth of a micrometre. */
function pt(mm: number): string {
  return String(Number((mm * POINTS_PER_MM).toFixed(4)));
}
