import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fuzzOnix } from '../fuzz/onix.ts';
import { mutated, randomFrom } from '../fuzz/onix-mutate.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { exported } from '../support/onix/export.ts';
import { MESSAGE_21, SEED_MESSAGE } from '../support/onix/messages.ts';
import { putFile } from '../support/onix/put.ts';

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-11-25');
});
afterEach(() => catalogue.close());

const take = (message: string, rows?: number[]) =>
  catalogue.call('onix.import', { file: putFile(catalogue, message), ...(rows ? { rows } : {}) });
const look = (message: string) => catalogue.call('onix.preview', { file: putFile(catalogue, message) });

describe('an ONIX message of several products', () => {
  it('is grouped by what the products say of each other', () => {
    const preview = look(SEED_MESSAGE);
    expect(preview.works).toEqual([
      {
        key: 'n1',
        id: null,
        title: 'Marsh Bells',
        editions: [
          { key: 'n1.1', id: null, label: 'Marsh Bells, 1st edition', replaces: null },
          { key: 'n1.2', id: null, label: 'Marsh Bells, 2nd edition', replaces: 'n1.1' },
        ],
      },
    ]);
    expect(preview.rows.flatMap(({ notes }) => notes)).toEqual([]);
    expect(preview.rows.map(({ edition, state }) => [edition, state])).toEqual([
      ['n1.1', 'new'],
      ['n1.2', 'new'],
      ['n1.2', 'new'],
    ]);
  });

  it('becomes works, editions that follow each other and formats with their numbers', () => {
    expect(take(SEED_MESSAGE)).toMatchObject({ worksAdded: 1, editionsAdded: 2, formatsAdded: 3 });
    const work = catalogue.call('works.get', { id: 1 });
    const [second, first] = work.editions;
    expect(second?.replacesId).toBe(first?.id);
    expect(second?.formats.map(({ form, isbn13 }) => [form, isbn13])).toEqual([
      ['BC', '9798969999510'],
      ['ED', '9798969999527'],
    ]);
    expect(second?.contributors).toEqual([{ role: 'A01', name: 'Maren Oskarsdal' }]);
    expect(second?.formats[0]?.prices).toEqual([{ currency: 'GBP', amountMinor: 999, tax: 'including' }]);
  });

  it('says of a price which currency it is not, or that it names none', () => {
    const noted = (message: string) => look(message).rows[0]?.notes;
    const bare = SEED_MESSAGE.replace('<DefaultCurrencyCode>GBP</DefaultCurrencyCode>', '');
    expect(noted(bare)).toEqual(['The price of 9.99 names no currency and is kept beside.']);
    expect(noted(SEED_MESSAGE.replaceAll('9.99', '9.999'))).toEqual([
      'The price of 9.999 GBP is no amount of that currency and is kept beside.',
    ]);
  });

  it('goes where the user wants it', () => {
    const file = putFile(catalogue, SEED_MESSAGE);
    const places = [{ row: 3, work: 'x3', edition: 'x3' }];
    expect(catalogue.call('onix.preview', { file, places }).rows[2]).toMatchObject({
      work: 'x3',
      why: 'Chosen by you.',
    });
    expect(catalogue.call('onix.import', { file, places })).toMatchObject({
      worksAdded: 2,
      editionsAdded: 3,
    });
    expect(
      catalogue.refusal('onix.import', { file, places: [{ row: 1, work: 'w99', edition: 'x1' }] }),
    ).toMatchObject({ code: 'NOT_FOUND' });
  });

  it('gives a kept supply back with the price as it stands now', () => {
    take(SEED_MESSAGE);
    const [second] = catalogue.call('works.get', { id: 1 }).editions;
    const format = second?.formats[0];
    catalogue.call('formats.update', {
      id: format?.id ?? 0,
      prices: [
        { currency: 'GBP', amountMinor: 1250, tax: 'including' },
        { currency: 'EUR', amountMinor: 1400, tax: 'including' },
      ],
    });
    const message = exported(catalogue, { version: '3.0' });
    const record = message.slice(message.indexOf('bw.9798969999510'), message.indexOf('bw.9798969999527'));
    expect(record).toContain('<PackQuantity>12</PackQuantity>');
    expect(record).toContain('<PriceAmount>12.50</PriceAmount>');
    expect(record).toContain('<PriceAmount>14.00</PriceAmount>');
    expect(record).not.toContain('9.99');
  });

  it('is refused whole where one chosen product cannot be taken', () => {
    const broken = SEED_MESSAGE.replace(
      '<IDValue>9798969999527</IDValue></ProductIdentifier>\n<Desc',
      '<IDValue>9798969999528</IDValue></ProductIdentifier>\n<Desc',
    );
    const preview = look(broken);
    expect(preview.counts).toMatchObject({ new: 2, refused: 1 });
    const file = putFile(catalogue, broken);
    const refusal = catalogue.refusal('onix.import', { file, rows: [1, 2, 3] });
    expect(refusal).toMatchObject({ code: 'NOT_READY', field: 'rows' });
    expect(refusal.message).toContain('Row 3');
    expect(catalogue.call('works.list', {}).total).toBe(0);
    expect(catalogue.call('onix.import', { file })).toMatchObject({ formatsAdded: 2 });
  });

  it('leaves locked fields as they are and changes the open ones', () => {
    take(SEED_MESSAGE);
    const channel = catalogue.call('channels.create', { name: 'Broadside', kind: 'print' });
    const [, first] = catalogue.call('works.get', { id: 1 }).editions;
    const { listingId } = catalogue.call('listings.create', {
      formatId: first?.formats[0]?.id ?? 0,
      channelId: channel.channelId,
    });
    catalogue.call('listings.move', { id: listingId, to: 'sent' });
    const changed = SEED_MESSAGE.replace(
      '<TitleText>Marsh Bells</TitleText>',
      '<TitleText>Fen Bells</TitleText>',
    ).replace('<PriceAmount>9.99', '<PriceAmount>8.49');
    const [row] = look(changed).rows;
    expect(row?.state).toBe('locked');
    expect(row?.changes.map(({ field, locked }) => [field, locked])).toEqual([
      ['title', true],
      ['prices', false],
    ]);
    expect(take(changed, [1])).toMatchObject({ lockedLeft: 1, formatsChanged: 1 });
    const after = catalogue.call('works.get', { id: 1 }).editions[1];
    expect(after?.title).toBe('Marsh Bells');
    expect(after?.formats[0]?.prices[0]?.amountMinor).toBe(849);
  });
});

