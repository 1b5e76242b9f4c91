import { EventEmitter } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, sep } from 'node:path';
import type { Session } from 'electron';
import { expect, test, vi } from 'vitest';
import { catalogueIn } from '../../electron/argv.ts';
import { guardDownloads } from '../../electron/downloads.ts';
import { DragFiles } from '../../electron/drag-out.ts';
import { RecentFiles } from '../../electron/recent.ts';

const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-files-'));

test('only files that an own page made are saved, each where the person says', () => {
  const session = new EventEmitter();
  guardDownloads(session as unknown as Session, '/home/press/Downloads');
  const download = (url: string) => {
    const item = Object.assign(new EventEmitter(), {
      getURL: () => url,
      getFilename: () => 'audit.csv',
      setSaveDialogOptions: vi.fn(),
    });
    const preventDefault = vi.fn();
    session.emit('will-download', { preventDefault }, item);
    return {
      stopped: preventDefault.mock.calls.length > 0,
      asked: item.setSaveDialogOptions.mock.calls[0]?.[0],
    };
  };
  expect(download('blob:app://edition-ledger/1')).toMatchObject({
    stopped: false,
    asked: { defaultPath: join('/home/press/Downloads', 'audit.csv') },
  });
  for (const url of [
    'https://site.example/a.csv',
    'blob:https://site.example/1',
    'app://edition-ledger/a.csv',
  ])
    expect(download(url)).toEqual({ stopped: true, asked: undefined });
});

test('a file dragged out lies in a folder of this run and goes with it', async () => {
  const drags = new DragFiles();
  const file = await drags.write(['979-8-969999-00-8.svg', new TextEncoder().encode('<svg/>')]);
  expect(file).toMatch(/edition-ledger-drag-\w+[/\\]979-8-969999-00-8\.svg$/);
  expect(readFileSync(file ?? '', 'utf8')).toBe('<svg/>');
  await drags.clear();
  expect(existsSync(file ?? '')).toBe(false);
});

test.each([
  ['a path', `..${sep}a.svg`],
  ['a slash', 'a/b.svg'],
  ['a program', 'a.exe'],
  ['a script', 'a.desktop'],
  ['a hidden file', '.a.svg'],
  ['no ending', 'a'],
  ['a NUL', 'a\0.svg'],
  ['a very long name', `${'a'.repeat(200)}.svg`],
])('%s is not dragged out', async (_, name) => {
  const drags = new DragFiles();
  expect(await drags.write([name, new Uint8Array([1])])).toBeUndefined();
  expect(await drags.write(['a.svg', name])).toBeUndefined();
  expect(await drags.write(['a.svg', new Uint8Array(0)])).toBeUndefined();
  expect(await drags.write(['a.svg', new Uint8Array(9 * 1024 * 1024)])).toBeUndefined();
});

test('recent catalogues are kept newest first, ten at most, and only those that are there are shown', () => {
  const recent = new RecentFiles(join(folder, 'recent.json'));
  const files = Array.from({ length: 12 }, (_, n) => join(folder, `${n}.ledger`));
  for (const file of files) {
    writeFileSync(file, '');
    recent.add(file);
  }
  recent.add(files[5] ?? '');
  recent.add(join(folder, 'away.ledger'));
  expect(recent.present().map((file) => file.slice(folder.length + 1, -7))).toEqual([
    '5',
    '11',
    '10',
    '9',
    '8',
    '7',
    '6',
    '4',
    '3',
  ]);
  recent.clear();
  expect(recent.present()).toEqual([]);
});

test.each(['', '{', '[7]', '{"a":1}'])(
  'an unreadable list of recent catalogues (%s) is an empty one',
  (text) => {
    writeFileSync(join(folder, 'bad.json'), text);
    expect(new RecentFiles(join(folder, 'bad.json')).present()).toEqual([]);
  },
);

test('a command line names a catalogue by its switch or by its ending', () => {
  const cases: [string[], string | undefined][] = [
    [['electron', '.', '--catalogue', '/a/b.ledger'], '/a/b.ledger'],
    [['electron', '--no-sandbox', '.', '--catalogue=/a/b.ledger'], '/a/b.ledger'],
    [['edition-ledger', 'salt.ledger'], '/press/salt.ledger'],
    [['edition-ledger', '--original-process-start-time=1', '/a/Salt.LEDGER'], '/a/Salt.LEDGER'],
    [['edition-ledger', '--', '/a/salt.ledger'], '/a/salt.ledger'],
    [['edition-ledger', '/a/letter.txt'], undefined],
    [['edition-ledger', '--catalogue', ''], undefined],
    [['edition-ledger'], undefined],
  ];
  for (const [argv, file] of cases) expect([argv, catalogueIn(argv, '/press')]).toEqual([argv, file]);
});
