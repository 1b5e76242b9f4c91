import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { BulkAction } from '../../src/contract/bulk.ts';
import { formatTerms } from '../../src/contract/format-list.ts';
import { formatListQueries } from '../../src/queries/format-list.ts';
import { searchQueries } from '../../src/queries/search.ts';
import { openTestCatalogue, openTestFile, type TestCatalogue, type TestFile } from '../support/catalogue.ts';
import { growLarge, isbnOf } from '../support/large.ts';

describe('the list of formats', () => {
  let c: TestCatalogue;
  beforeEach(() => {
    c = openTestCatalogue('2026-11-25');
    c.call('catalogue.demo', {});
  });
  afterEach(() => c.close());
  const terms = (given: Partial<Parameters<typeof formatTerms.parse>[0] & object>) =>
    formatTerms.parse(given);
  const found = (
    given: object,
    sort: { by: 'title' | 'on sale' | 'standing'; down: boolean } = { by: 'title', down: false },
  ) => {
    const { ids } = c.call('formats.find', { terms: terms(given), sort });
    return c.call('formats.rows', { ids }).rows;
  };

  it('combines conditions, each of any of its values', () => {
    const all = found({});
    expect(c.call('formats.find', {})).toMatchObject({ all: all.length });
    const live = found({ standings: ['live'] });
    expect(live.length).toBeGreaterThan(0);
    expect(new Set(live.map((row) => row.standing))).toEqual(new Set(['live']));
    const livePaperbacks = found({ standings: ['live'], forms: ['BC'] });
    expect(livePaperbacks).toEqual(live.filter((row) => row.name.startsWith('Paperback')));
    const { channels } = c.call('channels.list', {});
    for (const { id, name } of channels)
      expect(found({ channelIds: [id] }).map((row) => row.id)).toEqual(
        all.filter((row) => row.listings.some((one) => one.channelName === name)).map((row) => row.id),
      );
    expect(found({ text: 'quayle' }).map((row) => row.edition)).toContain('Knots for Small Hands');
    expect(found({ languages: ['fre'] })).toEqual([]);
    const dated = found({ from: '2019-01-01', to: '2019-12-31' });
    expect(dated).toEqual(all.filter((row) => row.onSaleDate?.startsWith('2019')));
    const audited = new Set(c.call('audit.run', {}).findings.flatMap((finding) => finding.formatId ?? []));
    const ids = new Set(found({ withFindings: true }).map((row) => row.id));
    expect([...audited].filter((id) => !ids.has(id))).toEqual([]);
  });

  it('sorts both ways, what is not set last', () => {
    for (const down of [false, true]) {
      const days = found({}, { by: 'on sale', down }).map((row) => row.onSaleDate);
      const set = days.filter((day) => day !== null);
      expect(days.slice(0, set.length)).toEqual(down ? set.toSorted().reverse() : set.toSorted());
    }
  });

  it('keeps filters under a name, in the file and in the journal', () => {
    const { id } = c.call('filters.save', {
      name: 'Live in print',
      terms: terms({ standings: ['live'], forms: ['BC'] }),
    });
    expect(c.call('filters.save', { name: 'LIVE in print', terms: terms({ standings: ['live'] }) }).id).toBe(
      id,
    );
    expect(c.call('filters.list', {}).filters).toMatchObject([
      { id, name: 'LIVE in print', terms: { standings: ['live'], forms: [] } },
    ]);
    c.call('filters.remove', { id });
    expect(c.call('filters.list', {}).filters).toEqual([]);
    expect(c.refusal('filters.remove', { id }).code).toBe('NOT_FOUND');
    expect(c.call('catalogue.check', {}).ok).toBe(true);
  });

  it('previews exactly what it then does, and leaves nothing of a preview behind', () => {
    const ids = found({}).map((row) => row.id);
    const head = c.call('catalogue.info', {}).journalEntries;
    const channelId = c.call('channels.list', {}).channels[0]?.id ?? 0;
    const actions: BulkAction[] = [
      { what: 'set price', price: { currency: 'SEK', amountMinor: 12_900, tax: 'including' } },
      { what: 'add keywords', keywords: ['tides', 'harbours'] },
      { what: 'add subject', subject: { scheme: 'own', code: 'sea', heading: '' } },
      { what: 'list on channel', channelId },
      { what: 'move one step', channelId },
    ];
    for (const action of actions) {
      const before = c.call('catalogue.info', {}).journalEntries;
      const preview = c.call('formats.bulk', { formatIds: ids, action, mode: 'preview' });
      expect(c.call('catalogue.info', {}).journalEntries).toBe(before);
      expect(preview.done + preview.unchanged + preview.refused).toBe(ids.length);
      if (preview.refused > 0) {
        expect(c.refusal('formats.bulk', { formatIds: ids, action, mode: 'all' }).code).toBe('NOT_READY');
        expect(c.call('catalogue.info', {}).journalEntries).toBe(before);
      }
      expect(c.call('formats.bulk', { formatIds: ids, action, mode: 'good ones' })).toEqual(preview);
      if (action.what !== 'move one step')
        expect(c.call('formats.bulk', { formatIds: ids, action, mode: 'preview' }).done).toBe(0);
    }
    expect(c.call('catalogue.info', {}).journalEntries).toBeGreaterThan(head);
    expect(c.call('catalogue.check', {}).ok).toBe(true);
  });

  it('refuses what an ended format does not take, by name and reason', () => {
    const retired = found({ standings: ['retired'] }).map((row) => row.id);
    const price = { currency: 'SEK', amountMinor: 100, tax: 'including' } as const;
    const { refused, refusals } = c.call('formats.bulk', {
      formatIds: retired,
      action: { what: 'set price', price },
      mode: 'preview',
    });
    expect(refused).toBe(retired.length);
    expect(refusals[0]?.name).toContain('Lantern Keeper');
    expect(refusals[0]?.sentence.length).toBeGreaterThan(20);
  });
});

