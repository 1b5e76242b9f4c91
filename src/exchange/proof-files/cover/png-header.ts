import { crc32 } from 'node:zlib';
import { unreadable } from '../watch.ts';
import { type Bytes, bytesAt, type Piece } from './bytes.ts';
import type { Resolution } from './exif.ts';

/** What a PNG says of itself (ISO/IEC 15948). */
export interface PngHeader {
  format: 'PNG';
  widthPx: number;
  heightPx: number;
  resolution: Resolution | null;
  depth: number;
  /** 0 grey, 2 colours, 3 palette, 4 grey and 6 colours with transparency. */
  kind: 0 | 2 | 3 | 4 | 6;
  interlaced: boolean;
  /** Some of it is transparent, by its kind or by a list. */
  transparent: boolean;
  palette: Buffer | null;
  /** The compressed pixels, one zlib stream in pieces. */
  pixels: Piece[];
  /** Header, palette, transparency and pixels as they stand in the file: all that decoding needs. */
  essential: Piece[];
}

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
/** Programs write pixels in pieces of 8 kB and more: enough for 1.6 GB. */
const MOST_CHUNKS = 200_000;
const ESSENTIAL = new Set(['IHDR', 'PLTE', 'tRNS', 'IDAT', 'IEND']);
const METRES_PER_INCH = 0.0254;

const cutShort = () => unreadable('The PNG is cut short or damaged: export it again.');

interface Chunk {
  kind: string;
  from: number;
  length: number;
}

export function pngHeader(source: Bytes): PngHeader {
  if (!bytesAt(source, 0, 8)?.equals(SIGNATURE)) throw cutShort();
  const chunks = chunksOf(source);
  const body = (kind: string, most: number) => {
    const chunk = chunks.find((one) => one.kind === kind);
    return chunk && chunk.length <= most ? bytesAt(source, chunk.from + 8, chunk.length) : null;
  };
  const head = chunks[0]?.kind === 'IHDR' ? body('IHDR', 13) : null;
  if (head === null || head.length !== 13) throw cutShort();
  const pixels = chunks.filter(({ kind }) => kind === 'IDAT');
  if (pixels.length === 0) throw cutShort();
  const kind = head.readUInt8(9);
  if (!isKind(kind) || ![1, 2, 4, 8, 16].includes(head.readUInt8(8)) || head.readUInt8(12) > 1)
    throw unreadable('The PNG is of a kind that the standard does not know: export it again.');
  return {
    format: 'PNG',
    widthPx: head.readUInt32BE(0),
    heightPx: head.readUInt32BE(4),
    resolution: resolutionOf(body('pHYs', 9)),
    depth: head.readUInt8(8),
    kind,
    interlaced: head.readUInt8(12) === 1,
    transparent: kind >= 4 || chunks.some((one) => one.kind === 'tRNS'),
    palette: body('PLTE', 768),
    pixels: pixels.map(({ from, length }) => ({ of: source, from: from + 8, length })),
    essential: [
      SIGNATURE,
      ...chunks
        .filter((one) => ESSENTIAL.has(one.kind))
        .map(({ from, length }) => ({ of: source, from, length: length + 12 })),
    ],
  };
}

function isKind(kind: number): kind is PngHeader['kind'] {
  return [0, 2, 3, 4, 6].includes(kind);
}

/** All chunks up to the last one; the sums of those that matter are checked. */
function chunksOf(source: Bytes): Chunk[] {
  const chunks: Chunk[] = [];
  for (let from = 8; chunks.length < MOST_CHUNKS; ) {
    const head = bytesAt(source, from, 8);
    if (head === null) throw cutShort();
    const chunk = { kind: head.toString('latin1', 4, 8), from, length: head.readUInt32BE(0) };
    if (from + 12 + chunk.length > source.size) throw cutShort();
    if (ESSENTIAL.has(chunk.kind)) checkSum(source, chunk);
    chunks.push(chunk);
    if (chunk.kind === 'IEND') return chunks;
    from += 12 + chunk.length;
  }
  throw unreadable('The PNG is in too many pieces to be read: export it again.');
}

const PART_BYTES = 1024 * 1024;

function checkSum(source: Bytes, { from, length }: Chunk): void {
  let sum = 0;
  for (let done = 0; done < length + 4; done += PART_BYTES) {
    const part = bytesAt(source, from + 4 + done, Math.min(PART_BYTES, length + 4 - done));
    if (part === null) throw cutShort();
    sum = crc32(part, sum);
  }
  if (bytesAt(source, from + 8 + length, 4)?.readUInt32BE(0) !== sum) throw cutShort();
}

/** pHYs: pixels to the unit, which is the metre where it is told. */
function resolutionOf(stated: Buffer | null): Resolution | null {
  if (stated === null || stated.length !== 9 || stated.readUInt8(8) !== 1) return null;
  const x = stated.readUInt32BE(0) * METRES_PER_INCH;
  const y = stated.readUInt32BE(4) * METRES_PER_INCH;
  return x > 0 && y > 0 ? { x, y } : null;
}
