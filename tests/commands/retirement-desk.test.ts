import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

const TODAY = '2026-03-02';
let catalogue: TestCatalogue;
let first: number;
let second: number;
let old: { paper: number; shop: number; paperFormat: number };

beforeEach(() => {
  catalogue = openTestCatalogue(TODAY);
  const { call } = catalogue;
  call('blocks.add', { prefix: '979-8-969999' });
  first = call('works.create', { title: 'The Salt Almanac', number: 1 }).editionId;
  const paperFormat = call('formats.create', { editionId: first, form: 'BC' }).formatId;
  call('numbers.assign', { formatId: paperFormat });
  const print = call('channels.create', { name: 'Printworks Direct', removalDays: 5 }).channelId;
  const shop = call('channels.create', { name: 'Nettlewick Bookshop', removalDays: 2 }).channelId;
  old = {
    paperFormat,
    paper: call('listings.create', { formatId: paperFormat, channelId: print, returns: 'Y' }).listingId,
    shop: call('listings.create', { formatId: paperFormat, channelId: shop, returns: 'N' }).listingId,
  };
  for (const id of [old.paper, old.shop]) call('listings.move', { id, to: 'selling', on: '2024-05-02' });
  second = call('editions.prepareNext', { editionId: first, carry: [paperFormat] }).editionId;
});
afterEach(() => catalogue.close());

const desk = () => catalogue.call('retirement.desk', { editionId: first });
const row = (id: number) => {
  const found = desk().listings.find((one) => one.listingId === id);
  if (!found) throw new Error(`No row ${id}.`);
  return found;
};
const sellNew = () => {
  const formats = catalogue.call('works.get', { id: 1 }).editions.find((one) => one.id === second)?.formats;
  for (const listing of formats?.flatMap((format) => format.listings) ?? [])
    catalogue.call('listings.move', { id: listing.id, to: 'selling' });
};