// Twenty thousand for every run; the figures for more: FORMATS=100000 npx vitest run tests/commands/format-list.test.ts
const FORMATS = Number(process.env.FORMATS ?? 20_000);

describe(`with ${FORMATS.toLocaleString('en')} formats`, () => {
  let t: TestFile;
  beforeAll(() => {
    t = openTestFile();
    growLarge(t.file.file, FORMATS);
  }, 240_000);
  afterAll(() => t.close());

  /** The shortest of three, in milliseconds: other work on the machine only adds. */
  function took(work: () => unknown): number {
    return Math.min(
      ...[1, 2, 3].map(() => {
        const start = performance.now();
        work();
        return performance.now() - start;
      }),
    );
  }
  const find = (text: string) =>
    t.query((context) => searchQueries['search.find'](context, { text, count: 6 }));

  it('finds by words, people and digits while one types', () => {
    const times: Record<string, number> = {};
    for (const text of [
      's',
      'sa',
      'salt',
      'the',
      'almanac lantern',
      'person 77',
      'salt 471',
      isbnOf(17_001),
      isbnOf(17_001).slice(-4),
      '17001',
    ])
      times[text] = took(() => find(text));
    console.log(
      `search with ${FORMATS} formats, ms:`,
      JSON.stringify(times, (_, ms) => (typeof ms === 'number' ? Math.round(ms * 10) / 10 : ms)),
    );
    expect(find(isbnOf(17_001)).numbers).toHaveLength(1);
    expect(find('salt').works).toHaveLength(6);
    expect(Math.max(...Object.values(times))).toBeLessThan(400);
  });

  it('puts all of them in order, and reads any page of them at once', () => {
    const terms = formatTerms.parse({});
    const sorted = (by: 'title' | 'standing' | 'price') =>
      t.query((context) => formatListQueries['formats.find'](context, { terms, sort: { by, down: true } }));
    const times = {
      title: took(() => sorted('title')),
      standing: took(() => sorted('standing')),
      price: took(() => sorted('price')),
    };
    const { ids } = sorted('title');
    expect(ids).toHaveLength(FORMATS);
    const page = took(() =>
      t.query((context) =>
        formatListQueries['formats.rows'](context, { ids: ids.slice(FORMATS / 2, FORMATS / 2 + 100) }),
      ),
    );
    console.log(
      `table of ${FORMATS} formats, ms:`,
      JSON.stringify({ ...times, page }, (_, ms) => (typeof ms === 'number' ? Math.round(ms) : ms)),
    );
    expect(page).toBeLessThan(200);
    expect(Math.max(...Object.values(times))).toBeLessThan(5_000);
  });
});
