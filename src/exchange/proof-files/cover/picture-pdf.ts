import { type Bytes, joined, type Piece } from './bytes.ts';
import type { JpegHeader } from './jpeg-header.ts';
import type { PictureHeader } from './picture-header.ts';
import type { PngHeader } from './png-header.ts';

/**
 * A picture as the only thing on a PDF page of one point a pixel, its compressed pixels taken over as they are: what draws
 * pages then decodes it part by part, in memory of its own. A PNG that is interlaced or partly transparent has no such
 * form (ISO 32000-1, 8.9.5), so there this is null.
 */
export function pictureAsPdf(source: Bytes, header: PictureHeader): Bytes | null {
  if (header.format === 'JPEG')
    return pageOf(header, jpegEntries(header), [{ of: source, from: 0, length: source.size }]);
  if (header.interlaced || header.transparent) return null;
  return pageOf(header, pngEntries(header), header.pixels);
}

function jpegEntries({ components, adobe }: JpegHeader): string {
  const space = { 1: '/DeviceGray', 3: '/DeviceRGB', 4: '/DeviceCMYK' }[components];
  const decode = components === 4 && adobe ? ' /Decode [1 0 1 0 1 0 1 0]' : '';
  return `/ColorSpace ${space} /BitsPerComponent 8 /Filter /DCTDecode${decode}`;
}

/** PNG's rows and their filters are predictor 15 of PDF. */
function pngEntries({ kind, depth, palette, widthPx }: PngHeader): string {
  const colours = kind === 2 ? 3 : 1;
  const table = palette ?? Buffer.alloc(3);
  const space =
    kind === 3
      ? `[/Indexed /DeviceRGB ${Math.floor(table.length / 3) - 1} <${table.toString('hex')}>]`
      : kind === 2
        ? '/DeviceRGB'
        : '/DeviceGray';
  return `/ColorSpace ${space} /BitsPerComponent ${depth} /Filter /FlateDecode /DecodeParms << /Predictor 15 /Colors ${colours} /BitsPerComponent ${depth} /Columns ${widthPx} >>`;
}

function pageOf({ widthPx, heightPx }: PictureHeader, entries: string, data: readonly Piece[]): Bytes {
  const length = data.reduce((sum, piece) => sum + piece.length, 0);
  const draw = `${widthPx} 0 0 ${heightPx} 0 0 cm /P Do`;
  const objects: Piece[][] = [
    [ascii('<< /Type /Catalog /Pages 2 0 R >>')],
    [ascii('<< /Type /Pages /Kids [3 0 R] /Count 1 >>')],
    [
      ascii(
        `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 ${widthPx} ${heightPx}] /Resources << /XObject << /P 5 0 R >> >> /Contents 4 0 R >>`,
      ),
    ],
    [ascii(`<< /Length ${draw.length} >>\nstream\n${draw}\nendstream`)],
    [
      ascii(
        `<< /Type /XObject /Subtype /Image /Width ${widthPx} /Height ${heightPx} ${entries} /Length ${length} >>\nstream\n`,
      ),
      ...data,
      ascii('\nendstream'),
    ],
  ];
  return joined(numbered(objects));
}

const ascii = (text: string): Uint8Array => new TextEncoder().encode(text);

function numbered(objects: readonly Piece[][]): Piece[] {
  const pieces: Piece[] = [ascii('%PDF-1.7\n')];
  const size = () => pieces.reduce((sum, piece) => sum + piece.length, 0);
  const offsets = objects.map((object, i) => {
    const offset = size();
    pieces.push(ascii(`${i + 1} 0 obj\n`), ...object, ascii('\nendobj\n'));
    return `${String(offset).padStart(10, '0')} 00000 n \n`;
  });
  const table = size();
  const count = objects.length + 1;
  pieces.push(
    ascii(
      `xref\n0 ${count}\n0000000000 65535 f \n${offsets.join('')}trailer\n<< /Size ${count} /Root 1 0 R >>\nstartxref\n${table}\n%%EOF\n`,
    ),
  );
  return pieces;
}
