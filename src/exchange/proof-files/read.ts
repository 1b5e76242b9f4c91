import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename } from 'node:path';
import type { FileFacts, PagePicture, Reading } from '../../contract/proof-checks/facts.ts';
import type { FileKind } from '../../contract/terms.ts';
import { readAudio } from './audio/read.ts';
import { readPicture } from './cover/read-picture.ts';
import { readCoverPage } from './cover/read-sheet.ts';
import { readEpub } from './epub/read.ts';
import { firstBytes, type Seen, type Sort } from './first-bytes.ts';
import { type PdfOptions, readPdf } from './pdf/read.ts';
import { told, unreadable, type Watch } from './watch.ts';

export interface ReadOptions extends Watch {
  kind: FileKind;
  /** The name that the user knows it by, where the file lies under another. */
  fileName?: string;
}

/** What a reader of one sort of file answers. */
interface Found {
  facts: FileFacts;
  pictures: PagePicture[];
}

/** What each kind of final file may be; an e-book may be a PDF as well (ONIX List 175, E107). */
const MAY_BE: Record<FileKind, { sorts: readonly Sort[]; words: string }> = {
  interior: { sorts: ['PDF'], words: 'the interior is a PDF' },
  cover: { sorts: ['PDF', 'PNG', 'JPEG'], words: 'the cover is a PDF, or a PNG or JPEG picture' },
  // A zip whose first entry is not the mark of an EPUB may still be one with that fault.
  'e-book': { sorts: ['EPUB', 'zip', 'PDF'], words: 'the e-book is an EPUB or a PDF' },
  audio: { sorts: ['sound', 'zip'], words: 'sound files are MP3, M4B, WAV or FLAC, or a zip of them' },
};

/** Larger files than these are no final files of books. */
const MOST_BYTES: Record<FileKind, number> = {
  interior: 2 * 1024 ** 3,
  cover: 2 * 1024 ** 3,
  'e-book': 2 * 1024 ** 3,
  audio: 16 * 1024 ** 3,
};

const begun = (sentence: string) => sentence.charAt(0).toUpperCase() + sentence.slice(1);

function refuseOthers({ sort, name }: Seen, bytes: number, kind: FileKind): void {
  const { sorts, words } = MAY_BE[kind];
  if (bytes === 0) throw unreadable(`The file is empty; ${words}.`);
  if (!sorts.includes(sort)) throw unreadable(`This is ${name}; ${words}.`);
  if (bytes > MOST_BYTES[kind])
    throw unreadable(
      `The file has ${Math.ceil(bytes / 1024 ** 3)} GB; at most ${MOST_BYTES[kind] / 1024 ** 3} GB are read. ${begun(words)} of that size or less.`,
    );
}

/** SHA-256 of a file, read in a stream. */
async function hashOf(path: string, bytes: number, watch: Watch): Promise<string> {
  const hash = createHash('sha256');
  let done = 0;
  for await (const part of createReadStream(path, { highWaterMark: 1024 * 1024 }) as AsyncIterable<Buffer>) {
    hash.update(part);
    done += part.length;
    told(watch, done, bytes, 'Taking the fingerprint of the file');
  }
  return hash.digest('hex');
}

async function factsOf(path: string, { sort }: Seen, options: ReadOptions): Promise<Found> {
  const { kind, ...watch } = options;
  if (kind === 'audio')
    return {
      facts: await readAudio(path, options.fileName ?? basename(path), sort === 'zip', watch),
      pictures: [],
    };
  if (kind === 'e-book' && sort !== 'PDF') return { facts: await readEpub(path, watch), pictures: [] };
  if (sort === 'PNG' || sort === 'JPEG') return readPicture(path, sort, watch);
  const sheet: PdfOptions['sheet'] = (page, bleed) => readCoverPage(page, bleed, watch);
  return await readPdf(path, kind === 'cover' ? { ...watch, sheet } : watch);
}

/**
 * Reads a final file: what it is by its first bytes, its SHA-256, and its facts. Throws BAD_INPUT with one sentence where it
 * is another kind of file than asked for, damaged or made to hurt, and CANCELLED once it was called off.
 */
export async function readFile(path: string, options: ReadOptions): Promise<Reading> {
  const { size: bytes } = await stat(path);
  const seen = await firstBytes(path);
  refuseOthers(seen, bytes, options.kind);
  const sha256 = await hashOf(path, bytes, options);
  const { facts, pictures } = await factsOf(path, seen, options);
  return { fileName: (options.fileName ?? basename(path)).slice(0, 255), bytes, sha256, facts, pictures };
}
