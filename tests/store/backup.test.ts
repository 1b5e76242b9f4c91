import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type App, openApp } from '../../src/app.ts';
import type { InputOf, OperationName, OutputOf } from '../../src/contract/index.ts';
import { refusalOf } from '../support/catalogue.ts';

let folder: string;
let file: string;
let now: string;
let app: App | undefined;

const open = (readOnly = false) => {
  app = openApp({ file, readOnly, now: () => new Date(now), today: () => now.slice(0, 10) });
  return app;
};
const call = <N extends OperationName>(name: N, input: InputOf<N>): OutputOf<N> => {
  const answer = app?.call(name, input);
  if (!answer?.ok) throw new Error(`${name}: ${answer?.error.message}`);
  return answer.value as OutputOf<N>;
};
const close = () => {
  app?.close();
  app = undefined;
};
const titles = () => call('works.list', {}).works.map((work) => work.title);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'edition-ledger-'));
  file = join(folder, 'press.ledger');
  now = '2026-03-02T10:00:00.000Z';
});
afterEach(() => {
  close();
  rmSync(folder, { recursive: true, force: true });
});

describe('backups', () => {
  it('are taken once a day when something changed, and kept by the rota', () => {
    open();
    call('works.create', { title: 'One' });
    close();
    const day = 86_400_000;
    for (let index = 1; index <= 60; index += 1) {
      now = new Date(Date.parse('2026-03-02T10:00:00.000Z') + index * day).toISOString();
      open();
      call('works.create', { title: `Day ${index}` });
      close();
      open();
      close();
    }
    open();
    const daily = call('backups.list', {}).backups.filter((backup) => backup.kind === 'daily');
    const days = daily.map((backup) => backup.at.slice(0, 10));
    expect(days.slice(0, 7)).toEqual([
      '2026-05-01',
      '2026-04-30',
      '2026-04-29',
      '2026-04-28',
      '2026-04-27',
      '2026-04-26',
      '2026-04-25',
    ]);
    expect(new Set(days).size).toBe(days.length);
    expect(days.length).toBeLessThanOrEqual(7 + 4 + 12);
    expect(days).toContain('2026-03-31');
  });

  it('are taken before the first change of a day in a window left open', () => {
    open();
    call('works.create', { title: 'One' });
    now = '2026-03-03T09:00:00.000Z';
    call('works.create', { title: 'Two' });
    const [backup] = call('backups.list', {}).backups;
    expect(backup).toMatchObject({ kind: 'daily', at: now });
    expect(call('backups.preview', { name: backup?.name ?? '' })).toMatchObject({
      sameStory: true,
      lostTotal: 1,
      now: { works: 2 },
      restored: { works: 1 },
    });
  });

  it('preview what would be lost, restore it, and can be undone by the backup taken before', () => {
    open();
    call('catalogue.demo', {});
    const made = call('backups.make', {});
    call('works.create', { title: 'Afterthought' });
    call('settings.update', { publisher: 'Somebody Else' });
    const preview = call('backups.preview', { name: made.name });
    expect(preview.lost.map((change) => change.operation)).toEqual(['settings.update', 'works.create']);
    const { before } = call('backups.restore', { name: made.name });
    expect(titles()).not.toContain('Afterthought');
    expect(call('catalogue.check', {}).ok).toBe(true);
    call('works.create', { title: 'Written after the restore' });
    call('backups.restore', { name: before.name });
    expect(titles()).toContain('Afterthought');
    expect(titles()).not.toContain('Written after the restore');
    expect(readdirSync(folder).filter((name) => /restoring|replaced|unproven/.test(name))).toEqual([]);
  });

  it('refuse a damaged backup and leave the catalogue as it is', () => {
    open();
    call('catalogue.demo', {});
    const made = call('backups.make', {});
    truncateSync(made.path, made.bytes - 8192);
    const head = call('journal.list', { count: 1 }).entries[0]?.hash;
    for (const name of ['backups.preview', 'backups.restore'] as const)
      expect(app?.call(name, { name: made.name })).toMatchObject({
        ok: false,
        error: { code: 'CATALOGUE_DAMAGED' },
      });
    expect(call('journal.list', { count: 1 }).entries[0]?.hash).toBe(head);
    expect(app?.call('backups.restore', { name: '../elsewhere.ledger' })).toMatchObject({
      ok: false,
      error: { code: 'NOT_FOUND' },
    });
  });

  it('go to a folder named by its whole path', () => {
    open();
    expect(app?.call('settings.update', { backupFolder: 'somewhere' })).toMatchObject({
      ok: false,
      error: { code: 'BAD_INPUT', field: 'backupFolder' },
    });
    call('settings.update', { backupFolder: join(folder, 'elsewhere') });
    expect(call('backups.make', {}).path).toContain(join(folder, 'elsewhere'));
    expect(call('backups.list', {}).backups).toHaveLength(1);
  });

  it('that cannot be taken are told and never keep anyone from working', () => {
    open();
    const blocked = join(folder, 'a file');
    writeFileSync(blocked, '');
    call('settings.update', { backupFolder: join(blocked, 'inside') });
    now = '2026-03-03T10:00:00.000Z';
    call('works.create', { title: 'One' });
    expect(call('catalogue.info', {}).warnings.join()).toContain('backup could not be taken');
    expect(app?.call('backups.make', {})).toMatchObject({ ok: false, error: { code: 'DISK_TROUBLE' } });
  });
});

