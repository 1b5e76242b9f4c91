import { fileURLToPath } from 'node:url';
import PDFDocument from 'pdfkit';
import { assemblePdf } from '../../../src/exchange/pdf-file.ts';

/** The embedded face of what is drawn. */
export const NOTO_SERIF = fileURLToPath(
  new URL('../../../resources/fonts/NotoSerif_400Regular.ttf', import.meta.url),
);

/** Draws a PDF with PDFKit, in an embedded face unless the drawing chooses another; sizes are points. */
export function drawPdf(
  options: PDFKit.PDFDocumentOptions,
  draw: (doc: PDFKit.PDFDocument) => void,
): Promise<Uint8Array> {
  const { promise, resolve, reject } = Promise.withResolvers<Uint8Array>();
  const doc = new PDFDocument({ autoFirstPage: false, font: NOTO_SERIF, margin: 54, ...options });
  const parts: Uint8Array[] = [];
  doc.on('data', (part: Uint8Array) => parts.push(part));
  doc.on('end', () => resolve(Buffer.concat(parts)));
  doc.on('error', reject);
  draw(doc);
  doc.end();
  return promise;
}

/** A PDF of pages written by hand: entries of each page, and what is drawn on it in Helvetica as /F. */
export function rawPdf(
  pages: readonly { entries?: string; content?: string }[],
  inherited = '/MediaBox [0 0 432 648]',
): Uint8Array {
  const kids = pages.map((_, i) => `${4 + i * 2} 0 R`).join(' ');
  return assemblePdf([
    '<< /Type /Catalog /Pages 2 0 R >>',
    `<< /Type /Pages /Kids [${kids}] /Count ${pages.length} ${inherited} /Resources << /Font << /F 3 0 R >> >> >>`,
    '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>',
    ...pages.flatMap(({ entries = '', content = '' }, i) => [
      `<< /Type /Page /Parent 2 0 R /Contents ${5 + i * 2} 0 R ${entries} >>`,
      `<< /Length ${content.length} >>\nstream\n${content}\nendstream`,
    ]),
    '<< /Title (Made by hand) >>',
  ]);
}
