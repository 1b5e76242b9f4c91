/** Pixels to the inch, across and down. */
export interface Resolution {
  x: number;
  y: number;
}

/** TIFF tags: XResolution, YResolution, ResolutionUnit. */
const X = 0x011a;
const Y = 0x011b;
const UNIT = 0x0128;
const MOST_ENTRIES = 200;

/** The resolution in the first directory of Exif data (TIFF 6.0, section 2); null where it tells none. */
export function exifResolution(data: Buffer): Resolution | null {
  if (data.length < 8) return null;
  const order = data.toString('latin1', 0, 2);
  if (order !== 'II' && order !== 'MM') return null;
  const little = order === 'II';
  const short = (at: number) =>
    at + 2 > data.length ? 0 : little ? data.readUInt16LE(at) : data.readUInt16BE(at);
  const long = (at: number) =>
    at + 4 > data.length ? 0 : little ? data.readUInt32LE(at) : data.readUInt32BE(at);
  const start = long(4);
  const entries = Math.min(short(start), MOST_ENTRIES);
  const values = new Map<number, number>();
  for (let i = 0; i < entries; i += 1) {
    const at = start + 2 + i * 12;
    const tag = short(at);
    const place = long(at + 8);
    if (tag === UNIT) values.set(tag, short(at + 8));
    if (tag === X || tag === Y) values.set(tag, long(place) / Math.max(1, long(place + 4)));
  }
  const [x = 0, y = 0] = [values.get(X), values.get(Y)];
  // 2 is the inch and what is meant where no unit is given; 3 the centimetre; 1 none.
  const per = { 2: 1, 3: 2.54 }[values.get(UNIT) ?? 2];
  return per !== undefined && x > 0 && y > 0 ? { x: x * per, y: y * per } : null;
}
