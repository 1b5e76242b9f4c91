import { open } from 'node:fs/promises';

/** What a file is by its first bytes; its name says nothing. */
export type Sort = 'PDF' | 'EPUB' | 'zip' | 'PNG' | 'JPEG' | 'sound' | 'other';

export interface Seen {
  sort: Sort;
  /** 'an EPUB', 'a PDF', 'a word processor’s document', as a sentence names it. */
  name: string;
}

const HEAD = 1024;

const ascii = (text: string) => Buffer.from(text, 'latin1');
const at = (head: Buffer, offset: number, sign: Buffer) =>
  head.subarray(offset, offset + sign.length).equals(sign);

/** Signatures by offset: each as its format states it. */
const SIGNS: readonly (readonly [offset: number, sign: Buffer, sort: Sort, name: string])[] = [
  [0, Buffer.from([0x89, 0x50, 0x4e, 0x47]), 'PNG', 'a PNG picture'],
  [0, Buffer.from([0xff, 0xd8, 0xff]), 'JPEG', 'a JPEG picture'],
  [0, ascii('GIF8'), 'other', 'a GIF picture'],
  [0, ascii('II*\0'), 'other', 'a TIFF picture'],
  [0, ascii('MM\0*'), 'other', 'a TIFF picture'],
  [0, ascii('8BPS'), 'other', 'a layered picture'],
  [0, ascii('%!PS'), 'other', 'a PostScript file'],
  [0, ascii('{\\rtf'), 'other', 'a word processor’s document'],
  [0, Buffer.from([0xd0, 0xcf, 0x11, 0xe0]), 'other', 'a word processor’s document of an older kind'],
  [0, ascii('ID3'), 'sound', 'a sound file'],
  [0, ascii('fLaC'), 'sound', 'a sound file'],
  [4, ascii('ftyp'), 'sound', 'a sound file'],
  [0, ascii('OggS'), 'other', 'a sound file of another kind (Ogg)'],
  [0, ascii('FORM'), 'other', 'a sound file of another kind (AIFF)'],
  [0, ascii('SQLite format 3\0'), 'other', 'a catalogue or another database'],
  [0, Buffer.from([0x1f, 0x8b]), 'other', 'a gzip archive'],
  [0, ascii('Rar!'), 'other', 'a RAR archive'],
  [0, Buffer.from([0x37, 0x7a, 0xbc, 0xaf]), 'other', 'a 7z archive'],
];

/** The name of the first entry of a zip tells an EPUB and most documents of word processors. */
function zipSort(head: Buffer): Seen {
  const length = head.length >= 30 ? head.readUInt16LE(26) : 0;
  const extra = head.length >= 30 ? head.readUInt16LE(28) : 0;
  const name = head.toString('latin1', 30, 30 + length);
  const content = head.toString('latin1', 30 + length + extra, 30 + length + extra + 80);
  if (name === 'mimetype' && content.startsWith('application/epub+zip'))
    return { sort: 'EPUB', name: 'an EPUB' };
  if (name === 'mimetype' && content.startsWith('application/vnd.oasis'))
    return { sort: 'other', name: 'a word processor’s document' };
  if (name === '[Content_Types].xml' || name.startsWith('_rels/'))
    return { sort: 'other', name: 'a word processor’s document' };
  return { sort: 'zip', name: 'a zip archive' };
}

/** MPEG audio without tags begins with a frame: eleven bits set, and no reserved version, layer, rate or frequency. */
function isMpegAudio(head: Buffer): boolean {
  const [first = 0, second = 0, third = 0] = head;
  const frame = first === 0xff && (second & 0xe0) === 0xe0;
  const layer = second & 0x06;
  return frame && layer !== 0 && (second & 0x18) !== 0x08 && third >>> 4 !== 15 && (third & 0x0c) !== 0x0c;
}

function judge(head: Buffer): Seen {
  // A PDF may have up to a kilobyte of other bytes before it (ISO 32000-1, implementation notes; from memory).
  if (head.includes('%PDF-', 0, 'latin1')) return { sort: 'PDF', name: 'a PDF' };
  if (at(head, 0, ascii('PK\x03\x04'))) return zipSort(head);
  if (at(head, 0, ascii('PK\x05\x06'))) return { sort: 'zip', name: 'an empty zip archive' };
  const found = SIGNS.find(([offset, sign]) => at(head, offset, sign));
  if (found !== undefined) return { sort: found[2], name: found[3] };
  if (at(head, 0, ascii('RIFF')))
    return at(head, 8, ascii('WAVE'))
      ? { sort: 'sound', name: 'a sound file' }
      : { sort: 'other', name: at(head, 8, ascii('WEBP')) ? 'a WebP picture' : 'a file of another kind' };
  if (isMpegAudio(head)) return { sort: 'sound', name: 'a sound file' };
  const text = head.toString('utf8').trimStart().toLowerCase();
  if (/^(?:\ufeff)?<(?:!doctype html|html)/.test(text)) return { sort: 'other', name: 'a web page' };
  if (/^(?:\ufeff)?<(?:\?xml|svg)/.test(text))
    return { sort: 'other', name: /<svg/.test(text) ? 'an SVG drawing' : 'an XML file' };
  return { sort: 'other', name: 'a file of another kind' };
}

/** Looks at the first kilobyte of a file. */
export async function firstBytes(path: string): Promise<Seen> {
  const file = await open(path, 'r');
  try {
    const head = Buffer.alloc(HEAD);
    const { bytesRead } = await file.read(head, 0, HEAD, 0);
    return judge(head.subarray(0, bytesRead));
  } finally {
    await file.close();
  }
}
