import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import type { InputOf, OperationName, OutputOf } from '../../src/contract/index.ts';
import { runNode } from '../support/spawn.ts';
import { BIN, here } from './cli.ts';

// The main job by the command line alone: every step is `edition-ledger call OPERATION`, in a process of its own but
// for the many alike tasks, which run through the same program in this one to save time.

const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-story-'));
const file = join(folder, 'press.ledger');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (args: string[], stdin = '') => runNode([BIN, ...args, '--catalogue', file, '--json'], { stdin });

async function call<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
  const { code, out, err } = await run(['call', name], JSON.stringify(input));
  if (code !== 0) throw new Error(`${name}: ${err}`);
  return JSON.parse(out) as OutputOf<N>;
}

it('goes from an owned block to a second edition live and the first one retired', async () => {
  await call('blocks.add', { prefix: '979-8-969999' });
  const { channelId } = await call('channels.create', {
    name: 'Printworks Direct',
    kind: 'print',
    proof: 'none',
    leadDays: 0,
  });
  const { workId, editionId } = await call('works.create', {
    title: 'The Salt Almanac',
    contributors: [{ role: 'A01', name: 'Maren Oskarsdal' }],
    description: 'A year on the marsh.',
    keywords: ['marsh'],
    subjects: [{ scheme: 'own', code: 'NOVEL' }],
  });
  const price = { currency: 'EUR', amountMinor: 1299 };
  const { formatId } = await call('formats.create', {
    editionId,
    form: 'BC',
    trimWidthUm: 129_000,
    trimHeightUm: 198_000,
    pages: 288,
    prices: [price],
  });
  await call('numbers.assign', { formatId });
  const { listingId } = await call('listings.create', { formatId, channelId });
  const moved = await call('listings.move', { id: listingId, to: 'selling', on: '2024-05-02' });
  expect(moved.locked).toContain('title');

  const refused = await run(['call', 'editions.update'], JSON.stringify({ id: editionId, title: 'Another' }));
  expect([refused.code, JSON.parse(refused.err)]).toMatchObject([
    1,
    { code: 'FIELD_LOCKED', field: 'title' },
  ]);

  const next = await call('editions.prepareNext', {
    editionId,
    carry: [formatId],
    changes: {
      contributors: [
        { role: 'A01', name: 'Maren Oskarsdal' },
        { role: 'A23', name: 'Tobias Wrenfield' },
      ],
    },
  });
  const { today } = await call('catalogue.info', {});
  await call('plans.release', { editionId: next.editionId, day: today });
  const quickly = async (name: string, input: object) =>
    JSON.parse((await here(file, ['call', name, '--json'], input)).out);
  const finishAll = async () => {
    for (let round = 0; round < 40; round += 1) {
      const { tasks } = (await quickly('tasks.list', {})) as OutputOf<'tasks.list'>;
      const ready = tasks.filter((task) => task.needs.length === 0);
      if (ready.length === 0) return;
      for (const task of ready) await quickly('tasks.finish', { id: task.id });
    }
  };
  await finishAll();
  const before = await run(['audit']);
  expect(before.code).toBe(1);
  expect(JSON.parse(before.out).findings.map((finding: { severity: string }) => finding.severity)).toContain(
    'must fix',
  );

  await call('plans.retirement', { editionId });
  await finishAll();
  const after = await run(['audit']);
  expect([after.code, JSON.parse(after.out).findings]).toEqual([0, []]);
  const status = JSON.parse((await run(['status'])).out);
  expect(
    status.list.map((row: { editionLabel: string; standing: string }) => [row.editionLabel, row.standing]),
  ).toEqual([
    ['The Salt Almanac, 2nd edition', 'live'],
    ['The Salt Almanac', 'retired'],
  ]);
  const past = JSON.parse((await run(['status', '--as-of', '2024-06-01'])).out);
  expect(past.list).toMatchObject([{ editionLabel: 'The Salt Almanac', standing: 'live' }]);
  expect((await run(['check'])).code).toBe(0);
  const journal = JSON.parse((await run(['journal', '--work', String(workId), '--count', '1'])).out);
  expect(journal.entries[0].operation).toBe('tasks.finish');
}, 600_000);
