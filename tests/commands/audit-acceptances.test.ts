import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
let editionId: number;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-11-25');
  catalogue.call('settings.update', { imprint: 'Halyard & Fen' });
  ({ editionId } = catalogue.call('works.create', { title: 'Fen Light', imprint: 'Halyard' }));
});
afterEach(() => catalogue.close());

const run = (asOf?: string) => catalogue.call('audit.run', { asOf });
const fingerprint = () => run().findings[0]?.fingerprint ?? '';
const accept = (reviewOn = '2027-05-25') =>
  catalogue.call('audit.accept', {
    fingerprint: fingerprint(),
    reason: 'It was sold under that name.',
    reviewOn,
  });

describe('an accepted finding', () => {
  test('rests, is counted apart and says why', () => {
    expect(run().findings.map((finding) => finding.rule)).toEqual(['imprint-differs']);
    const { id } = accept();
    expect(run()).toMatchObject({
      findings: [],
      accepted: [
        {
          rule: 'imprint-differs',
          accepted: { id, reason: 'It was sold under that name.', on: '2026-11-25', reviewOn: '2027-05-25' },
        },
      ],
    });
    expect(catalogue.call('audit.count', {})).toEqual({
      'must fix': 0,
      'should fix': 0,
      note: 0,
      accepted: 1,
    });
  });

  test('comes back on its day of review, and can be accepted again', () => {
    accept();
    catalogue.setToday('2027-05-24');
    expect(run().findings).toEqual([]);
    catalogue.setToday('2027-05-25');
    expect(run()).toMatchObject({ findings: [{ rule: 'imprint-differs' }], accepted: [] });
    accept('2028-05-25');
    expect(run()).toMatchObject({ findings: [], accepted: [{ rule: 'imprint-differs' }] });
  });

  test('comes back when its facts change, and rests again when they change back', () => {
    accept();
    catalogue.call('editions.update', { id: editionId, imprint: 'Fen' });
    expect(run()).toMatchObject({ findings: [{ rule: 'imprint-differs' }], accepted: [] });
    catalogue.call('editions.update', { id: editionId, imprint: 'Halyard' });
    expect(run().findings).toEqual([]);
    catalogue.call('editions.update', { id: editionId, description: 'Told by lamplight.' });
    expect(run().findings).toEqual([]);
  });

  test('comes back when what it is about moves on', () => {
    const formatId = catalogue.call('formats.create', { editionId, form: 'BC', pages: 239 }).formatId;
    catalogue.call('blocks.add', { prefix: '979-8-969999' });
    catalogue.call('numbers.assign', { formatId });
    const { channelId } = catalogue.call('channels.create', { name: 'Printworks Direct' });
    const { listingId } = catalogue.call('listings.create', { formatId, channelId });
    const odd = () => run().findings.find((finding) => finding.rule === 'odd-page-count');
    catalogue.call('audit.accept', {
      fingerprint: odd()?.fingerprint ?? '',
      reason: 'The printer adds the blank page.',
      reviewOn: '2027-05-25',
    });
    expect(odd()).toBeUndefined();
    catalogue.call('listings.move', { id: listingId, to: 'sent' });
    expect(odd()?.message).toContain('239 pages');
  });

  test('is open again when that is asked for, once', () => {
    const { id } = accept();
    catalogue.call('audit.reopen', { id });
    expect(run()).toMatchObject({ findings: [{ rule: 'imprint-differs' }], accepted: [] });
    expect(catalogue.refusal('audit.reopen', { id }).code).toBe('STEP_REFUSED');
    expect(catalogue.refusal('audit.reopen', { id: 99 }).code).toBe('NOT_FOUND');
  });

  test('was not accepted before the day on which it was', () => {
    catalogue.call('formats.create', { editionId, form: 'AJ', formDetail: 'A103' });
    catalogue.setToday('2026-12-01');
    accept();
    expect(run('2026-11-30').findings.map((finding) => finding.rule)).toEqual(['imprint-differs']);
    expect(run('2026-12-01').findings).toEqual([]);
  });

  test('is journalled with its work, and the acceptance can be undone', () => {
    accept();
    const [entry] = catalogue.call('journal.list', {}).entries;
    expect(entry).toMatchObject({ entity: 'acceptance', operation: 'audit.accept', workId: 1 });
    catalogue.call('journal.undo', { commandSeq: entry?.commandSeq ?? 0 });
    expect(run().findings).toHaveLength(1);
  });

  test('does not stand in the way of removing what it is about', () => {
    accept();
    catalogue.call('works.remove', { id: 1 });
    expect(run()).toMatchObject({ findings: [], accepted: [] });
  });
});

test('what is not found, and a day that does not lie ahead, are refused', () => {
  const reason = 'Left as it is.';
  expect(
    catalogue.refusal('audit.accept', { fingerprint: 'unknown', reason, reviewOn: '2027-05-25' }).code,
  ).toBe('STEP_REFUSED');
  expect(
    catalogue.refusal('audit.accept', { fingerprint: fingerprint(), reason, reviewOn: '2026-11-25' }),
  ).toMatchObject({ code: 'BAD_INPUT', field: 'reviewOn' });
  expect(
    catalogue.refusal('audit.accept', { fingerprint: fingerprint(), reason: ' ', reviewOn: '2027-05-25' }),
  ).toMatchObject({ code: 'BAD_INPUT', field: 'reason' });
});
