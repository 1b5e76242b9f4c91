import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

// Each finding that one press can mend is made to appear in a real catalogue; its own operation is carried out with
// its own input, and the finding is gone.

const TODAY = '2026-11-25';
let catalogue: TestCatalogue;
let channelId: number;
beforeEach(() => {
  catalogue = openTestCatalogue(TODAY);
  const { call } = catalogue;
  call('settings.update', { imprint: 'Halyard & Fen', catalogueName: 'Halyard & Fen' });
  call('blocks.add', { prefix: '979-8-969999', boughtOn: '2019-01-10' });
  channelId = call('channels.create', { name: 'Printworks Direct', kind: 'print' }).channelId;
});
afterEach(() => catalogue.close());

function findingsOf(rule: string) {
  return catalogue.call('audit.run', {}).findings.filter((finding) => finding.rule === rule);
}

function pressOn(rule: string): void {
  const [found, ...more] = findingsOf(rule);
  expect(more).toEqual([]);
  expect(found?.mending).not.toBeNull();
  if (!found?.mending) return;
  expect(found.mending.does).toMatch(/^[A-Z].*\.$/);
  catalogue.call(found.mending.operation, found.mending.input);
  expect(findingsOf(rule)).toEqual([]);
}

const edition = (fields: object = {}) =>
  catalogue.call('works.create', {
    title: 'The Salt Almanac',
    contributors: [{ role: 'A01', name: 'Maren Oskarsdal' }],
    ...fields,
  });
const paperback = (editionId: number, fields: object = {}) =>
  catalogue.call('formats.create', {
    editionId,
    form: 'BC',
    prices: [{ currency: 'EUR', amountMinor: 1995 }],
    ...fields,
  }).formatId;

/** A paperback with a number and a listing, moved by the given steps. */
function listed(editionId: number, steps: readonly string[], fields: object = {}) {
  const formatId = paperback(editionId, fields);
  catalogue.call('numbers.assign', { formatId });
  const { listingId } = catalogue.call('listings.create', { formatId, channelId });
  for (const to of steps) catalogue.call('listings.move', { id: listingId, to: to as 'sent' });
  return { formatId, listingId };
}
const SELLING = ['sent', 'proof', 'cleared', 'selling'];

describe('one press mends', () => {
  test('a format that is to be released and has no number', () => {
    const { editionId } = edition();
    const { formatId } = listed(editionId, []);
    catalogue.call('plans.release', { editionId, day: '2027-03-01' });
    paperback(editionId, { largePrint: true });
    expect(formatId).toBeGreaterThan(0);
    pressOn('release-planned-without-number');
    expect(catalogue.call('catalogue.status', {}).numbers.assigned).toBe(2);
  });

  test('a retirement that is not planned though the next edition is', () => {
    const { editionId } = edition({ number: 1 });
    const { formatId } = listed(editionId, SELLING);
    const next = catalogue.call('editions.prepareNext', { editionId, carry: [formatId] });
    catalogue.call('plans.release', { editionId: next.editionId, day: '2027-03-01' });
    pressOn('retirement-not-planned');
    const { editions } = catalogue.call('works.get', { id: 1 });
    expect(editions.find((one) => one.id === editionId)?.plans[0]).toMatchObject({
      kind: 'retirement',
      day: '2027-03-01',
    });
  });

  test('two editions on sale side by side', () => {
    const { editionId } = edition({ number: 1 });
    const { formatId } = listed(editionId, SELLING);
    const next = catalogue.call('editions.prepareNext', { editionId, carry: [formatId] });
    const id =
      catalogue
        .call('works.get', { id: 1 })
        .editions.find((one) => one.id === next.editionId)
        ?.formats[0]?.listings.at(0)?.id ?? 0;
    catalogue.call('listings.move', { id, to: 'selling' });
    const [found] = findingsOf('editions-side-by-side');
    expect(found?.mending?.operation).toBe('plans.retirement');
    if (found?.mending) catalogue.call(found.mending.operation, found.mending.input);
    // It still sells until the channel was asked, but nothing is left for one press.
    expect(findingsOf('editions-side-by-side')[0]?.mending).toBeNull();
  });

  test('a listing that was never sent though the format is live', () => {
    const { editionId } = edition();
    const { formatId } = listed(editionId, SELLING);
    const other = catalogue.call('channels.create', { name: 'Broadside Wholesale' }).channelId;
    catalogue.call('listings.create', { formatId, channelId: other });
    pressOn('live-listing-never-sent');
  });

  test('tasks whose day has passed, and one about something that ended', () => {
    catalogue.setToday('2026-11-02');
    const late = catalogue.call('tasks.create', { title: 'Book the studio', dueOn: '2026-11-09' });
    const waits = catalogue.call('tasks.create', { title: 'Ask the printer', dueOn: '2026-11-10' });
    catalogue.call('tasks.wait', { id: waits.taskId, waitingFor: 'the printer' });
    catalogue.setToday(TODAY);
    pressOn('task-overdue');
    pressOn('task-waits-too-long');
    expect(catalogue.call('tasks.list', {}).tasks.map(({ id, dueOn }) => [id, dueOn])).toEqual([
      [late.taskId, '2026-11-26'],
      [waits.taskId, '2026-12-02'],
    ]);
  });

  test('a number that was reserved long ago, not several at once', () => {
    catalogue.setToday('2025-01-06');
    catalogue.call('numbers.reserve', { reservedFor: 'a map' });
    catalogue.setToday(TODAY);
    pressOn('number-reserved-long');
    catalogue.setToday('2025-01-06');
    catalogue.call('numbers.reserve', { reservedFor: 'maps', count: 2 });
    catalogue.setToday(TODAY);
    expect(findingsOf('number-reserved-long')[0]?.mending).toBeNull();
  });

  test('dates that differ', () => {
    const { editionId } = edition();
    const { listingId, formatId } = listed(editionId, ['sent'], {
      onSaleDate: '2027-03-01',
      publicationDate: '2027-02-01',
    });
    catalogue.call('listings.update', { id: listingId, onSaleDate: '2027-04-01' });
    pressOn('sale-date-differs-on-channel');
    pressOn('sale-after-publication');
    expect(formatId).toBeGreaterThan(0);
  });

  test('the fields of an edition that was not sent yet', () => {
    const twice = { role: 'A01', name: 'Maren Oskarsdal' };
    const { workId, editionId } = edition({
      number: 1,
      imprint: 'Halyard',
      contributors: [twice, twice, { role: 'A12', name: 'Ilse Quayle' }],
    });
    const again = catalogue.call('editions.create', { workId, title: 'The Salt Almanac', number: 1 });
    paperback(editionId, { pages: 239 });
    pressOn('contributor-twice');
    pressOn('imprint-differs');
    pressOn('odd-page-count');
    pressOn('edition-number-twice');
    const { editions } = catalogue.call('works.get', { id: workId });
    expect(editions.find((one) => one.id === again.editionId)?.number).toBe(2);
    expect(editions.find((one) => one.id === editionId)?.contributors.map((one) => one.name)).toEqual([
      'Maren Oskarsdal',
      'Ilse Quayle',
    ]);
  });

  test('nothing of what is locked, and nothing on a past day', () => {
    const { editionId } = edition({ number: 1, imprint: 'Halyard' });
    listed(editionId, ['sent']);
    expect(findingsOf('imprint-differs')[0]?.mending).toBeNull();
    const past = catalogue.call('audit.run', { asOf: '2026-11-24' });
    expect(past.findings.every((finding) => finding.mending === null)).toBe(true);
  });
});
