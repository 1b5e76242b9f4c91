import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import type { AudioFacts } from '../../../contract/proof-checks/facts.ts';
import { Findings } from '../epub/faults.ts';
import { isbnsIn } from '../isbns.ts';
import { told, unreadable, type Watch } from '../watch.ts';
import { type Archive, type Entry, openArchive } from '../zip/archive.ts';
import { partsOf } from '../zip/inflate.ts';
import { shownName } from '../zip/names.ts';
import { isSound, readSound, type Sound } from './sound.ts';

/** An audiobook of a hundred hours in FLAC is some thirty gigabytes; one in MP3 three. */
const LIMITS = { what: 'archive', entries: 5_000, inflated: 16 * 1024 ** 3, swellFrom: 1024 ** 3 };
const MOST_FILES = 2_000;
const MOST_ISBNS = 1_000;

/** Files that systems put beside others and nobody means. */
const BESIDE = /(?:^|\/)(?:__MACOSX\/|\.|Thumbs\.db$|desktop\.ini$)/i;

/** Names in the order that players show them: numbers by their value. */
const byName = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** Gathers what the sound files say, in their order. */
class Gathered {
  readonly findings = new Findings();
  readonly facts: AudioFacts = {
    of: 'audio',
    files: [],
    titles: [],
    isbns: [],
    unread: this.findings.unread,
  };

  take(name: string, bytes: number, sound: Sound | null): void {
    const { files } = this.facts;
    files.push({ name: name.slice(0, 500), bytes, seconds: sound?.seconds ?? null });
    if (sound === null) this.findings.skipped(`“${shownName(name)}” is damaged or no sound file.`);
    else if (sound.seconds === null)
      this.findings.skipped(`The length of “${shownName(name)}” could not be read.`);
    if (sound?.album) this.title(sound.album);
    for (const text of sound?.texts ?? []) this.numbers(text, files.length);
    this.numbers(name, files.length);
  }

  title(title: string): void {
    const { titles } = this.facts;
    if (titles.length < 50 && !titles.includes(title)) titles.push(title);
  }

  numbers(text: string, page: number): void {
    for (const { raw, isbn13 } of isbnsIn(text)) {
      const known = this.facts.isbns.some((one) => one.page === page && one.isbn13 === isbn13);
      if (!known && this.facts.isbns.length < MOST_ISBNS)
        this.facts.isbns.push({ page, raw, isbn13, box: null });
    }
  }
}

/** Bytes with word of how far they have come. */
async function* watched(
  parts: AsyncIterable<Buffer>,
  total: number,
  before: number,
  watch: Watch,
): AsyncGenerator<Buffer> {
  let done = before;
  for await (const part of parts) {
    done += part.length;
    told(watch, done, total, 'Listening to the sound files');
    yield part;
  }
}

function soundsOf(archive: Archive): Entry[] {
  const sounds = archive.entries
    .filter(({ name }) => !name.endsWith('/') && !BESIDE.test(name) && isSound(name))
    .sort((a, b) => byName.compare(a.name, b.name));
  if (sounds.length === 0)
    throw unreadable('The archive holds no sound files: MP3, M4B, M4A, WAV and FLAC are looked for.');
  if (sounds.length > MOST_FILES)
    throw unreadable(`The archive holds ${sounds.length} sound files; at most ${MOST_FILES} are read.`);
  return sounds;
}

async function fromArchive(path: string, gathered: Gathered, watch: Watch): Promise<void> {
  const archive = await openArchive(path, LIMITS, watch);
  try {
    const sounds = soundsOf(archive);
    const total = sounds.reduce((sum, { size }) => sum + size, 0);
    let done = 0;
    for (const entry of sounds) {
      const parts = watched(partsOf(archive, entry), total, done, watch);
      gathered.take(entry.name, entry.size, await readSound(parts, entry.name, entry.size));
      done += entry.size;
    }
  } finally {
    archive.close();
  }
}

/**
 * Reads an audiobook: a zip of sound files, or one sound file. Lengths, titles and numbers are those that the files state;
 * nothing is unpacked to disk or played. Throws BAD_INPUT with one sentence for what cannot be read, CANCELLED when called off.
 */
export async function readAudio(
  path: string,
  fileName: string,
  zipped: boolean,
  watch: Watch,
): Promise<AudioFacts> {
  const gathered = new Gathered();
  if (zipped) await fromArchive(path, gathered, watch);
  else {
    const { size } = await stat(path);
    const stream = createReadStream(path) as AsyncIterable<Buffer>;
    const sound = await readSound(watched(stream, size, 0, watch), fileName, size);
    gathered.take(fileName, size, sound);
    // Alone, a file is the whole book: its title is the book's where no album names it.
    if (sound?.title && sound.album === '') gathered.title(sound.title);
  }
  if (zipped) gathered.numbers(fileName, 1);
  return gathered.facts;
}
