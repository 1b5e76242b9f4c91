import {
  copyFileSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { App } from '../../src/app.ts';
import { markOf, notedMarkBeside } from '../../src/store/left-as.ts';
import { grownCatalogue, openStill, reading } from '../faults/files.ts';
import { refusalOf } from '../support/catalogue.ts';

let folder: string;
let file: string;
let app: App | undefined;

const pristine = join(mkdtempSync(join(tmpdir(), 'edition-ledger-')), 'pristine.ledger');
beforeAll(() => grownCatalogue(pristine, 0));
afterAll(() => rmSync(dirname(pristine), { recursive: true, force: true }));
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'edition-ledger-'));
  file = join(folder, 'press.ledger');
  for (const companion of ['', '-hold']) copyFileSync(pristine + companion, file + companion);
});
afterEach(() => {
  app?.close();
  app = undefined;
  rmSync(folder, { recursive: true, force: true });
});

/** What the user is told on opening; the catalogue is closed again. */
function warnings(path = file, readOnly = false): string[] {
  const opened = openStill(path, readOnly);
  const info = opened.call('catalogue.info', {});
  opened.close();
  if (!info.ok) throw new Error(info.error.message);
  return (info.value as { warnings: string[] }).warnings;
}

/** Changes the closed file past the program. */
function behindItsBack(work: (raw: Database.Database) => void): void {
  const raw = new Database(file);
  work(raw);
  raw.close();
}

/** Changes a row without an entry in the journal, and leaves every trigger as it was. */
function forge(raw: Database.Database): void {
  const trigger = raw
    .prepare("SELECT sql FROM sqlite_schema WHERE name = 'journal_work_changed'")
    .pluck()
    .get();
  raw.exec("DROP TRIGGER journal_work_changed; UPDATE work SET note = 'forged' WHERE id = 2");
  raw.exec(String(trigger));
}

describe('a file as it was left', () => {
  it('is noted at a clean close, forgotten while it is open, and opens without a word', () => {
    // The copy that the test works on is another file than the one that was left.
    expect(notedMarkBeside(file)).not.toBe(markOf(file));
    app = openStill(file);
    expect(notedMarkBeside(file)).toBeNull();
    app.close();
    app = undefined;
    expect(notedMarkBeside(file)).toBe(markOf(file));
    expect(warnings()).toEqual([]);
    expect(warnings(file, true)).toEqual([]);
  });

  it('opens without a word too when its log was left by a power cut, or it was copied without its side file', () => {
    const cut = join(folder, 'cut.ledger');
    app = openStill(file);
    app.call('works.create', { title: 'Just in time' });
    for (const companion of ['', '-wal']) copyFileSync(file + companion, cut + companion);
    expect(warnings(cut)).toEqual([]);
    const copy = join(folder, 'copy.ledger');
    copyFileSync(cut, copy);
    expect(warnings(copy)).toEqual([]);
  });
});

it('is opened whatever became of its side file', () => {
  const side = readFileSync(`${file}-hold`);
  for (const bytes of [
    Buffer.alloc(0),
    Buffer.from('no database at all, but long enough for one'),
    side.fill(0xff, 100),
  ]) {
    writeFileSync(`${file}-hold`, bytes);
    expect(warnings(file, true)).toEqual([]);
    expect(warnings()).toEqual([]);
    expect(notedMarkBeside(file)).toBe(markOf(file));
  }
});

describe('a file that was changed by another program', () => {
  it('is told too when its size is the same and its day was set back', () => {
    warnings();
    const { atime, mtime, size } = statSync(file);
    behindItsBack((raw) => raw.exec("UPDATE work SET note = 'x' WHERE id = 2"));
    utimesSync(file, atime, mtime);
    expect(statSync(file).size).toBe(size);
    expect(warnings().join()).toContain('1 entry was written by another program');
  });

  it('is told on every opening, for reading too, until it is mended', () => {
    behindItsBack((raw) => raw.exec("UPDATE work SET note = 'by another program' WHERE id = 2"));
    for (const readOnly of [true, false, false])
      expect(warnings(file, readOnly).join()).toContain('1 entry was written by another program');
  });

  it('is told where a row was changed without an entry in the journal, also after the program changed it since', () => {
    behindItsBack(forge);
    expect(warnings().join()).toContain('differ from the journal at work 2');
    app = openStill(file);
    app.call('works.update', { id: 2, note: 'changed rightly' });
    expect(app.call('catalogue.check', {})).toMatchObject({ value: { ok: false, replay: ['work 2'] } });
  });

  it('is told at the next opening when it was changed while it was open here', () => {
    app = openStill(file);
    behindItsBack(forge);
    app.close();
    app = undefined;
    expect(warnings().join()).toContain('work 2');
  });

  it('is told when what is derived from the numbers no longer fits them', () => {
    behindItsBack((raw) =>
      raw.exec('UPDATE number_run SET last_index = last_index + 1; UPDATE number_tally SET spent = 9'),
    );
    expect(warnings().join()).toContain('number_run of block 1, number_tally of block 1');
  });

  it('is refused when a rule was taken away, with the way back', () => {
    app = openStill(file);
    const made = app.call('backups.make', {});
    app.close();
    app = undefined;
    behindItsBack((raw) => raw.exec('DROP TRIGGER number_kept'));
    for (const readOnly of [true, false]) {
      const refusal = refusalOf(() => openStill(file, readOnly));
      expect(refusal.code).toBe('CATALOGUE_DAMAGED');
      expect(refusal.message).toContain('trigger number_kept is missing');
      expect(made.ok && refusal.message.includes((made.value as { path: string }).path)).toBe(true);
    }
  });
});

it('refuses a file whose index lies, which the quick check does not see', () => {
  const place = reading(file, (raw) => {
    const page = raw
      .prepare(
        "SELECT pageno FROM dbstat WHERE name = 'journal_by_row' AND pagetype = 'leaf' ORDER BY pageno LIMIT 1",
      )
      .pluck()
      .get() as number;
    return (
      (page - 1) * 4096 +
      readFileSync(file)
        .subarray((page - 1) * 4096, page * 4096)
        .lastIndexOf('channel')
    );
  });
  const bytes = readFileSync(file);
  bytes.writeUInt8(bytes.readUInt8(place) ^ 4, place);
  writeFileSync(file, bytes);
  expect(reading(file, (raw) => raw.pragma('quick_check', { simple: true }))).toBe('ok');
  expect(refusalOf(() => openStill(file))).toMatchObject({ code: 'CATALOGUE_DAMAGED' });
});
