import type { CoverDrawing, Label, Stroke } from './drawing.ts';

const STYLE: Record<Stroke | 'fold', string> = {
  edge: 'stroke-dasharray="1 1"',
  cut: '',
  fold: 'stroke-dasharray="4 2"',
  safe: 'stroke-dasharray="0.4 1"',
  barcode: '',
};

const mm = (um: number): string => String(Number((um / 1_000).toFixed(3)));

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
}

function word({ text, xUm, yUm, sizeUm, turned }: Label): string {
  const turn = turned ? ` transform="rotate(90 ${mm(xUm)} ${mm(yUm)})"` : '';
  return `<text x="${mm(xUm)}" y="${mm(yUm)}" font-size="${mm(sizeUm)}"${turn}>${escaped(text)}</text>`;
}

/** The drawing as a stand-alone SVG of true size, user units of one millimetre. */
export function coverSvg(drawing: CoverDrawing): string {
  const width = mm(drawing.widthUm);
  const height = mm(drawing.heightUm);
  const boxes = drawing.boxes.map(({ stroke, rect }) => {
    const place = `x="${mm(rect.xUm)}" y="${mm(rect.yUm)}" width="${mm(rect.widthUm)}" height="${mm(rect.heightUm)}"`;
    return `<rect ${place} ${STYLE[stroke]}/>`;
  });
  const folds = drawing.folds.map(
    ({ xUm, fromUm, toUm }) => `<path d="M${mm(xUm)} ${mm(fromUm)}V${mm(toUm)}" ${STYLE.fold}/>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img">`,
    `<title>${escaped(drawing.title)}</title>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    `<g fill="none" stroke="#000" stroke-width="0.2">${boxes.join('')}${folds.join('')}</g>`,
    `<g fill="#000" font-family="sans-serif" text-anchor="middle" dominant-baseline="central">${drawing.labels.map(word).join('')}</g>`,
    '</svg>',
    '',
  ].join('\n');
}
