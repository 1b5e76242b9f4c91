import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
let edition: number;
let format: number;
let channel: number;
let listing: number;

beforeEach(() => {
  catalogue = openTestCatalogue('2026-03-02');
  catalogue.call('settings.update', { publisher: 'Halyard & Fen' });
  catalogue.call('blocks.add', { prefix: '979-8-969999' });
  edition = catalogue.call('works.create', {
    title: 'The Salt Almanac',
    contributors: [
      { role: 'A01', name: 'Maren Oskarsdal' },
      { role: 'A23', name: 'Tobias Wrenfield' },
    ],
    description: 'A year on the salt marsh.',
    keywords: ['salt marsh', 'almanac'],
    subjects: [{ scheme: 'own', code: 'NOVEL', heading: 'Novels' }],
  }).editionId;
  format = catalogue.call('formats.create', {
    editionId: edition,
    form: 'BC',
    trimWidthUm: 129_000,
    trimHeightUm: 198_000,
    pages: 288,
    prices: [{ currency: 'GBP', amountMinor: 999 }],
  }).formatId;
  catalogue.call('numbers.assign', { formatId: format });
  channel = catalogue.call('channels.create', { name: 'Printworks Direct', kind: 'print' }).channelId;
  listing = catalogue.call('listings.create', { formatId: format, channelId: channel }).listingId;
});
afterEach(() => catalogue.close());

const sheet = () => catalogue.call('submissions.sheet', { listingId: listing });
const send = (on?: string) =>
  catalogue.call('listings.move', { id: listing, to: 'sent', ...(on === undefined ? {} : { on }) });

describe('the sheet of a listing', () => {
  it('holds every value in the usual order, with what is typed', () => {
    expect(sheet().items.map(({ label, value }) => [label, value])).toEqual([
      ['ISBN', '979-8-969999-00-8'],
      ['ISBN without hyphens', '9798969999008'],
      ['Title', 'The Salt Almanac'],
      ['Subtitle', ''],
      ['Series', ''],
      ['Volume in the series', ''],
      ['Edition number', ''],
      ['Edition statement', ''],
      ['Language', 'English'],
      ['Contributor 1 (author)', 'Maren Oskarsdal'],
      ['Contributor 2 (foreword)', 'Tobias Wrenfield'],
      ['Imprint', ''],
      ['Publisher', 'Halyard & Fen'],
      ['Product form', 'Paperback'],
      ['Large print', 'no'],
      ['Trim size', '129 × 198 mm'],
      ['Pages', '288'],
      ['Interior', ''],
      ['Cover', ''],
      ['Reading direction', 'left to right'],
      ['Description', 'A year on the salt marsh.'],
      ['Subject 1, the main one', 'Novels'],
      ['Keywords', 'salt marsh; almanac'],
      ['Audience', 'general'],
      ['Publication date', ''],
      ['On-sale date', ''],
      ['Price in GBP', '9.99'],
      ['Trade discount in percent', ''],
      ['Returns', ''],
    ]);
    expect(sheet().text).toContain('Contributor 2 (foreword): Tobias Wrenfield\n');
    expect(sheet().text).not.toContain('Subtitle');
  });

  it('asks for what the channel asks for, in its order', () => {
    catalogue.call('channels.update', { id: channel, sheetItems: ['title', 'isbn', 'prices'] });
    expect(sheet().items.map((one) => one.of)).toEqual(['title', 'isbn', 'isbn', 'prices']);
  });

  it('says before it is sent what would lock then, and after it what is locked', () => {
    catalogue.call('channels.update', { id: channel, locksMore: ['pages', 'description'] });
    const locks = () => Object.fromEntries(sheet().items.map((one) => [one.of, one.lock]));
    expect(locks()).toMatchObject({
      isbn: 'locks',
      title: 'locks',
      contributors: 'locks',
      form: 'locks',
      pages: 'locks',
      description: 'locks',
      keywords: 'open',
      prices: 'open',
      trimSize: 'open',
    });
    const { locked } = send();
    expect(locked).toEqual(expect.arrayContaining(['isbn', 'title', 'form', 'pages', 'description']));
    expect(locks()).toMatchObject({
      isbn: 'locked',
      title: 'locked',
      form: 'locked',
      pages: 'locked',
      description: 'locked',
      keywords: 'open',
    });
  });
});

