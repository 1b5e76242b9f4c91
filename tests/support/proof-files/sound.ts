/** A silent WAV of so many seconds: 8,000 samples of one byte a second. */
export function wav(seconds: number): Uint8Array {
  const data = Math.round(seconds * 8_000);
  const bytes = Buffer.alloc(44 + data, 0x80);
  bytes.write('RIFF', 0, 'latin1');
  bytes.writeUInt32LE(36 + data, 4);
  bytes.write('WAVEfmt ', 8, 'latin1');
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(8_000, 24);
  bytes.writeUInt32LE(8_000, 28);
  bytes.writeUInt16LE(1, 32);
  bytes.writeUInt16LE(8, 34);
  bytes.write('data', 36, 'latin1');
  bytes.writeUInt32LE(data, 40);
  return bytes;
}

/** A text frame of ID3v2.3, ISO 8859-1. */
function frame(id: string, text: string): Buffer {
  const body = Buffer.from(`\0${text}`, 'latin1');
  const head = Buffer.alloc(10);
  head.write(id, 'latin1');
  head.writeUInt32BE(body.length, 4);
  return Buffer.concat([head, body]);
}

/** Silent MPEG-1 layer III at 128 kbit/s and 44.1 kHz: frames of 417 bytes and 1,152 samples, tags before them. */
export function mp3(seconds: number, tags: Readonly<Record<string, string>> = {}): Uint8Array {
  const frames = Buffer.concat(Object.entries(tags).map(([id, text]) => frame(id, text)));
  const head = Buffer.from([0x49, 0x44, 0x33, 3, 0, 0, 0, 0, 0, 0]);
  for (let byte = 0; byte < 4; byte += 1) head[6 + byte] = (frames.length >>> (7 * (3 - byte))) & 0x7f;
  const one = Buffer.alloc(417);
  one.set([0xff, 0xfb, 0x90, 0x00]);
  const count = Math.round((seconds * 44_100) / 1_152);
  const sound = Buffer.concat(Array.from({ length: count }, () => one));
  return frames.length === 0 ? sound : Buffer.concat([head, frames, sound]);
}
