import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { startStore } from '../../src/thread/start.ts';
import { cli, here, newFile } from './cli.ts';

/** A catalogue with one block, backed up, and then a second block. */
async function backedUp(): Promise<{ file: string; backup: string }> {
  const file = newFile();
  await here(file, ['block', 'add', '979-8-969999']);
  const { path } = JSON.parse((await here(file, ['backup', 'make', '--json'])).out);
  await here(file, ['block', 'add', '979-8-969998']);
  return { file, backup: path };
}

const blocks = async (file: string) =>
  JSON.parse((await here(file, ['block', 'list', '--json'])).out).blocks.map(
    (b: { digits: string }) => b.digits,
  );

/** Overwrites a stretch in the middle of the file with bytes that mean nothing. */
function damage(file: string): void {
  const bytes = readFileSync(file);
  bytes.fill(0xa5, 4096, Math.min(bytes.length, 4096 * 12));
  writeFileSync(file, bytes);
}

test('a backup is made, listed and put back; what stood there is kept', async () => {
  const { file, backup } = await backedUp();
  expect((await here(file, ['backup', 'list'])).out).toContain(backup);
  const { code, out } = await cli(file, 'restore', backup);
  expect(code).toBe(0);
  expect(await blocks(file)).toEqual(['9798969999']);
  const kept = /kept as (\S+)\.$/m.exec(out)?.[1] ?? '';
  expect(await blocks(kept)).toEqual(['9798969999', '9798969998']);
});

test('a damaged catalogue is told as such with the way back, and the way back works', async () => {
  const { file, backup } = await backedUp();
  damage(file);
  const told = await here(file, ['block', 'add', '979-8-969997', '--json']);
  expect(told.code).toBe(2);
  expect(JSON.parse(told.err)).toMatchObject({ code: 'CATALOGUE_DAMAGED' });
  expect(told.err).toContain('edition-ledger restore');
  const restored = await here(file, ['restore', backup]);
  expect(restored).toMatchObject({ code: 0, err: '' });
  expect(await blocks(file)).toEqual(['9798969999']);
});

test('a backup that is not sound, not there or the catalogue itself is refused and nothing changes', async () => {
  const { file, backup } = await backedUp();
  const before = await blocks(file);
  damage(backup);
  for (const [name, wanted] of [
    [backup, /CATALOGUE_DAMAGED/],
    [`${backup}.lost`, /NOT_FOUND/],
    [file, /BAD_INPUT/],
  ] as const) {
    const { code, out, err } = await here(file, ['restore', name, '--json']);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(wanted);
  }
  expect(await blocks(file)).toEqual(before);
  expect(readdirSync(dirname(file)).filter((name) => /restoring|replaced/.test(name))).toEqual([]);
});

test('a catalogue that is open elsewhere is not replaced', async () => {
  const { file, backup } = await backedUp();
  const store = await startStore({ file });
  try {
    const { code, err } = await here(file, ['restore', backup, '--json']);
    expect(code).toBe(2);
    expect(JSON.parse(err)).toMatchObject({ code: 'CATALOGUE_IN_USE' });
  } finally {
    await store.close();
  }
});

test('a backup can be put where no catalogue is', async () => {
  const { file, backup } = await backedUp();
  const other = join(dirname(file), 'other.ledger');
  expect(await here(other, ['restore', backup])).toMatchObject({ code: 0 });
  expect(existsSync(other)).toBe(true);
  expect(await blocks(other)).toEqual(['9798969999']);
});
