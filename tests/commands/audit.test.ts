import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { ListingStanding } from '../../src/contract/terms.ts';
import { AUDIT_RULES } from '../../src/rules/audit/index.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-11-25');
});
afterEach(() => catalogue.close());

const audit = (asOf?: string) => catalogue.call('audit.run', { asOf });
const found = (asOf?: string) => audit(asOf).findings.map((finding) => finding.rule);

/** Two paperback editions of one work: the first on sale since 2019, the second made from it. */
function twoEditions(): {
  channelId: number;
  first: number;
  second: number;
  secondEdition: number;
  firstEdition: number;
} {
  const { call } = catalogue;
  call('settings.update', { imprint: 'Halyard & Fen', catalogueName: 'Halyard & Fen' });
  const block = call('blocks.add', { prefix: '979-8-969999', boughtOn: '2019-01-10' });
  const { channelId } = call('channels.create', { name: 'Printworks Direct', kind: 'print' });
  const { editionId } = call('works.create', {
    title: 'The Salt Almanac',
    number: 1,
    contributors: [{ role: 'A01', name: 'Maren Oskarsdal' }],
    description: 'A year on the flats.',
    keywords: ['salt', 'tides'],
    subjects: [{ scheme: 'own', code: 'novel', heading: '' }],
  });
  const { formatId } = call('formats.create', {
    editionId,
    form: 'BC',
    trimWidthUm: 129_000,
    trimHeightUm: 198_000,
    pages: 240,
    onSaleDate: '2019-05-02',
    prices: [{ amountMinor: 1_995, currency: 'EUR', tax: 'including' }],
  });
  call('numbers.assign', { formatId, blockId: block.id, on: '2019-02-01' });
  const { listingId } = call('listings.create', { formatId, channelId, discountBp: 4_000 });
  const days: [ListingStanding, string][] = [
    ['sent', '2019-04-01'],
    ['proof', '2019-04-08'],
    ['cleared', '2019-04-15'],
    ['selling', '2019-05-02'],
  ];
  for (const [to, on] of days) call('listings.move', { id: listingId, to, on });
  const next = call('editions.prepareNext', { editionId, carry: [formatId] });
  const second = next.formatIds[0] ?? 0;
  return { channelId, first: formatId, second, firstEdition: editionId, secondEdition: next.editionId };
}

function listingOf(formatId: number): number {
  const { works } = catalogue.call('works.list', {});
  for (const { id } of works)
    for (const edition of catalogue.call('works.get', { id }).editions)
      for (const format of edition.formats) if (format.id === formatId) return format.listings[0]?.id ?? 0;
  return 0;
}

