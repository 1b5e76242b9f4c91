import { afterEach, describe, expect, it, vi } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { proofThread } from '../support/proof-files/reader.ts';
import { fetched, stage } from '../support/staged.ts';

const FACTS = JSON.stringify({ of: 'audio', files: [], titles: [], isbns: [], unread: [] });

let catalogue: TestCatalogue | undefined;
const open = (limits: Parameters<typeof proofThread>[0] = {}): TestCatalogue => {
  catalogue = openTestCatalogue('2026-11-25', { reader: proofThread(limits) });
  return catalogue;
};
afterEach(() => {
  catalogue?.close();
  catalogue = undefined;
  vi.restoreAllMocks();
});

const readText = (of: TestCatalogue, text: string, name = 'interior.pdf') =>
  of.read('proofChecks.read', { file: stage(of, text, name), kind: 'interior' });

describe('the thread that reads files', () => {
  it('hands over what it read under the user’s own name of the file', async () => {
    const of = open();
    const read = await readText(of, FACTS, 'The Salt Almanac.pdf');
    expect(read).toMatchObject({ fileName: 'The Salt Almanac.pdf', bytes: FACTS.length });
    expect(JSON.parse(fetched(of, read.reading).toString('utf8'))).toMatchObject({
      fileName: 'The Salt Almanac.pdf',
      sha256: read.sha256,
      facts: { of: 'audio' },
    });
  });

  it('lets the catalogue answer meanwhile, tells how far it is, and is called off', async () => {
    const of = open();
    const told: number[] = [];
    let cancelled = false;
    const file = stage(of, 'go on', 'long.pdf');
    const reading = of.app.read(
      'proofChecks.read',
      { file, kind: 'interior' },
      { progress: ({ done }) => told.push(done), cancelled: () => cancelled },
    );
    const begun = performance.now();
    await vi.waitFor(() => expect(told.length).toBeGreaterThan(1), { timeout: 20_000 });
    const asked = performance.now();
    expect(of.call('works.create', { title: 'Written meanwhile' }).workId).toBe(1);
    const answered = performance.now() - asked;
    cancelled = true;
    expect(await reading).toMatchObject({ ok: false, error: { code: 'CANCELLED' } });
    expect(told.at(-1)).toBeGreaterThan(told[0] ?? 0);
    console.log(
      `Thread: ${told.length} words of progress in ${Math.round(asked - begun)} ms, a command beside it took ${Math.round(answered)} ms.`,
    );
  });

  it.each([
    ['refuse', 'This file is locked by a password.'],
    ['throw', 'The reader broke off at this file'],
    ['exit', 'The reader broke off at this file'],
    ['{"of":"film"}', 'The reader broke off at this file'],
  ])(
    'answers %s with one sentence, keeps details to the log, and the catalogue lives on',
    async (text, sentence) => {
      const log = vi.spyOn(console, 'error').mockImplementation(() => {});
      const of = open();
      const thrown = await readText(of, text).catch((error: unknown) => error);
      expect(thrown).toMatchObject({ code: 'BAD_INPUT', field: 'file' });
      expect(String(thrown)).toContain(sentence);
      expect(String(thrown)).not.toContain('secret');
      if (text === 'throw') expect(String(log.mock.calls[0]?.[1])).toContain('a secret detail');
      expect(of.call('works.create', { title: 'Still here' }).workId).toBe(1);
    },
  );

  it('ends alone when its memory is used up', async () => {
    vi.spyOn(console, 'error').mockImplementation(() => {});
    const of = open({ heapMb: 40 });
    await expect(readText(of, 'swallow')).rejects.toMatchObject({
      code: 'BAD_INPUT',
      message: expect.stringContaining('more than 40 MB of memory'),
    });
    expect(of.call('works.create', { title: 'Still here' }).workId).toBe(1);
  });

  it('is ended when it takes too long, even where it never looks up', async () => {
    const of = open({ timeMs: 1_500 });
    await expect(readText(of, 'spin')).rejects.toMatchObject({
      code: 'BAD_INPUT',
      message: expect.stringContaining('longer than 2 seconds'),
    });
  });

  it('is ended when the catalogue is closed', async () => {
    const of = open();
    const reading = of.app.read('proofChecks.read', { file: stage(of, 'go on'), kind: 'interior' });
    of.close();
    catalogue = undefined;
    expect(await reading).toMatchObject({ ok: false, error: { code: 'CANCELLED' } });
  });

  it('refuses a third file beside two, and a file that does not lie ready', async () => {
    const of = open();
    const first = readText(of, 'go on').catch((error: unknown) => error);
    const second = readText(of, 'go on').catch((error: unknown) => error);
    await expect(readText(of, FACTS)).rejects.toMatchObject({ code: 'IN_USE' });
    of.close();
    catalogue = undefined;
    await Promise.all([first, second]);
    const next = open();
    await expect(
      next.read('proofChecks.read', { file: '0'.repeat(32), kind: 'cover' }),
    ).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
  });
});
