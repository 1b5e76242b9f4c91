import { unreadable } from '../watch.ts';
import { type Bytes, bytesAt } from './bytes.ts';
import { exifResolution, type Resolution } from './exif.ts';

/** What a JPEG says of itself (ITU-T T.81; JFIF; Adobe's marker). */
export interface JpegHeader {
  format: 'JPEG';
  widthPx: number;
  heightPx: number;
  resolution: Resolution | null;
  /** 1 grey, 3 colours, 4 for four inks. */
  components: number;
  /** Written with Adobe's marker: four inks are then stored the other way round. */
  adobe: boolean;
}

const MOST_SEGMENTS = 20_000;
/** Whatever else was appended to a file, its end is sought in so much of it. */
const TAIL_BYTES = 64 * 1024;

const cutShort = () => unreadable('The JPEG is cut short or damaged: export it again.');

export function jpegHeader(source: Bytes): JpegHeader {
  if (bytesAt(source, 0, 2)?.readUInt16BE(0) !== 0xffd8) throw cutShort();
  const tail = bytesAt(source, Math.max(0, source.size - TAIL_BYTES), Math.min(TAIL_BYTES, source.size));
  if (!tail?.includes(Buffer.from([0xff, 0xd9]))) throw cutShort();
  let jfif: Resolution | null = null;
  let exif: Resolution | null = null;
  let adobe = false;
  let from = 2;
  for (let i = 0; i < MOST_SEGMENTS; i += 1) {
    const head = bytesAt(source, from, 4);
    if (head === null || head[0] !== 0xff) throw cutShort();
    const marker = head[1] ?? 0;
    if (marker === 0xff) {
      from += 1;
      continue;
    }
    const length = head.readUInt16BE(2);
    const body = bytesAt(source, from + 4, Math.max(0, length - 2));
    if (body === null || length < 2 || marker === 0xda) throw cutShort();
    if (isFrame(marker)) return { format: 'JPEG', ...frame(marker, body), resolution: jfif ?? exif, adobe };
    if (marker === 0xe0 && body.toString('latin1', 0, 5) === 'JFIF\0') jfif ??= jfifResolution(body);
    if (marker === 0xe1 && body.toString('latin1', 0, 6) === 'Exif\0\0')
      exif ??= exifResolution(body.subarray(6));
    if (marker === 0xee && body.toString('latin1', 0, 5) === 'Adobe') adobe = true;
    from += 2 + length;
  }
  throw cutShort();
}

/** Start of frame: C0 to CF without the tables C4, C8 and CC (T.81, table B.1). */
function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
}

/** T.81, B.2.2: precision, lines, samples a line, components. */
function frame(marker: number, body: Buffer): Pick<JpegHeader, 'widthPx' | 'heightPx' | 'components'> {
  if (body.length < 6) throw cutShort();
  const components = body.readUInt8(5);
  if (marker > 0xc2 || body.readUInt8(0) !== 8 || ![1, 3, 4].includes(components))
    throw unreadable(
      'The JPEG is of an uncommon kind that cannot be read: export it as an ordinary JPEG of 8 bits, or as a PDF.',
    );
  return { widthPx: body.readUInt16BE(3), heightPx: body.readUInt16BE(1), components };
}

/** JFIF: unit 1 is the inch, 2 the centimetre; 0 tells the shape of a pixel only. */
function jfifResolution(body: Buffer): Resolution | null {
  if (body.length < 12) return null;
  const per = { 1: 1, 2: 2.54 }[body.readUInt8(7)];
  const [x, y] = [body.readUInt16BE(8), body.readUInt16BE(10)];
  return per !== undefined && x > 0 && y > 0 ? { x: x * per, y: y * per } : null;
}
