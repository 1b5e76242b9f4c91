import { getFileNameLowLevel, openPromise, type Entry as YauzlEntry, type ZipFile } from 'yauzl';
import { Refusal } from '../../../contract/refusal.ts';
import { told, unreadable, type Watch } from '../watch.ts';
import { refuseOutside, shownName } from './names.ts';

/** What an archive of a kind may hold; what goes beyond was made to hurt, or is no such file. */
export interface ArchiveLimits {
  /** 'EPUB', as sentences name it. */
  what: string;
  entries: number;
  /** Bytes of all entries once inflated. */
  inflated: number;
  /** Bytes from which on an entry may not swell beyond all measure; silence and blank pictures may, while they are small. */
  swellFrom: number;
}

/** Far beyond what text, pictures or sound shrink by. */
const MOST_RATIO = 200;

export interface Entry {
  name: string;
  compressed: number;
  size: number;
  stored: boolean;
  crc32: number;
  /** Where its header begins in the file. */
  offset: number;
  raw: YauzlEntry;
}

/** An archive whose directory was read and found sane; `close` when done. Entries are in the order of the directory. */
export interface Archive {
  limits: ArchiveLimits;
  zip: ZipFile;
  entries: Entry[];
  byName: Map<string, Entry>;
  close(): void;
}

/** A sentence for whatever the zip library says of a damaged file. */
export function damaged(what: string, error: unknown): Refusal {
  if (error instanceof Refusal) return error;
  const said = error instanceof Error ? error.message : '';
  if (/truncated|not found|unexpected EOF|overflows file bounds/i.test(said))
    return unreadable(
      `The ${what} is cut off or damaged: the end of its archive cannot be read. Copy or export it again.`,
    );
  if (/encrypt/i.test(said)) return protectedBy(what);
  if (/bytes in the stream|size mismatch|zip64/i.test(said))
    return unreadable(
      `The ${what} is damaged: a size in its directory is not the size of what is there. Export it again.`,
    );
  if (/multi-disk/i.test(said))
    return unreadable(`The ${what} is one part of a split archive. Join it first.`);
  if (/compression method/i.test(said))
    return unreadable(`The ${what} is packed by a method other than zip’s own. Export it again.`);
  return unreadable(`The ${what} is damaged: its archive cannot be read. Copy or export it again.`);
}

const protectedBy = (what: string) =>
  unreadable(`The ${what} is locked with a password inside its archive. Hand over the unlocked file.`);

/** Whether a Unix mode in the directory says that an entry is a link to another file. */
const isLink = ({ externalFileAttributes }: YauzlEntry) =>
  ((externalFileAttributes >>> 16) & 0o170000) === 0o120000;

function entryOf(raw: YauzlEntry, what: string): Entry {
  const name = getFileNameLowLevel(raw.generalPurposeBitFlag, raw.fileNameRaw, raw.extraFields, true);
  refuseOutside(name);
  if (raw.isEncrypted()) throw protectedBy(what);
  if (isLink(raw))
    throw unreadable(
      `The archive holds a link to another file, “${shownName(name)}”. Make it again with the file itself.`,
    );
  return {
    name,
    compressed: raw.compressedSize,
    size: raw.uncompressedSize,
    stored: raw.compressionMethod === 0,
    crc32: raw.crc32,
    offset: raw.relativeOffsetOfLocalHeader,
    raw,
  };
}

/** A local header is 30 bytes, its name and extra fields; extra fields there are not known yet. */
const LOCAL_HEADER = 30;

/** Entries that share bytes make a small file unpack to a huge one, and programs disagree on what is in it. */
function refuseOverlaps(entries: readonly Entry[], what: string): void {
  let end = 0;
  for (const entry of [...entries].sort((a, b) => a.offset - b.offset)) {
    if (entry.offset < end)
      throw unreadable(
        `The ${what} is refused: parts of its archive overlap (“${shownName(entry.name)}”). Export it again.`,
      );
    end = entry.offset + LOCAL_HEADER + entry.raw.fileNameLength + entry.compressed;
  }
}

function refuseBomb(entries: readonly Entry[], { what, inflated, swellFrom }: ArchiveLimits): void {
  let whole = 0;
  for (const entry of entries) {
    whole += entry.size;
    const swells = entry.size > swellFrom && entry.size > entry.compressed * MOST_RATIO;
    if (swells || whole > inflated)
      throw unreadable(
        `The ${what} is refused: it unpacks to far more than ${/^[aeiou]/i.test(what) ? 'an' : 'a'} ${what} holds (“${shownName(entry.name)}”).`,
      );
  }
}

async function readDirectory(zip: ZipFile, limits: ArchiveLimits, watch: Watch): Promise<Entry[]> {
  const { what, entries: most } = limits;
  if (zip.entryCount > most)
    throw unreadable(
      `The ${what} is refused: it claims to hold ${zip.entryCount} files; at most ${most} are read.`,
    );
  const entries: Entry[] = [];
  for await (const raw of zip.eachEntry()) {
    entries.push(entryOf(raw, what));
    if (entries.length % 500 === 0) told(watch, entries.length, zip.entryCount, 'Looking into the archive');
  }
  return entries;
}

/**
 * Opens a zip and reads its directory. Nothing is inflated yet. Throws BAD_INPUT with one sentence for what is damaged,
 * locked or made to hurt: names that lead outside, links, the same name twice, parts that overlap, sizes beyond the limits.
 */
export async function openArchive(path: string, limits: ArchiveLimits, watch: Watch): Promise<Archive> {
  const zip = await openPromise(path, { decodeStrings: false, autoClose: false }).catch((error) => {
    throw damaged(limits.what, error);
  });
  try {
    const entries = await readDirectory(zip, limits, watch);
    const byName = new Map<string, Entry>();
    for (const entry of entries) {
      if (byName.has(entry.name))
        throw unreadable(
          `The ${limits.what} is refused: it holds two files under the name “${shownName(entry.name)}”, so nobody can tell which one is meant. Export it again.`,
        );
      byName.set(entry.name, entry);
    }
    refuseOverlaps(entries, limits.what);
    refuseBomb(entries, limits);
    return { limits, zip, entries, byName, close: () => zip.close() };
  } catch (error) {
    zip.close();
    throw damaged(limits.what, error);
  }
}
