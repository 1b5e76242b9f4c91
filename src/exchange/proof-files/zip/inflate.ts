import { crc32 } from 'node:zlib';
import { unreadable } from '../watch.ts';
import { type Archive, damaged, type Entry } from './archive.ts';
import { shownName } from './names.ts';

/** An entry's bytes as they are inflated, never more than its directory states; a wrong checksum is refused at the end. */
export async function* partsOf(archive: Archive, entry: Entry): AsyncGenerator<Buffer> {
  let sum = 0;
  let size = 0;
  try {
    const stream = await archive.zip.openReadStreamPromise(entry.raw);
    for await (const bytes of stream as AsyncIterable<Buffer>) {
      size += bytes.length;
      if (size > entry.size) throw new Error('more bytes in the stream than stated');
      sum = crc32(bytes, sum);
      yield bytes;
    }
  } catch (error) {
    throw damaged(archive.limits.what, error);
  }
  if (size !== entry.size || sum !== entry.crc32)
    throw unreadable(
      `The ${archive.limits.what} is damaged: “${shownName(entry.name)}” inside it is not what was packed. Copy or export it again.`,
    );
}

/** Inflates an entry to see that it is sound, and keeps nothing. */
export async function tested(archive: Archive, entry: Entry): Promise<void> {
  for await (const _ of partsOf(archive, entry));
}

/** A whole entry in memory; null where it is larger than `most` bytes, which is then checked but not kept. */
export async function inflate(archive: Archive, entry: Entry, most: number): Promise<Buffer | null> {
  const parts: Buffer[] = [];
  const keep = entry.size <= most;
  for await (const bytes of partsOf(archive, entry)) if (keep) parts.push(bytes);
  return keep ? Buffer.concat(parts, entry.size) : null;
}
