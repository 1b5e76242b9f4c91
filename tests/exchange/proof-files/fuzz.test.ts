import { expect, test } from 'vitest';
import { fuzzFiles } from '../../fuzz/epub.ts';

test('damaged e-books and audiobooks are read as promised or refused in a sentence', async () => {
  const books = await fuzzFiles('epub', 200);
  const sounds = await fuzzFiles('audio', 60);
  expect(books.read).toBeGreaterThan(50);
  expect(books.refused).toBeGreaterThan(30);
  expect(sounds.read + sounds.refused).toBe(60);
});