describe('what was sent', () => {
  it('is kept whole when the listing is sent, by whatever way, and never for other steps', () => {
    catalogue.call('listings.move', { id: listing, to: 'selling', on: '2026-02-20', note: 'ticket 12' });
    const [sent, ...others] = sheet().submissions;
    expect(others).toEqual([]);
    expect(sent).toMatchObject({ on: '2026-02-20', takenOn: '2026-03-02', kind: 'sent', note: 'ticket 12' });
    expect(sent?.items.find((one) => one.of === 'title')?.value).toBe('The Salt Almanac');
    expect(sent?.items.find((one) => one.of === 'prices')?.is).toBe('GBP 999 including');
  });

  it('is told apart from what is recorded since, in the sheet and in the audit', () => {
    send('2026-02-20');
    expect(sheet().differences).toEqual([]);
    catalogue.call('editions.update', { id: edition, keywords: ['almanac', 'marsh'] });
    catalogue.call('formats.update', { id: format, prices: [{ currency: 'GBP', amountMinor: 1099 }] });
    expect(sheet().differences).toEqual([
      { of: 'keywords', label: 'Keywords', sent: 'salt marsh; almanac', now: 'almanac; marsh' },
      { of: 'prices', label: 'Prices', sent: 'GBP 9.99', now: 'GBP 10.99' },
    ]);
    const found = () =>
      catalogue.call('audit.run', {}).findings.filter((one) => one.rule === 'differs-from-what-was-sent');
    expect(found()).toMatchObject([{ listingId: listing, severity: 'should fix' }]);
    expect(found()[0]?.message).toContain('sent on 2026-02-20: keywords, prices.');
    catalogue.call('submissions.record', { listingId: listing, note: 'by form' });
    expect(found()).toEqual([]);
    expect(sheet().submissions.map(({ kind, on }) => [kind, on])).toEqual([
      ['update', '2026-03-02'],
      ['sent', '2026-02-20'],
    ]);
    expect(
      catalogue.call('submissions.sheet', { listingId: listing, asOf: '2026-02-25' }).submissions,
    ).toHaveLength(1);
  });

  it('does not count as different what only looks different: unit, separator, what the channel asks for', () => {
    send();
    catalogue.call('settings.update', { lengthUnit: 'in', publisher: 'Another name' });
    catalogue.call('channels.update', {
      id: channel,
      keywordSeparator: ',',
      sheetItems: ['title', 'isbn'],
    });
    expect(sheet().differences).toEqual([]);
  });

  it('is recorded anew only when there is something new, after it was sent, on a day that has come', () => {
    const record = (on?: string) =>
      catalogue.refusal('submissions.record', { listingId: listing, ...(on === undefined ? {} : { on }) });
    expect(record().message).toContain('is not sent; mark it sent instead');
    send('2026-02-20');
    expect(record().message).toContain('Nothing of Paperback on Printworks Direct differs');
    catalogue.call('editions.update', { id: edition, description: 'Another year.' });
    expect(record('2026-02-19').field).toBe('on');
    expect(record('2026-03-03').field).toBe('on');
    catalogue.call('listings.move', { id: listing, to: 'gone' });
    expect(record().message).toContain('is gone');
  });

  it('cannot be changed, removed or added behind the back of its step', () => {
    send();
    catalogue.call('editions.update', { id: edition, description: 'Another year.' });
    catalogue.call('submissions.record', { listingId: listing });
    const raw = new Database(catalogue.file);
    const attack = (sql: string) =>
      expect(() => raw.exec(sql), sql).toThrow(/FIELD_LOCKED|STEP_REFUSED|ALREADY/);
    attack(`UPDATE submission SET sheet = '{"asked":[],"items":[]}'`);
    attack("UPDATE submission SET on_date = '2020-01-01'");
    attack('DELETE FROM submission');
    const insert = (step: string, on: string) =>
      `INSERT INTO submission (listing_id, step_id, on_date, taken_on, sheet) VALUES (${listing}, ${step}, '${on}', '${on}', '{"asked":[],"items":[]}')`;
    attack(insert('(SELECT max(id) FROM listing_step)', '2026-03-02'));
    attack(insert('NULL', '2026-03-01'));
    attack(
      insert('NULL', '2026-03-02')
        .replace('INSERT INTO', 'INSERT OR REPLACE INTO')
        .replace('(listing_id', '(id, listing_id')
        .replace(`VALUES (${listing}`, `VALUES (1, ${listing}`),
    );
    catalogue.call('listings.move', { id: listing, to: 'unsent' });
    attack(insert('NULL', '2026-03-02'));
    attack(insert('(SELECT min(id) FROM listing_step)', '2026-03-02'));
    raw.close();
  });
});
