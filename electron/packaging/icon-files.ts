/** A square picture: side in pixels, and its PNG. */
export interface Picture {
  side: number;
  png: Uint8Array;
}

/**
 * A Windows icon: the ICO container of Microsoft's icon format, whose entries may be whole PNGs since Windows
 * Vista. Pictures of up to 256 pixels, smallest first.
 */
export function icoOf(pictures: readonly Picture[]): Uint8Array {
  const head = Buffer.alloc(6 + 16 * pictures.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(pictures.length, 4);
  let offset = head.byteLength;
  pictures.forEach(({ side, png }, index) => {
    const at = 6 + 16 * index;
    // A byte of 0 stands for 256.
    head.writeUInt8(side % 256, at);
    head.writeUInt8(side % 256, at + 1);
    head.writeUInt16LE(1, at + 4);
    head.writeUInt16LE(32, at + 6);
    head.writeUInt32LE(png.byteLength, at + 8);
    head.writeUInt32LE(offset, at + 12);
    offset += png.byteLength;
  });
  return Buffer.concat([head, ...pictures.map(({ png }) => png)]);
}

/** Kinds of the ICNS container that hold a PNG, by the side of the picture in pixels. */
const ICNS_KINDS: Record<number, readonly string[]> = {
  32: ['ic11'],
  64: ['ic12'],
  128: ['ic07'],
  256: ['ic08', 'ic13'],
  512: ['ic09', 'ic14'],
  1024: ['ic10'],
};

/** A macOS icon: the ICNS container with PNG entries, those for denser screens included. */
export function icnsOf(pictures: readonly Picture[]): Uint8Array {
  const entry = (kind: string, data: Uint8Array) => {
    const head = Buffer.alloc(8);
    head.write(kind, 0, 'latin1');
    head.writeUInt32BE(data.byteLength + 8, 4);
    return Buffer.concat([head, data]);
  };
  const entries = pictures.flatMap(({ side, png }) =>
    (ICNS_KINDS[side] ?? []).map((kind) => entry(kind, png)),
  );
  return entry('icns', Buffer.concat(entries));
}
