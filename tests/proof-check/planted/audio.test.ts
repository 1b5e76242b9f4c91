import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import { afterAll, expect, test } from 'vitest';
import { type AudioFacts, reading } from '../../../src/contract/proof-checks/facts.ts';
import { checkFile } from '../../../src/rules/proof-check/index.ts';
import type { ProofRecord } from '../../../src/rules/proof-check/record.ts';
import { readBytes, refusalOf } from '../../support/proof-files/laid.ts';
import { proofRecord } from '../../support/proof-files/record.ts';
import { mp3, wav } from '../../support/proof-files/sound.ts';
import { type Planted, Tally } from '../../support/proof-files/tally.ts';

const record = (changes: Partial<ProofRecord> = {}) =>
  proofRecord({
    formatName: 'Audiobook (MP3)',
    form: 'AJ',
    formDetail: 'A103',
    made: 'audio',
    isbn13: '9798969999053',
    durationMinutes: 10,
    ...changes,
  });

const TAGS = { TALB: 'The Salt Almanac', TXXX: 'ISBN\x00979-8-969999-05-3' };
type Files = Record<string, Uint8Array>;
/** Ten minutes in three chapters, and the cover beside them. */
const CHAPTERS: Files = {
  'salt/01 Opening.mp3': mp3(200, TAGS),
  'salt/02 Ice.mp3': mp3(200, TAGS),
  'salt/03 Thaw.mp3': mp3(200, TAGS),
  'salt/cover.jpg': new Uint8Array(10),
  '__MACOSX/salt/._01 Opening.mp3': new Uint8Array(10),
};
const zipped = (files: Files) => zipSync(files, { level: 1 });

const CLEAN: Readonly<Record<string, [bytes: Uint8Array, changes?: Partial<ProofRecord>]>> = {
  'an archive of MP3': [zipped(CHAPTERS)],
  'one MP3': [mp3(600, TAGS)],
  'WAV, titled by nothing but their names, beside tagged MP3': [
    zipped({ '1.wav': wav(300), '2.mp3': mp3(300, TAGS) }),
  ],
  'two minutes off': [mp3(600, TAGS), { durationMinutes: 12 }],
};

const PLANTED: Readonly<
  Record<string, [bytes: Uint8Array, expected: Planted, changes?: Partial<ProofRecord>]>
> = {
  'a chapter missing at the end': [
    zipped({ '01.mp3': mp3(200, TAGS), '02.mp3': mp3(200, TAGS) }),
    { 'audio.duration': 'differs' },
  ],
  'a chapter missing in the middle': [
    zipped({ '01.mp3': mp3(300, TAGS), '03.mp3': mp3(300, TAGS) }),
    { 'audio.files': 'differs' },
  ],
  'a chapter too many': [
    zipped({ ...CHAPTERS, 'salt/04 Thaw again.mp3': mp3(200, TAGS) }),
    { 'audio.duration': 'differs' },
  ],
  'an empty chapter': [
    zipped({ ...CHAPTERS, 'salt/04 Silence.wav': wav(0.5) }),
    { 'audio.files': 'differs' },
  ],
  'another book': [mp3(600, { ...TAGS, TALB: 'Fen Light' }), { 'audio.title': 'differs' }],
  'no title': [mp3(600), { 'audio.title': 'not found' }],
  'the paperback’s number': [
    mp3(600, { ...TAGS, TXXX: 'ISBN\x00979-8-969999-02-2' }),
    { 'audio.isbn': 'differs' },
  ],
  'no running time on record': [
    mp3(600, TAGS),
    { 'audio.duration': 'cannot tell' },
    { durationMinutes: null },
  ],
  'a chapter that is no sound': [
    zipped({ ...CHAPTERS, 'salt/04 Letter.mp3': Buffer.from('Dear reader') }),
    { 'audio.duration': 'cannot tell', 'file.unread': 'cannot tell' },
  ],
};

async function factsOf(bytes: Uint8Array, name = 'salt'): Promise<AudioFacts> {
  const read = await readBytes(bytes, 'audio', name);
  expect(reading.parse(read)).toEqual(read);
  return read.facts as AudioFacts;
}

const tally = new Tally('Audiobooks');
afterAll(() => tally.print());

test('planted faults are found, clean files raise nothing', async () => {
  for (const [name, [bytes, expected, changes]] of Object.entries(PLANTED))
    tally.take(name, checkFile('audio', await factsOf(bytes), record(changes)), expected);
  for (const [name, [bytes, changes]] of Object.entries(CLEAN))
    tally.take(name, checkFile('audio', await factsOf(bytes), record(changes)), {});
  expect(tally.missed).toEqual([]);
  expect(tally.falseAlarms).toEqual([]);
});

test('files come in the order of their numbers, with their lengths', async () => {
  const facts = await factsOf(zipped({ '10.wav': wav(3), '9.wav': wav(2), 'notes.txt': new Uint8Array(3) }));
  expect(facts.files).toEqual([
    { name: '9.wav', bytes: wav(2).length, seconds: 2 },
    { name: '10.wav', bytes: wav(3).length, seconds: 3 },
  ]);
});

test('what is no audiobook is refused in a sentence', async () => {
  expect(await refusalOf(zipped({ 'a.txt': new Uint8Array(3) }), 'audio')).toMatch(/holds no sound files/);
  expect(await refusalOf(Buffer.from('%PDF-1.4'), 'audio')).toBe(
    'This is a PDF; sound files are MP3, M4B, WAV or FLAC, or a zip of them.',
  );
});

const hasSox = spawnSync('sox', ['--version']).status === 0;
if (!hasSox) console.log('Skipped: sox is not installed (apt-get install sox libsox-fmt-mp3).');

test.skipIf(!hasSox)('lengths of files by sox are those that soxi tells', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'sound-'));
  try {
    for (const kind of ['wav', 'flac', 'mp3']) {
      const path = join(folder, `tone.${kind}`);
      const made = spawnSync('sox', ['-n', '-r', '44100', path, 'synth', '7.25', 'sine', '440']);
      if (made.status !== 0) {
        console.log(`Skipped: sox writes no ${kind} here.`);
        continue;
      }
      const told = Number(spawnSync('soxi', ['-D', path], { encoding: 'utf8' }).stdout);
      const facts = await factsOf(readFileSync(path), `tone.${kind}`);
      expect(Math.abs((facts.files[0]?.seconds ?? 0) - told), kind).toBeLessThan(0.1);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