describe('opening', () => {
  it('tells a second writer who holds the file, and lets a reader in', () => {
    open();
    call('works.create', { title: 'One' });
    const second = refusalOf(() => openApp({ file }));
    expect(second).toMatchObject({ code: 'CATALOGUE_IN_USE' });
    expect(second.message).toContain(`process ${process.pid}`);
    const reader = openApp({ file, readOnly: true });
    expect(reader.call('works.list', {})).toMatchObject({ ok: true, value: { total: 1 } });
    expect(reader.call('works.create', { title: 'Two' })).toMatchObject({
      ok: false,
      error: { code: 'READ_ONLY' },
    });
    reader.close();
  });

  it('never touches a foreign or damaged file, and leads to the newest sound backup', () => {
    writeFileSync(file, 'a letter to the printer, long enough to be looked at as a database page');
    expect(refusalOf(() => open()).code).toBe('CATALOGUE_FOREIGN');
    rmSync(file);
    const other = new Database(file);
    other.exec('CREATE TABLE recipe (id)');
    other.close();
    const before = readFileSync(file);
    expect(refusalOf(() => open()).code).toBe('CATALOGUE_FOREIGN');
    expect(readFileSync(file).equals(before)).toBe(true);
    rmSync(file);
    open();
    call('catalogue.demo', {});
    const made = call('backups.make', {});
    close();
    const bytes = readFileSync(file);
    bytes.fill(0xff, 4096, 16_384);
    writeFileSync(file, bytes);
    const refusal = refusalOf(() => open());
    expect(refusal.code).toBe('CATALOGUE_DAMAGED');
    expect(refusal.message).toContain(made.path);
    expect(readFileSync(file).equals(bytes)).toBe(true);
  });

  it('opens a file of a newer form for reading only, and says why', () => {
    open();
    call('works.create', { title: 'One' });
    close();
    const raw = new Database(file);
    raw.pragma('user_version = 99');
    raw.close();
    open();
    expect(call('catalogue.info', {})).toMatchObject({ readOnly: true, schemaVersion: 99 });
    expect(call('catalogue.info', {}).warnings[0]).toContain('newer Edition Ledger');
    expect(app?.call('works.create', { title: 'Two' })).toMatchObject({
      ok: false,
      error: { code: 'READ_ONLY' },
    });
  });

  it('says so when the clock stands before the newest change, and keeps the journal in order', () => {
    open();
    call('works.create', { title: 'One' });
    close();
    now = '2025-01-01T10:00:00.000Z';
    open();
    expect(call('catalogue.info', {}).warnings.join()).toContain('clock');
    call('works.create', { title: 'Two' });
    const moments = call('journal.list', {}).entries.map((entry) => entry.at);
    expect(moments).toEqual([...moments].sort().reverse());
    expect(call('catalogue.check', {}).ok).toBe(true);
  });

  it('warns of a folder that is copied to other machines', () => {
    mkdirSync(join(folder, 'Nextcloud'));
    file = join(folder, 'Nextcloud', 'press.ledger');
    open();
    expect(call('catalogue.info', {}).warnings[0]).toContain('copied to other machines');
  });

  it('says in a sentence that a folder cannot be used', () => {
    const blocked = join(folder, 'a file');
    writeFileSync(blocked, '');
    file = join(blocked, 'press.ledger');
    expect(refusalOf(() => open())).toMatchObject({ code: 'DISK_TROUBLE' });
  });

  it('leaves entries of another program unsealed for the check to name', () => {
    open();
    call('works.create', { title: 'One' });
    const raw = new Database(file);
    raw.exec("UPDATE work SET note = 'by another program'");
    raw.close();
    call('works.create', { title: 'Two' });
    expect(call('catalogue.check', {}).ok).toBe(false);
  });
});
