import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import { expect, test } from 'vitest';
import type { EpubFacts } from '../../../src/contract/proof-checks/facts.ts';
import { readFile } from '../../../src/exchange/proof-files/read.ts';
import { changed, packed, page, SALT_ALMANAC } from '../../support/proof-files/epub.ts';
import { readBytes, refusalOf } from '../../support/proof-files/laid.ts';

const OPF = 'OEBPS/package.opf';
const ONE = 'OEBPS/chapter-1.xhtml';
const refused = (bytes: Uint8Array) => refusalOf(bytes, 'e-book');
const factsOf = async (bytes: Uint8Array) => (await readBytes(bytes, 'e-book')).facts as EpubFacts;

/** Places of a signature in a file. */
function places(bytes: Buffer, signature: number): number[] {
  const sign = Buffer.alloc(4);
  sign.writeUInt32LE(signature);
  const found: number[] = [];
  for (let at = bytes.indexOf(sign); at >= 0; at = bytes.indexOf(sign, at + 4)) found.push(at);
  return found;
}

const DIRECTORY = 0x02014b50;

/** The clean book with the directory's record of its nth file changed. */
function withRecord(nth: number, change: (bytes: Buffer, at: number) => void): Buffer {
  const bytes = Buffer.from(packed(SALT_ALMANAC));
  const at = places(bytes, DIRECTORY)[nth];
  if (at === undefined) throw new Error('No such record');
  change(bytes, at);
  return bytes;
}

/** The same name of the same length in the local header and the directory. */
function renamed(from: string, to: string): Buffer {
  const bytes = Buffer.from(packed(SALT_ALMANAC));
  for (let at = bytes.indexOf(from); at >= 0; at = bytes.indexOf(from, at + 1)) bytes.write(to, at, 'latin1');
  return bytes;
}

test('names that lead out of the archive are refused', async () => {
  for (const [from, to] of [
    ['OEBPS/styles.css', '../../etc/cron.d'],
    ['OEBPS/styles.css', '/etc/cron.d/evil'],
    ['OEBPS/styles.css', 'C:/Windows/ev.il'],
    ['OEBPS/styles.css', '..\\..\\evil\\a.cs'],
    ['OEBPS/styles.css', 'OEBPS/..//../a.b'],
  ] as const)
    expect(await refused(renamed(from, to)), to).toMatch(
      /^The archive holds a file under the name “.*leads out of it/,
    );
});

test('links, locked files, files of one name and parts that overlap are refused', async () => {
  const link = withRecord(4, (bytes, at) => bytes.writeUInt32LE((0o120777 << 16) >>> 0, at + 38));
  expect(await refused(link)).toMatch(
    /^The archive holds a link to another file, “OEBPS\/images\/cover.png”/,
  );
  const locked = withRecord(5, (bytes, at) => bytes.writeUInt16LE(bytes.readUInt16LE(at + 8) | 1, at + 8));
  expect(await refused(locked)).toMatch(/^The EPUB is locked with a password/);
  expect(await refused(renamed('OEBPS/chapter-2.xhtml', 'OEBPS/chapter-1.xhtml'))).toMatch(
    /holds two files under the name “OEBPS\/chapter-1.xhtml”/,
  );
  const overlapping = withRecord(6, (bytes, at) => {
    const before = places(bytes, DIRECTORY)[5] ?? 0;
    bytes.writeUInt32LE(bytes.readUInt32LE(before + 42) + 2, at + 42);
  });
  expect(await refused(overlapping)).toMatch(/^The EPUB is refused: parts of its archive overlap/);
});

test('a bomb is refused before anything is inflated, and one that lies about its size while it is', async () => {
  const zeros = new Uint8Array(64 * 1024 * 1024);
  const start = performance.now();
  const open = packed({ ...SALT_ALMANAC, 'OEBPS/bomb.bin': zeros });
  expect(await refused(open)).toMatch(/unpacks to far more than an EPUB holds \(“OEBPS\/bomb.bin”\)/);
  // The directory says 1,000 bytes.
  const lying = Buffer.from(open);
  const at = places(lying, DIRECTORY).at(-1) ?? 0;
  lying.writeUInt32LE(1_000, at + 24);
  const before = process.memoryUsage().rss;
  expect(await refused(lying)).toBe(
    'The EPUB is damaged: a size in its directory is not the size of what is there. Export it again.',
  );
  expect(process.memoryUsage().rss - before).toBeLessThan(64 * 1024 * 1024);
  console.log(`Bombs refused in ${Math.round(performance.now() - start)} ms, packing them included`);
});

