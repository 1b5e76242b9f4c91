import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import type { EpubFacts } from '../../src/contract/proof-checks/facts.ts';
import { checkFile } from '../../src/rules/proof-check/index.ts';
import { packed } from '../support/proof-files/epub.ts';
import { CLEAN_EPUBS } from '../support/proof-files/epub-clean.ts';
import { PLANTED_EPUBS } from '../support/proof-files/epub-planted.ts';
import { epubRecord } from '../support/proof-files/epub-record.ts';
import { readBytes } from '../support/proof-files/laid.ts';

// EPUBCheck, the W3C's own checker, as Debian packs it: a jar that Java runs.
const JAR = ['/usr/share/java/epubcheck.jar', '/usr/bin/epubcheck'].find((path) => existsSync(path));
/** A run takes seconds; the machine that runs it need not be tuned. */
const QUICK_START = ['-XX:TieredStopAtLevel=1', '-XX:+UseSerialGC'];
const hasJava = spawnSync('java', ['-version']).status === 0;
const hasPandoc = spawnSync('pandoc', ['--version']).status === 0;

const folder = mkdtempSync(join(tmpdir(), 'epub-outside-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What EPUBCheck counts as fatal or as an error, with its messages. */
function outsideErrors(bytes: Uint8Array): { count: number; said: string } {
  const path = join(folder, 'book.epub');
  writeFileSync(path, bytes);
  const { stdout, stderr } = spawnSync('java', [...QUICK_START, '-jar', JAR ?? '', path], {
    encoding: 'utf8',
  });
  const said = `${stdout}${stderr}`;
  const [, fatals, errors] = /Messages: (\d+) fatals? \/ (\d+) errors?/.exec(said) ?? [];
  if (fatals === undefined || errors === undefined) throw new Error(said);
  return { count: Number(fatals) + Number(errors), said };
}

if (!JAR || !hasJava) console.log('Skipped: EPUBCheck or Java is not installed (apt-get install epubcheck).');
if (!hasPandoc) console.log('Skipped: pandoc is not installed (apt-get install pandoc).');

/** Faults of the file that EPUBCheck does not count as errors of its own: it passes over what is encrypted. */
const NOT_ITS_OWN = ['chapters under copy protection'];
const FAULTY = Object.entries(PLANTED_EPUBS).filter(
  ([name, { expected }]) => 'epub.structure' in expected && !NOT_ITS_OWN.includes(name),
);

describe.skipIf(!JAR || !hasJava)('EPUBCheck', () => {
  test.each(Object.entries(CLEAN_EPUBS))('finds no error in a clean e-book: %s', (_, { parts }) => {
    const { count, said } = outsideErrors(packed(parts));
    expect(count, said).toBe(0);
  });

  test.each(FAULTY)('finds an error where the structure is said to be faulty: %s', (_, { bytes }) => {
    expect(outsideErrors(bytes).count).toBeGreaterThan(0);
  });
});

const TEXT = `---
title: The Salt Almanac
identifier:
- scheme: ISBN-13
  text: 979-8-969999-04-6
creator:
- role: author
  text: Maren Oskarsdal
contributor:
- role: author of introduction
  text: Tobias Wrenfield
lang: en-GB
publisher: Halyard & Fen
date: 2027-03-04
---

# The Salt Almanac

Second edition

# Copyright

© 2027 Maren Oskarsdal. All rights reserved.

ISBN 979-8-969999-04-6 (e-book)

ISBN 979-8-969999-02-2 (paperback)

# One

The harbour froze on the ninth day.
`;

/** An e-book by pandoc, a program of others that writes EPUB 2 and 3. */
function byPandoc(to: 'epub2' | 'epub3'): Uint8Array {
  writeFileSync(join(folder, 'book.md'), TEXT);
  writeFileSync(join(folder, 'cover.png'), CLEAN_EPUBS['EPUB 3']?.parts['OEBPS/images/cover.png'] ?? '');
  const out = join(folder, `${to}.epub`);
  const { status, stderr } = spawnSync(
    'pandoc',
    [join(folder, 'book.md'), '-t', to, '-o', out, '--epub-cover-image', join(folder, 'cover.png')],
    { encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(stderr);
  return readFileSync(out);
}

test.skipIf(!hasPandoc).each(['epub2', 'epub3'] as const)(
  'an %s by pandoc is read and agrees',
  async (to) => {
    const { facts } = await readBytes(byPandoc(to), 'e-book');
    const epub = facts as EpubFacts;
    expect(epub.version).toBe(to === 'epub2' ? '2.0' : '3.0');
    expect(epub.copyrightPage).not.toBeNull();
    const raised = checkFile('e-book', facts, epubRecord()).filter(({ state }) => state !== 'agreed');
    expect(raised).toEqual([]);
  },
);

const SOFFICE = '/usr/bin/soffice';
if (!existsSync(SOFFICE)) console.log('Skipped: LibreOffice is not installed.');

test.skipIf(!existsSync(SOFFICE))(
  'an EPUB by LibreOffice lacks what it cannot write, and nothing else',
  async () => {
    writeFileSync(
      join(folder, 'salt.html'),
      `<html><head><title>The Salt Almanac</title><meta name="author" content="Maren Oskarsdal"></head><body>
    <h1>The Salt Almanac</h1><p>Second edition</p><p>With a foreword by Tobias Wrenfield</p>
    <p>&copy; 2027 Maren Oskarsdal</p><p>ISBN 979-8-969999-04-6 (e-book)</p></body></html>`,
    );
    const { stderr } = spawnSync(
      SOFFICE,
      [
        `-env:UserInstallation=file://${folder}/profile`,
        '--headless',
        '--infilter=HTML (StarWriter)',
        '--convert-to',
        'epub',
        '--outdir',
        folder,
        join(folder, 'salt.html'),
      ],
      { encoding: 'utf8' },
    );
    expect(existsSync(join(folder, 'salt.epub')), stderr).toBe(true);
    const { facts } = await readBytes(readFileSync(join(folder, 'salt.epub')), 'e-book');
    const raised = checkFile('e-book', facts, epubRecord()).filter(({ state }) => state !== 'agreed');
    expect(raised.map(({ check, state }) => `${check} ${state}`)).toEqual([
      'epub.identifier not found',
      'epub.publisher not found',
      'epub.date not found',
      'epub.cover not found',
    ]);
  },
);
