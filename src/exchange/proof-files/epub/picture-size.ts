/** Width and height in pixels. */
export interface PictureSize {
  widthPx: number;
  heightPx: number;
}

const MOST_PX = 1_000_000;

function sized(widthPx: number, heightPx: number): PictureSize | null {
  const sane = (px: number) => Number.isFinite(px) && px >= 1 && px <= MOST_PX;
  return sane(widthPx) && sane(heightPx)
    ? { widthPx: Math.round(widthPx), heightPx: Math.round(heightPx) }
    : null;
}

/** The frame header of a JPEG (ITU-T T.81, B.2.2), found from marker to marker. */
function jpegSize(bytes: Buffer): PictureSize | null {
  let at = 2;
  while (at + 9 < bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) at += 1;
    else if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return sized(bytes.readUInt16BE(at + 7), bytes.readUInt16BE(at + 5));
    else at += 2 + Math.max(2, bytes.readUInt16BE(at + 2));
  }
  return null;
}

/** The three ways a WebP begins (RFC 9649). */
function webpSize(bytes: Buffer): PictureSize | null {
  if (bytes.length < 30) return null;
  const kind = bytes.toString('latin1', 12, 16);
  if (kind === 'VP8X') return sized(bytes.readUIntLE(24, 3) + 1, bytes.readUIntLE(27, 3) + 1);
  if (kind === 'VP8 ') return sized(bytes.readUInt16LE(26) & 0x3fff, bytes.readUInt16LE(28) & 0x3fff);
  if (kind !== 'VP8L') return null;
  const bits = bytes.readUInt32LE(21);
  return sized((bits & 0x3fff) + 1, ((bits >>> 14) & 0x3fff) + 1);
}

function svgSize(text: string): PictureSize | null {
  const [tag = ''] = /<svg\b[^>]{0,4000}/i.exec(text) ?? [];
  const view = /\bviewBox\s*=\s*["']\s*[-\d.]+[\s,]+[-\d.]+[\s,]+([\d.]+)[\s,]+([\d.]+)/i.exec(tag);
  const length = (name: string) =>
    Number(new RegExp(`\\s${name}\\s*=\\s*["']\\s*([\\d.]+)(?:px)?\\s*["']`, 'i').exec(tag)?.[1]);
  return sized(length('width'), length('height')) ?? sized(Number(view?.[1]), Number(view?.[2]));
}

/** Size of a PNG, JPEG, GIF, WebP or SVG picture by its header; null where it tells none. Nothing is decoded. */
export function pictureSize(bytes: Buffer): PictureSize | null {
  if (bytes.length < 24) return null;
  if (bytes.readUInt32BE(0) === 0x89504e47) return sized(bytes.readUInt32BE(16), bytes.readUInt32BE(20));
  if (bytes.readUInt16BE(0) === 0xffd8) return jpegSize(bytes);
  const head = bytes.toString('latin1', 0, 12);
  if (/^GIF8[79]a/.test(head)) return sized(bytes.readUInt16LE(6), bytes.readUInt16LE(8));
  if (/^RIFF.{4}WEBP$/s.test(head)) return webpSize(bytes);
  return svgSize(bytes.toString('utf8', 0, Math.min(bytes.length, 20_000)));
}