test('sizes of zip64 that lie are refused', async () => {
  const claims = withRecord(4, (bytes, at) => {
    bytes.writeUInt32LE(0xffffffff, at + 20);
    bytes.writeUInt32LE(0xffffffff, at + 24);
  });
  expect(await refused(claims)).toMatch(/^The EPUB /);
  const many = Buffer.from(packed(SALT_ALMANAC));
  const end = places(many, 0x06054b50).at(-1) ?? 0;
  many.writeUInt16LE(0xfffe, end + 10);
  expect(await refused(many)).toMatch(/^The EPUB is refused: it claims to hold 65534 files/);
});

test('a file cut off anywhere is refused in a sentence', async () => {
  const bytes = packed(SALT_ALMANAC);
  for (let share = 1; share < 10; share += 1) {
    const cut = bytes.subarray(0, Math.floor((bytes.length * share) / 10));
    expect(await refused(cut)).toMatch(/^The EPUB is cut off or damaged/);
  }
});

test('a byte that was changed inside is found by its checksum', async () => {
  const bytes = Buffer.from(packed(SALT_ALMANAC, ['mimetype', 'OEBPS/styles.css']));
  const at = bytes.indexOf('margin: 1em');
  bytes.write('n', at, 'latin1');
  expect(await refused(bytes)).toMatch(/“OEBPS\/styles.css” inside it is not what was packed/);
});

test('entities are never taken, whatever they would grow to', async () => {
  const laughs = Array.from({ length: 10 }, (_, n) => `<!ENTITY l${n + 1} "${`&l${n};`.repeat(10)}">`).join(
    '',
  );
  const doctype = `<!DOCTYPE html [<!ENTITY l0 "ha">${laughs}<!ENTITY file SYSTEM "file:///etc/passwd">]>`;
  const bomb = `<?xml version="1.0"?>${doctype}<html><body><p>&l10;&file;</p></body></html>`;
  const facts = await factsOf(packed({ ...SALT_ALMANAC, [ONE]: bomb }));
  expect(facts.faults).toEqual([
    `“${ONE}” declares entities or elements of its own, which are not read (line 1); what follows was not read.`,
  ]);
  expect(await refused(packed(changed(OPF, '<package', `${doctype}<package`)))).toMatch(
    /lists nothing that could be read/,
  );
});

test('nesting without end, and attributes without number, stop the reading of that document alone', async () => {
  const deep = page('Deep', `${'<div>'.repeat(100_000)}x`);
  const wide = page('Wide', `<p ${Array.from({ length: 5_000 }, (_, n) => `a${n}=""`).join(' ')}>x</p>`);
  const facts = await factsOf(packed({ ...SALT_ALMANAC, [ONE]: deep, 'OEBPS/chapter-2.xhtml': wide }));
  expect(facts.faults.join(' ')).toMatch(/nests its elements more than 250 deep/);
  expect(facts.faults.join(' ')).toMatch(/an element of more than 100 attributes/);
  expect(facts.isbns).toHaveLength(3);
});

test('references that lead outside are faults and are never followed', async () => {
  const outside = changed(OPF, 'href="styles.css"', 'href="../../../../etc/passwd"');
  expect((await factsOf(packed(outside))).faults.join(' ')).toMatch(
    /“..\/..\/..\/..\/etc\/passwd”, which leads to no file/,
  );
  const network = changed(OPF, 'href="styles.css"', 'href="https://example.org/styles.css"');
  expect((await factsOf(packed(network))).faults.join(' ')).toMatch(/the book has to carry it itself/);
});

test('reading can be called off, tells how far it has come, and writes nothing', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'hostile-'));
  try {
    const path = join(folder, 'book.epub');
    writeFileSync(path, packed(SALT_ALMANAC));
    const steps: string[] = [];
    await readFile(path, {
      kind: 'e-book',
      step: (done, total, what) => steps.push(`${what} ${done}/${total}`),
    });
    expect(steps.at(-1)).toMatch(/^Reading the book (\d+)\/\1$/);
    let calls = 0;
    const off = readFile(path, { kind: 'e-book', step: () => {}, cancelled: () => ++calls > 2 });
    await expect(off).rejects.toMatchObject({ code: 'CANCELLED' });
    expect(readdirSync(folder)).toEqual(['book.epub']);
    expect(existsSync(join(folder, 'OEBPS'))).toBe(false);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

test('a zip of sound files is held to the same rules', async () => {
  const evil = zipSync({ '../01.mp3': new Uint8Array(10) });
  expect(await refusalOf(evil, 'audio')).toMatch(/leads out of it/);
});
