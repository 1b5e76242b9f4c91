import type { Rect } from '../../rules/geometry/types.ts';
import { assemblePdf } from '../pdf-file.ts';
import type { CoverDrawing, Label, Stroke } from './drawing.ts';

/** Dash patterns in points. */
const DASHES: Record<Stroke | 'fold', string> = {
  edge: '[3 3] 0 d',
  cut: '[] 0 d',
  fold: '[11 6] 0 d',
  safe: '[1 3] 0 d',
  barcode: '[] 0 d',
};

/** Helvetica's width of the characters the labels use, in thousandths of their size: an average is enough to centre. */
const AVERAGE_WIDTH = 0.5;

const pt = (um: number): string => String(Number(((um * 72) / 25_400).toFixed(4)));

function text(label: Label, up: (yUm: number) => number): string {
  const { sizeUm, turned } = label;
  const half = (label.text.length * AVERAGE_WIDTH * sizeUm) / 2;
  const drop = sizeUm * 0.35;
  const escaped = label.text.replace(/[\\()]/g, '\\$&');
  const place = turned
    ? `0 -1 1 0 ${pt(label.xUm - drop)} ${pt(up(label.yUm - half))}`
    : `1 0 0 1 ${pt(label.xUm - half)} ${pt(up(label.yUm + drop))}`;
  return `BT /F1 ${pt(sizeUm)} Tf ${place} Tm (${escaped}) Tj ET`;
}

/**
 * The drawing as a one-page PDF of true size: MediaBox is the whole sheet, TrimBox what remains after cutting. A
 * template to lay under the design, not to print: its words use a standard font that is not embedded.
 */
export function coverPdf(drawing: CoverDrawing): Uint8Array {
  const up = (yUm: number) => drawing.heightUm - yUm;
  const box = ({ xUm, yUm, widthUm, heightUm }: Rect) =>
    `${pt(xUm)} ${pt(up(yUm + heightUm))} ${pt(widthUm)} ${pt(heightUm)} re S`;
  const content = [
    '0 G 0 g 0.5 w',
    ...drawing.boxes.flatMap(({ stroke, rect }) => [DASHES[stroke], box(rect)]),
    DASHES.fold,
    ...drawing.folds.map(
      ({ xUm, fromUm, toUm }) => `${pt(xUm)} ${pt(up(fromUm))} m ${pt(xUm)} ${pt(up(toUm))} l S`,
    ),
    ...drawing.labels.map((label) => text(label, up)),
  ].join('\n');
  const cut = drawing.boxes.find(({ stroke }) => stroke === 'cut')?.rect;
  const trim = cut
    ? ` /TrimBox [${pt(cut.xUm)} ${pt(up(cut.yUm + cut.heightUm))} ${pt(cut.xUm + cut.widthUm)} ${pt(up(cut.yUm))}]`
    : '';
  return assemblePdf([
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 ${pt(drawing.widthUm)} ${pt(drawing.heightUm)}]${trim} /Resources << /Font << /F1 5 0 R >> >> /Contents 4 0 R >>`,
    `<< /Length ${content.length} >>\nstream\n${content}\nendstream`,
    '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>',
    '<< /Producer (Edition Ledger) >>',
  ]);
}
