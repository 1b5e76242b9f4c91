import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { InputOf, OutputOf } from '../../src/contract/index.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { exported, stage } from '../support/staged.ts';

let c: TestCatalogue;
let channelId: number;
beforeEach(() => {
  c = openTestCatalogue('2026-11-25');
  c.call('catalogue.demo', {});
  channelId = channelCalled('Nettlewick Bookshop');
});
afterEach(() => c.close());

const channelCalled = (name: string) =>
  c.call('channels.list', {}).channels.find((channel) => channel.name === name)?.id ?? 0;

type Report = InputOf<'reports.preview'>;

/** A report as it was found to be, ready to be set against the record. */
function report(lines: readonly string[], more: Partial<InputOf<'reports.reconcile'>> = {}): Report {
  const file = stage(c, lines.join('\n'), 'listings.csv');
  const columns = c
    .call('reports.look', { channelId, file })
    .columns.map(({ index, field, detail, reading }) => ({ index, field, detail, reading }));
  return { channelId, file, columns: columns as Report['columns'], ...more };
}

/** What the channel would list if everything there were as it is here. */
function asRecorded(change: (line: string[]) => string[] = (line) => line): string[] {
  const rows = c
    .call('works.list', {})
    .works.flatMap(({ id }) => c.call('works.get', { id }).editions)
    .flatMap((edition) => edition.formats.map((format) => ({ edition, format })))
    .flatMap(({ edition, format }) => {
      const listing = format.listings.find((one) => one.channelId === channelId);
      if (listing?.standing !== 'selling') return [];
      const price = format.prices.find(({ currency }) => currency === 'GBP');
      const date = listing.onSaleDate ?? format.onSaleDate ?? format.publicationDate ?? '';
      return [
        change([
          format.isbn13 ?? '',
          edition.title,
          price ? (price.amountMinor / 100).toFixed(2) : '',
          date,
          'active',
        ]),
      ];
    });
  return [
    'ISBN,Title,Price GBP,On sale,Status',
    ...rows.map((row) => row.map((cell) => `"${cell}"`).join(',')),
  ];
}

const kinds = (preview: OutputOf<'reports.preview'>) => preview.differences.map(({ kind }) => kind);
const open = () => c.call('reports.list', { channelId }).findings.filter(({ closedOn }) => closedOn === null);