describe('audit.run', () => {
  test('an empty catalogue has nothing to find', () => {
    expect(audit()).toMatchObject({
      findings: [],
      formats: [],
      demo: false,
      numbers: { free: 0, reserved: 0, assigned: 0, spent: 0 },
      rules: AUDIT_RULES.length,
      fileName: 'test.ledger',
      asOf: '2026-11-25',
      today: '2026-11-25',
    });
  });

  test('the demo press has no finding, today or on any of its days, and says that it is a demo', () => {
    catalogue.call('catalogue.demo', {});
    expect(audit()).toMatchObject({ findings: [], demo: true });
    for (const day of ['2016-01-01', '2019-05-02', '2024-01-01']) expect(audit(day).findings).toEqual([]);
    expect(catalogue.call('audit.text', { as: 'text' }).text).toContain('must never be printed');
  });

  test('tells what is where, with numbers counted', () => {
    const { first, second } = twoEditions();
    expect(audit()).toMatchObject({
      catalogueName: 'Halyard & Fen',
      findings: [],
      numbers: { free: 98, reserved: 0, assigned: 2, spent: 0 },
      formats: [
        {
          formatId: first,
          editionLabel: 'The Salt Almanac, 1st edition',
          name: 'Paperback',
          standing: 'live',
          hyphenated: '979-8-969999-00-8',
          channels: ['Printworks Direct: selling since 2019-05-02'],
        },
        { formatId: second, standing: 'planned', channels: ['Printworks Direct: not sent'] },
      ],
    });
  });

  test('two editions side by side are found from the day on which the second sells', () => {
    catalogue.setToday('2026-11-16');
    const { first, second } = twoEditions();
    catalogue.call('formats.update', { id: second, onSaleDate: '2026-11-20' });
    catalogue.setToday('2026-11-25');
    const id = listingOf(second);
    for (const to of ['sent', 'proof', 'cleared'] as const)
      catalogue.call('listings.move', { id, to, on: '2026-11-19' });
    catalogue.call('listings.move', { id, to: 'selling', on: '2026-11-20' });
    const { findings } = audit();
    expect(findings).toMatchObject([
      { rule: 'editions-side-by-side', severity: 'must fix', formatId: first, listingId: listingOf(first) },
    ]);
    expect(found('2026-11-20')).toEqual(['editions-side-by-side']);
    expect(found('2026-11-18')).not.toContain('editions-side-by-side');
    expect(audit('2019-04-10').formats).toMatchObject([
      { standing: 'proofing', channels: ['Printworks Direct: proof since 2019-04-08'] },
    ]);
  });

  test('a removal that the channel does not carry out is found after the days set in Settings', () => {
    const { first } = twoEditions();
    catalogue.call('listings.move', { id: listingOf(first), to: 'leaving', on: '2026-11-10' });
    expect(found()).toContain('removal-overdue');
    catalogue.call('settings.update', { removalOverdueDays: 15 });
    expect(found()).not.toContain('removal-overdue');
    expect(audit().formats[0]?.channels).toEqual(['Printworks Direct: asked to stop selling on 2026-11-10']);
    catalogue.call('listings.move', { id: listingOf(first), to: 'selling', on: '2026-11-12' });
    expect(audit().formats[0]?.channels).toEqual(['Printworks Direct: selling since 2019-05-02']);
  });

  test('a task that was open on a past day counts on that day', () => {
    const { firstEdition } = twoEditions();
    const works = catalogue.call('works.list', {}).works;
    const task = catalogue.call('tasks.create', {
      title: 'Ring the printer',
      dueOn: '2026-11-02',
      workId: works[0]?.id,
    });
    expect(firstEdition).toBeGreaterThan(0);
    catalogue.call('tasks.finish', { id: task.taskId, on: '2026-11-10' });
    expect(found()).not.toContain('task-overdue');
    expect(found('2026-11-06')).toContain('task-overdue');
    expect(found('2026-11-01')).not.toContain('task-overdue');
  });

  test('the head of the journal changes with the catalogue', () => {
    const before = audit().journalHead;
    catalogue.call('settings.update', { publisher: 'Halyard & Fen' });
    expect(audit().journalHead).not.toBe(before);
    expect(audit('2026-01-01').journalHead).toBe(audit().journalHead);
  });

  test('a day that is still to come is refused', () => {
    expect(catalogue.refusal('audit.run', { asOf: '2026-11-26' }).code).toBe('BAD_INPUT');
  });
});

describe('a file changed behind the program', () => {
  function damage(sql: string): void {
    const raw = new Database(catalogue.file);
    const triggers = raw
      .prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'")
      .pluck()
      .all() as string[];
    for (const name of triggers) raw.exec(`DROP TRIGGER "${name}"`);
    raw.pragma('ignore_check_constraints = ON');
    raw.exec(sql);
    raw.close();
  }

  test('a listing that was never cleared, a wrong check digit and a number in use after its cancellation are found', () => {
    const { second } = twoEditions();
    damage('UPDATE listing SET first_cleared_on = NULL');
    expect(found()).toContain('selling-never-cleared');
    damage("UPDATE number SET isbn13 = '9798969999009' WHERE isbn13 = '9798969999008'");
    expect(found()).toContain('number-check-digit');
    damage(`UPDATE format SET cancelled_on = '2026-11-01', cancel_reason = 'given up' WHERE id = ${second}`);
    expect(found()).toContain('cancelled-number-not-spent');
  });
});

test('audit.rules names every rule with its source', () => {
  const { rules } = catalogue.call('audit.rules', {});
  expect(rules).toHaveLength(AUDIT_RULES.length);
  expect(rules.find((rule) => rule.id === 'number-used-twice')).toMatchObject({
    severity: 'must fix',
    source: "ISBN Users' Manual, 7th edition, section 7.8 (a number is never used again)",
  });
});

test('audit.text names the file and gives either form', () => {
  twoEditions();
  const csv = catalogue.call('audit.text', { as: 'csv', asOf: '2020-01-01' });
  expect(csv.fileName).toBe('test-audit-2020-01-01.csv');
  expect(csv.text).toMatch(/^record,as_of,/);
  expect(csv.text).toContain(
    '\r\nformat,2020-01-01,"The Salt Almanac, 1st edition",Paperback,979-8-969999-00-8,live,',
  );
  const text = catalogue.call('audit.text', { as: 'text' });
  expect(text.fileName).toBe('test-audit-2026-11-25.txt');
  expect(text.text).toContain(`Journal head    ${audit().journalHead}`);
});