describe('the retirement desk', () => {
  it('waits for the new edition, unless told otherwise', () => {
    expect(desk()).toMatchObject({
      label: 'The Salt Almanac, 1st edition',
      replacement: { label: 'The Salt Almanac, 2nd edition', sells: false },
      planned: false,
    });
    expect(row(old.paper)).toMatchObject({ next: 'wait for sale', standing: 'selling' });
    expect(catalogue.refusal('retirement.ask', { listingId: old.paper })).toMatchObject({
      code: 'NOT_READY',
      field: 'beforeReplacement',
    });
    catalogue.call('retirement.ask', { listingId: old.shop, beforeReplacement: true });
    expect(row(old.shop).standing).toBe('leaving');
    sellNew();
    expect(row(old.paper)).toMatchObject({ next: 'ask', replacement: '979-8-969999-01-5' });
    catalogue.call('retirement.ask', { listingId: old.paper });
  });

  it('follows a listing from asking through promise and chase to gone, with its tasks', () => {
    sellNew();
    catalogue.call('plans.retirement', { editionId: first });
    catalogue.call('retirement.ask', { listingId: old.paper, promisedBy: '2026-03-05' });
    expect(row(old.paper)).toMatchObject({
      next: 'confirm gone',
      askedOn: TODAY,
      promisedBy: '2026-03-05',
      chasedOn: null,
    });
    const due = (kind: string) =>
      catalogue
        .call('tasks.list', {})
        .tasks.find((task) => task.kind === kind && task.listingId === old.paper)?.dueOn;
    expect(due('ask-removal')).toBeUndefined();
    expect(due('chase')).toBe('2026-03-06');
    expect((due('confirm-gone') ?? '') >= '2026-03-06').toBe(true);
    expect(catalogue.call('listings.requestText', { id: old.paper, kind: 'chase' }).text).toContain(
      '2026-03-05',
    );
    catalogue.setToday('2026-03-09');
    expect(row(old.paper).next).toBe('chase');
    catalogue.call('retirement.chase', {
      listingId: old.paper,
      note: 'by telephone',
      promisedBy: '2026-03-12',
    });
    expect(row(old.paper)).toMatchObject({
      next: 'confirm gone',
      promisedBy: '2026-03-12',
      chasedOn: '2026-03-09',
      chases: 1,
    });
    expect(due('chase')).toBe('2026-03-13');
    catalogue.setToday('2026-03-12');
    catalogue.call('retirement.gone', { listingId: old.paper, evidence: 'page answers not found' });
    expect(row(old.paper)).toMatchObject({
      next: 'nothing',
      standing: 'gone',
      goneOn: '2026-03-12',
      evidence: 'page answers not found',
    });
    expect(due('chase')).toBeUndefined();
    expect(due('confirm-gone')).toBeUndefined();
  });

  it('refuses what does not fit where a listing stands, and days that do not', () => {
    const fields = { listingId: old.paper };
    expect(catalogue.refusal('retirement.promise', { ...fields, promisedBy: TODAY }).code).toBe(
      'STEP_REFUSED',
    );
    expect(catalogue.refusal('retirement.chase', fields).code).toBe('STEP_REFUSED');
    expect(catalogue.refusal('retirement.gone', { ...fields, evidence: 'x' }).message).toContain(
      'asked to stop',
    );
    expect(catalogue.refusal('retirement.gone', { ...fields, evidence: ' ' }).code).toBe('BAD_INPUT');
    sellNew();
    catalogue.call('retirement.ask', fields);
    expect(catalogue.refusal('retirement.ask', fields).code).toBe('STEP_REFUSED');
    expect(catalogue.refusal('retirement.promise', { ...fields, promisedBy: '2026-03-01' }).field).toBe(
      'promisedBy',
    );
    expect(catalogue.refusal('retirement.chase', { ...fields, on: '2026-03-01' }).field).toBe('on');
    expect(catalogue.refusal('retirement.chase', { ...fields, on: '2026-03-03' }).field).toBe('on');
  });

  it('keeps returns, counts and the agency’s record open after the end', () => {
    sellNew();
    catalogue.call('plans.retirement', { editionId: first });
    expect(catalogue.refusal('retirement.outOfPrint', { editionId: first }).message).toContain(
      'still sells on',
    );
    for (const listingId of [old.paper, old.shop]) {
      catalogue.call('retirement.ask', { listingId });
      catalogue.call('retirement.gone', { listingId, evidence: 'looked' });
    }
    expect(
      catalogue.refusal('retirement.returns', { listingId: old.shop, until: '2026-06-01' }).message,
    ).toContain('not recorded as returnable');
    const { taskId } = catalogue.call('retirement.returns', { listingId: old.paper, until: '2026-06-01' });
    expect(catalogue.call('retirement.returns', { listingId: old.paper, until: '2026-07-01' }).taskId).toBe(
      taskId,
    );
    expect(catalogue.call('tasks.list', {}).tasks.find((task) => task.id === taskId)?.dueOn).toBe(
      '2026-07-01',
    );
    expect(row(old.paper)).toMatchObject({ returnsUntil: '2026-07-01', returnsOpen: true });
    const count = { formatId: old.paperFormat, place: 'Cellar' };
    catalogue.call('retirement.count', { ...count, copies: 40 });
    catalogue.call('retirement.count', { ...count, copies: 38, fate: 'give away' });
    expect(desk().stock).toMatchObject([
      { place: 'Cellar', copies: 38, fate: 'give away', formatName: 'Paperback' },
    ]);
    expect(catalogue.call('retirement.outOfPrint', { editionId: first, note: 'by form' }).formatIds).toEqual([
      old.paperFormat,
    ]);
    expect(desk().numbers).toMatchObject([{ outOfPrintOn: TODAY, hyphenated: '979-8-969999-00-8' }]);
    expect(desk().checklist.find((task) => task.title.includes('out of print'))?.standing).toBe('done');
    expect(catalogue.refusal('retirement.outOfPrint', { editionId: first }).code).toBe('ALREADY_EXISTS');
  });

  it('tells on the old number and format what took its place', () => {
    const number = catalogue.call('numbers.list', { blockId: 1, count: 2 }).rows;
    expect(number[0]?.replacedBy).toMatchObject({
      hyphenated: '979-8-969999-01-5',
      label: 'The Salt Almanac, 2nd edition · Paperback',
    });
    expect(number[1]?.replacedBy).toBeNull();
    const edition = catalogue.call('works.get', { id: 1 }).editions.find((one) => one.id === first);
    expect(edition?.formats[0]?.replacedBy?.hyphenated).toBe('979-8-969999-01-5');
  });
});

describe('an edition linked afterwards to the one it replaces', () => {
  it('is refused where either has such a link, in another work, and in a ring', () => {
    const third = catalogue.call('editions.create', {
      workId: 1,
      title: 'The Salt Almanac',
      number: 3,
    }).editionId;
    const { editionId: other } = catalogue.call('works.create', { title: 'Fen Light' });
    const refused = (id: number, replacesId: number) =>
      catalogue.refusal('editions.link', { id, replacesId }).code;
    expect(refused(third, first)).toBe('ALREADY_EXISTS');
    expect(refused(second, third)).toBe('ALREADY_EXISTS');
    expect(refused(third, other)).toBe('STEP_REFUSED');
    expect(refused(third, third)).toBe('STEP_REFUSED');
    expect(refused(first, second)).toBe('STEP_REFUSED');
    catalogue.call('editions.link', { id: third, replacesId: second });
    expect(refused(first, third)).toBe('STEP_REFUSED');
    const editions = catalogue.call('works.get', { id: 1 }).editions;
    expect(editions.find((one) => one.id === second)?.replacedById).toBe(third);
  });
});