describe('a message of ONIX 2.1', () => {
  it('is taken over with its values, and keeps what has no field', () => {
    const [row] = look(MESSAGE_21).rows;
    expect(row?.notes.join(' ')).toContain('ONIX 2.1');
    take(MESSAGE_21);
    const [edition] = catalogue.call('works.get', { id: 1 }).editions;
    expect(edition).toMatchObject({
      title: 'The Drowned Café',
      subtitle: 'A Guide',
      series: 'Fen Walks',
      seriesNumber: '3',
      number: 2,
      statement: 'Second edition',
      contributors: [
        { role: 'A01', name: 'Ilse Quayle' },
        { role: 'A12', name: 'Ilse Quayle' },
      ],
      subjects: [{ scheme: 'bisac', code: 'TRV009000', heading: '' }],
      keywords: ['fens', 'cafés'],
      audience: 'children',
      ageFrom: 8,
      ageTo: 12,
      description: 'Where to drink tea — and where not.',
      imprint: 'Halyard & Fen',
    });
    expect(edition?.formats[0]).toMatchObject({
      form: 'BB',
      caseKind: 'jacket',
      pages: 212,
      trimHeightUm: 215_900,
      trimWidthUm: 139_700,
      publicationDate: '2021-09-15',
      prices: [{ currency: 'GBP', amountMinor: 1499, tax: 'including' }],
    });
  });
});

describe('hostile XML', () => {
  const wrap = (inside: string) => `<ONIXMessage release="3.0"><Product>${inside}</Product></ONIXMessage>`;
  it.each([
    [
      'entities of its own',
      '<!DOCTYPE ONIXMessage [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><ONIXMessage>&b;</ONIXMessage>',
      'declares entities',
    ],
    [
      'a file fetched from elsewhere',
      '<!DOCTYPE x [<!ENTITY f SYSTEM "file:///etc/passwd">]><x>&f;</x>',
      'declares entities',
    ],
    ['depth', wrap(`${'<a>'.repeat(80)}${'</a>'.repeat(80)}`), 'nested more than'],
    ['very many elements', wrap('<a/>'.repeat(30_000)), 'more than 20000 elements'],
    ['one endless text', wrap(`<a>${'x'.repeat(5_000_000)}</a>`), 'characters'],
    ['no ONIX', '<html></html>', 'no ONIX message'],
    ['an open end', '<ONIXMessage release="3.0"><Product>', 'not well-formed'],
    ['nothing', '', 'empty'],
    ['an unknown encoding', '<?xml version="1.0" encoding="x-none"?><ONIXMessage/>', 'x-none'],
    ['another release', '<ONIXMessage release="4.0"/>', 'release 4.0'],
  ])('with %s is refused in a sentence', (_, message, words) => {
    const refusal = catalogue.refusal('onix.import', { file: putFile(catalogue, message) });
    expect(refusal.code).toBe('BAD_INPUT');
    expect(refusal.message).toContain(words);
    expect(catalogue.call('works.list', {}).total).toBe(0);
  });

  it('mutated 2,000 times never breaks the reader', () => {
    const told = fuzzOnix(2_000, 11);
    expect(told.read + told.refused).toBe(2_000);
    expect(told.products).toBeGreaterThan(100);
  });

  it('mutated 60 times is taken over whole or not at all', () => {
    const random = randomFrom(5);
    for (let count = 0; count < 60; count += 1) {
      const before = catalogue.call('catalogue.info', {}).journalEntries;
      const file = putFile(catalogue, mutated(Buffer.from(SEED_MESSAGE), random));
      const answer = catalogue.app.call('onix.import', { file });
      if (answer.ok) continue;
      expect(answer.error.code).not.toBe('INTERNAL');
      expect(catalogue.call('catalogue.info', {}).journalEntries).toBe(before);
    }
    expect(catalogue.call('catalogue.check', {}).integrity).toBe('ok');
  });
});

describe('what changed since a day', () => {
  it('holds only the works that changed or whose days were reached', () => {
    catalogue.call('catalogue.demo', {});
    expect(exported(catalogue, { since: '2026-11-26' })).toContain('<NoProduct/>');
    catalogue.setToday('2026-12-01');
    expect(exported(catalogue, { since: '2026-11-30' })).toContain('<NoProduct/>');
    const [work] = catalogue.call('works.list', { search: 'Knots' }).works;
    const editionId = work?.formats[0]?.editionId ?? 0;
    catalogue.call('editions.update', { id: editionId, description: 'Twelve knots.' });
    const message = exported(catalogue, { since: '2026-11-30' });
    expect(message).toContain('Knots for Small Hands');
    expect(message).not.toContain('The Salt Almanac');
  });
});
