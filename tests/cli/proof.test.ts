import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { packed, SALT_ALMANAC } from '../support/proof-files/epub.ts';
import { here, newFile } from './cli.ts';

test('a final file is checked from the shell, and a difference ends it with 1', async () => {
  const file = newFile();
  const epub = join(dirname(file), 'almanac.epub');
  writeFileSync(epub, packed(SALT_ALMANAC));
  await here(file, ['demo']);
  // The demo gives these numbers to other formats than the file says.
  const wrong = await here(file, ['proof', epub, '--format', '979-8-969999-04-6']);
  expect(wrong.code).toBe(1);
  expect(wrong.out).toContain('almanac.epub against E-book (EPUB)');
  expect(wrong.out).toMatch(/differs +Other ISBNs in the e-book/);
  expect(wrong.out).toContain('own check prevails');
  const json = await here(file, ['proof', epub, '--format', '9798969999046', '--json']);
  expect(JSON.parse(json.out)).toMatchObject({ fileName: 'almanac.epub', kind: 'e-book', inForce: true });
  expect(await here(file, ['proof', epub, '--format', '9798969999046', '--as', 'cover'])).toMatchObject({
    code: 1,
    err: expect.stringContaining('This is an EPUB'),
  });
  expect((await here(file, ['proof', epub, '--format', '9780306406157'])).code).toBe(2);
  expect((await here(file, ['proof', epub])).err).toContain('--format');
  expect((await here(file, ['proof', join(dirname(file), 'none.epub'), '--format', '5'])).code).toBe(2);
});
