import { expect, test } from 'vitest';
import { decodeText } from '../../renderer/lib/file-text.ts';
import { fileSize, isFullPath, lossInWords } from '../../renderer/screens/settings/backups/words.ts';

test('sizes are told in thousands, never as nothing', () => {
  expect(fileSize(1, 'en')).toBe('1 kB');
  expect(fileSize(512_000, 'en')).toBe('512 kB');
  expect(fileSize(3_440_000, 'en')).toBe('3.4 MB');
});

test('what restoring would lose is told by how much it is', () => {
  expect(lossInWords({ sameStory: true, lostTotal: 0 })).toMatch(/nothing would be lost/);
  expect(lossInWords({ sameStory: true, lostTotal: 1 })).toMatch(/^One change/);
  expect(lossInWords({ sameStory: true, lostTotal: 1200 }, 'en')).toMatch(/^1,200 changes/);
  expect(lossInWords({ sameStory: false, lostTotal: 0 })).toMatch(/different ways/);
});

test('a folder is named from its root', () => {
  for (const full of ['/srv/backups', 'D:\\Backups', 'c:/b', '\\\\shelf\\backups'])
    expect(isFullPath(full)).toBe(true);
  for (const part of ['backups', './b', '~/b', 'D:', '']) expect(isFullPath(part)).toBe(false);
});

test('a file is read in the alphabet it was saved in', () => {
  const text = 'ISBN;Titel\r\n9798969999004;Möwe';
  expect(decodeText(new TextEncoder().encode(`\uFEFF${text}`))).toBe(text);
  expect(decodeText(Uint8Array.from(Buffer.from(`\uFEFF${text}`, 'utf16le')))).toBe(text);
  expect(decodeText(Uint8Array.from(Buffer.from(text, 'latin1')))).toBe(text);
});