describe('a channel’s own report', () => {
  it('that says what the record says tells nothing, and the preview keeps nothing', () => {
    const before = c.call('catalogue.info', {}).journalEntries;
    const lines = asRecorded();
    expect(lines.length).toBeGreaterThan(2);
    expect(c.call('reports.preview', report(lines))).toMatchObject({
      rows: lines.length - 1,
      differences: [],
      closes: [],
      problems: [],
    });
    expect(c.call('catalogue.info', {}).journalEntries).toBe(before);
  });

  it('becomes findings, whose columns and tasks are kept, until the next report shows them mended', () => {
    const wrong = [
      ...asRecorded((line) => [line[0] ?? '', line[1] ?? '', '1.23', line[3] ?? '', 'active']),
      '979-8-969999-77-0,A Stranger,4.00,2026-01-01,active',
    ];
    const prices = wrong.length - 2;
    expect(kinds(c.call('reports.preview', report(wrong)))).toEqual([
      'only there',
      ...Array.from({ length: prices }, () => 'price'),
    ]);
    const first = c.call('reports.reconcile', report(wrong, { on: '2026-11-20' }));
    expect(first).toMatchObject({ opened: prices + 1, stillOpen: 0, closed: 0, tasksEnded: 0 });
    const [stranger, price] = [
      open().find(({ kind }) => kind === 'only there'),
      open().find(({ kind }) => kind === 'price'),
    ];
    expect(stranger?.sentence).toBe(
      'A Stranger is on sale at Nettlewick Bookshop; here it is not in the catalogue.',
    );
    expect(price).toMatchObject({ there: '1.23 GBP', task: null, on: '2026-11-20' });

    const { taskId } = c.call('reports.makeTask', { findingId: price?.id ?? 0 });
    const task = c.call('tasks.list', {}).tasks.find(({ id }) => id === taskId);
    expect(task).toMatchObject({
      dueOn: '2026-11-25',
      about: expect.stringContaining('Nettlewick Bookshop'),
    });
    expect(task?.title).toMatch(/^Settle the price of .+ with Nettlewick Bookshop$/);
    expect(c.refusal('reports.makeTask', { findingId: price?.id ?? 0 })).toMatchObject({
      code: 'STEP_REFUSED',
    });

    // The columns are remembered for this channel, and for no other.
    const file = stage(c, wrong.join('\n'));
    const from = (id: number) =>
      c.call('reports.look', { channelId: id, file }).columns.map((column) => column.from);
    expect(new Set(from(channelId))).toEqual(new Set(['remembered']));
    expect(from(channelCalled('Lanternshelf'))).not.toContain('remembered');

    // The same again keeps them open and adds none.
    const again = c.call('reports.reconcile', report(wrong, { on: '2026-11-21' }));
    expect(again).toMatchObject({ opened: 0, stillOpen: prices + 1, closed: 0 });

    // Mended prices close their findings and end the task; the stranger stays.
    const mended = [...asRecorded(), '979-8-969999-77-0,A Stranger,4.00,2026-01-01,active'];
    expect(c.call('reports.preview', report(mended))).toMatchObject({
      closesTotal: prices,
      differencesTotal: 1,
    });
    const last = c.call('reports.reconcile', report(mended));
    expect(last).toMatchObject({ opened: 0, stillOpen: 1, closed: prices, tasksEnded: 1 });
    expect(open().map(({ kind }) => kind)).toEqual(['only there']);
    const ended = c.call('tasks.list', { standings: ['done'] }).tasks.find(({ id }) => id === taskId);
    expect(ended).toMatchObject({ endedOn: '2026-11-25' });
    expect(ended?.note).toContain('Mended, as the report of Nettlewick Bookshop of 2026-11-25 shows.');
    expect(c.refusal('reports.makeTask', { findingId: price?.id ?? 0 }).message).toContain('was mended');
    const { reports } = c.call('reports.list', { channelId });
    expect(reports.map(({ on, findings, open: left }) => [on, findings, left])).toEqual([
      ['2026-11-25', 0, 0],
      ['2026-11-21', 0, 0],
      ['2026-11-20', prices + 1, 1],
    ]);
    // Every step can be told from the journal, and the whole goes out and comes back.
    expect(c.call('catalogue.check', {})).toMatchObject({ ok: true, replay: [], schema: [] });
    const whole = exported(c, 'json').toString('utf8');
    const other = openTestCatalogue('2026-11-25');
    other.call('catalogue.import', { file: stage(other, whole) });
    expect(exported(other, 'json').toString('utf8')).toBe(whole);
    other.close();
  });

  it('can be undone, with all that it closed, while no task ended by it', () => {
    const empty = ['ISBN,Status', '979-8-969999-77-0,active'];
    c.call('reports.reconcile', report(empty));
    const before = open();
    c.call('reports.reconcile', report(asRecorded()));
    expect(open()).toEqual([]);
    const commandSeq = c.call('journal.list', {}).entries[0]?.commandSeq ?? 0;
    c.call('journal.undo', { commandSeq });
    expect(open().map(({ id }) => id)).toEqual(before.map(({ id }) => id));
  });

  it('that ended a task is not undone, and says what to do instead, which works', () => {
    const stranger = '979-8-969999-77-0,active';
    const [header = '', ...rows] = asRecorded().map((line) => line.split(',')[0]);
    const wrong = [`${header},Status`, stranger, ...rows.map((isbn) => `${isbn},active`)];
    c.call('reports.reconcile', report(wrong));
    const [finding] = open();
    c.call('reports.makeTask', { findingId: finding?.id ?? 0 });
    expect(c.call('reports.reconcile', report(asRecorded()))).toMatchObject({ closed: 1, tasksEnded: 1 });
    const commandSeq = c.call('journal.list', {}).entries[0]?.commandSeq ?? 0;
    expect(c.refusal('journal.undo', { commandSeq })).toMatchObject({
      code: 'STEP_REFUSED',
      message: expect.stringMatching(
        /^This report cannot be undone: it ended a task, which stays ended\. Load /,
      ),
    });
    c.call('reports.reconcile', report(wrong));
    const [again] = open();
    expect(again).toMatchObject({ kind: 'only there', task: null });
    c.call('reports.makeTask', { findingId: again?.id ?? 0 });
    expect(open()[0]?.task).toMatchObject({ standing: 'open' });
  });

  it('that is not complete tells nothing by what is missing', () => {
    const [header = '', one = ''] = asRecorded();
    expect(kinds(c.call('reports.preview', report([header, one])))).toContain('only here');
    expect(c.call('reports.preview', report([header, one], { complete: false })).differences).toEqual([]);
    c.call('reports.reconcile', report([header, one], { on: '2026-11-20' }));
    const missing = open().length;
    expect(missing).toBeGreaterThan(0);
    expect(c.call('reports.reconcile', report([header, one], { complete: false }))).toMatchObject({
      closed: 0,
    });
    expect(open().length).toBe(missing);
  });

  it('tells of what is retired and still sold', () => {
    const gone = c
      .call('works.list', { search: 'Lantern Keeper' })
      .works.flatMap(({ id }) => c.call('works.get', { id }).editions)
      .flatMap(({ formats }) => formats);
    const isbn = gone[0]?.isbn13 ?? '';
    const told = c.call('reports.preview', report([...asRecorded(), `${isbn},,,,active`]));
    expect(told.differences).toMatchObject([{ kind: 'still selling', workId: expect.any(Number) }]);
  });

  it('names damaged cells, offers what they may have meant, and keeps nothing half', () => {
    const [header = '', ...rows] = asRecorded();
    const broken = [header, ...rows, '9798969999015.0,,,,active', ',Total,99.00,,', `"",,,,perhaps`];
    const input = report(broken);
    const told = c.call('reports.preview', input);
    expect(told.unread).toBe(3);
    const row = rows.length + 2;
    expect(told.problems.map((problem) => [problem.row, problem.header, problem.repair])).toEqual([
      [row, 'ISBN', '979-8-969999-01-5'],
      [row + 1, '', null],
      [row + 2, 'Status', null],
    ]);
    expect(c.refusal('reports.reconcile', input)).toMatchObject({
      code: 'BAD_INPUT',
      message: expect.stringContaining('Nothing was kept.'),
    });
    expect(c.call('reports.list', { channelId }).reports).toEqual([]);
    const mended = { ...input, repairs: [{ row, column: 0, text: '979-8-969999-01-5' }] };
    expect(c.call('reports.preview', mended).unread).toBe(2);
    c.call('reports.reconcile', { ...input, goodRowsOnly: true });
    expect(c.call('reports.list', { channelId }).reports).toMatchObject([{ rows: rows.length }]);
  });

  it('is refused without numbers, of a day to come, and before one that is kept', () => {
    const lines = asRecorded();
    const input = report(lines);
    const columns = input.columns.map((column) => ({ ...column, field: null }));
    expect(c.refusal('reports.preview', { ...input, columns }).message).toContain('Say which column holds');
    expect(c.refusal('reports.preview', { ...input, on: '2026-11-26' })).toMatchObject({ field: 'on' });
    c.call('reports.reconcile', input);
    expect(c.refusal('reports.reconcile', { ...input, on: '2026-11-24' })).toMatchObject({
      code: 'STEP_REFUSED',
      field: 'on',
    });
    expect(c.refusal('reports.preview', report(['ISBN', ''])).message).toContain('no row below');
  });

  it('goes with its channel where that has no listing', () => {
    channelId = c.call('channels.create', { name: 'Quayside Books' }).channelId;
    c.call('reports.reconcile', report(['ISBN', '979-8-969999-77-0']));
    expect(open().length).toBe(1);
    c.call('channels.remove', { id: channelId });
    expect(c.call('catalogue.check', {}).ok).toBe(true);
    expect(c.refusal('reports.list', { channelId })).toMatchObject({ code: 'NOT_FOUND' });
  });
});
