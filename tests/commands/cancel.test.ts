import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { EXPORT_KINDS } from '../../src/contract/exports.ts';
import type { OperationName } from '../../src/contract/index.ts';
import type { Follower } from '../../src/contract/jobs.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { exported, settled, stage } from '../support/staged.ts';

const TODAY = '2026-11-25';

let open: TestCatalogue[] = [];
let folder = '';
const opened = () => {
  const catalogue = openTestCatalogue(TODAY);
  open.push(catalogue);
  return catalogue;
};
const demo = () => {
  const catalogue = opened();
  catalogue.call('catalogue.demo', {});
  return catalogue;
};

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'edition-ledger-cancel-'));
  vi.stubEnv('TMPDIR', folder);
  // A follower hears of work ten times a second; here every step is a second after the last.
  let clock = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => {
    clock += 1_000;
    return clock;
  });
});
afterEach(() => {
  vi.restoreAllMocks();
  for (const catalogue of open) catalogue.close();
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true });
  open = [];
});

/** How many files lie ready in the folders of open catalogues. */
const staged = () =>
  readdirSync(folder)
    .filter((name) => name.startsWith('edition-ledger-files-'))
    .flatMap((name) => readdirSync(join(folder, name))).length;

interface Way {
  name: OperationName;
  /** The catalogue, and the input for the operation. */
  begin(): { catalogue: TestCatalogue; input: unknown };
  /** What a follower hears it count. */
  counts: readonly string[];
}

function tableWay(as: 'csv' | 'xlsx', name: 'sheets.look' | 'sheets.import', counts: string[]): Way {
  return {
    name,
    counts,
    begin: () => {
      const catalogue = opened();
      const file = stage(catalogue, exported(demo(), as));
      const columns = settled(catalogue, file, { Channels: { field: null } });
      return { catalogue, input: name === 'sheets.look' ? { file } : { file, columns, goodRowsOnly: true } };
    },
  };
}

function fileWay(name: OperationName, as: 'onix' | 'json', counts: string[]): Way {
  return {
    name,
    counts,
    begin: () => {
      const catalogue = opened();
      return { catalogue, input: { file: stage(catalogue, exported(demo(), as)) } };
    },
  };
}

function reportWay(name: 'reports.look' | 'reports.preview' | 'reports.reconcile', counts: string[]): Way {
  return {
    name,
    counts,
    begin: () => {
      const catalogue = demo();
      const [channel] = catalogue.call('channels.list', {}).channels;
      const channelId = channel?.id ?? 0;
      const file = stage(catalogue, 'ISBN,Title\n979-8-969999-77-0,A Stranger\n979-8-969999-78-7,Another\n');
      if (name === 'reports.look') return { catalogue, input: { channelId, file } };
      const columns = catalogue
        .call('reports.look', { channelId, file })
        .columns.map(({ index, field, detail, reading }) => ({ index, field, detail, reading }));
      return { catalogue, input: { channelId, file, columns } };
    },
  };
}

const SEALED = ['records taken into the search', 'entries sealed in the journal'];

const WAYS: readonly Way[] = [
  ...EXPORT_KINDS.map(
    ({ kind }): Way => ({
      name: 'exports.make',
      counts: [
        { json: 'rows', changes: 'entries', onix: 'formats', 'agency-onix': 'formats' }[kind as string] ??
          'works',
      ].map((what) => `${what} written`),
      begin: () => ({ catalogue: demo(), input: { as: kind } }),
    }),
  ),
  tableWay('csv', 'sheets.look', ['rows found']),
  tableWay('xlsx', 'sheets.look', ['rows found']),
  tableWay('csv', 'sheets.import', ['rows found', 'rows read', 'works recorded', ...SEALED]),
  tableWay('xlsx', 'sheets.import', ['rows found', 'rows read', 'works recorded', ...SEALED]),
  fileWay('onix.preview', 'onix', ['products read']),
  fileWay('onix.import', 'onix', ['products read', 'products taken over', ...SEALED]),
  fileWay('catalogue.import', 'json', ['rows taken over', 'editions looked at', ...SEALED]),
  reportWay('reports.look', ['rows found']),
  reportWay('reports.preview', ['rows found', 'rows read']),
  reportWay('reports.reconcile', ['rows found', 'rows read', 'findings kept', SEALED[1] ?? '']),
  {
    name: 'changes.merge',
    counts: ['entries compared'],
    begin: () => {
      const catalogue = demo();
      return { catalogue, input: { file: stage(catalogue, exported(catalogue, 'changes')) } };
    },
  },
];

/** What a follower hears of work that runs to its end: what was counted at each step. */
function heard({ name, begin }: Way): string[] {
  const { catalogue, input } = begin();
  const steps: string[] = [];
  const answer = catalogue.app.call(name, input, {
    progress: ({ what }) => steps.push(what),
    cancelled: () => false,
  });
  expect(answer).toMatchObject({ ok: true });
  return steps;
}

/** Places among the steps where something else begins to be counted, and the last. */
const turns = (steps: readonly string[]) =>
  [...steps.keys()].filter((at) => steps[at] !== steps[at - 1] || at === steps.length - 1);

describe.each(WAYS)('$name, counting $counts', (way) => {
  it('tells how far it has come, and leaves nothing behind wherever it is called off', () => {
    const steps = heard(way);
    expect(new Set(steps)).toEqual(
      new Set([...(steps[0] === 'reading the file' ? [steps[0]] : []), ...way.counts]),
    );
    for (const at of turns(steps)) {
      const { catalogue, input } = way.begin();
      const witness = new Database(catalogue.file, { readonly: true });
      const before = [witness.pragma('data_version', { simple: true }), staged()];
      let step = 0;
      const follower: Follower = { progress: () => {}, cancelled: () => step++ === at };
      expect(catalogue.app.call(way.name, input, follower), `at step ${at}: ${steps[at]}`).toMatchObject({
        ok: false,
        error: { code: 'CANCELLED' },
      });
      expect([witness.pragma('data_version', { simple: true }), staged()]).toEqual(before);
      witness.close();
      expect(catalogue.call('catalogue.check', {}).ok).toBe(true);
    }
  });
});
