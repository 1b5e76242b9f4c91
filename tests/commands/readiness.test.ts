import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-03-02');
  catalogue.call('catalogue.demo', {});
});
afterEach(() => catalogue.close());

const edition = (search = 'Salt', index = 0) => {
  const { works } = catalogue.call('works.list', { search });
  const found = catalogue.call('works.get', { id: works[0]?.id ?? 0 }).editions[index];
  if (!found) throw new Error(`There is no edition ${index} of ${search}.`);
  return found;
};
const readiness = (name: string, of = edition()) => {
  const found = catalogue
    .call('editions.readiness', { editionId: of.id })
    .formats.find((format) => format.name === name);
  if (!found) throw new Error(`${name} is not told of.`);
  return found;
};
const missing = (name: string, of = edition()) =>
  readiness(name, of)
    .needs.filter((need) => need.state === 'missing')
    .map((need) => need.need);
const record = (formatId: number, kind: 'interior' | 'cover' | 'e-book' | 'audio') =>
  catalogue.call('formats.recordFile', { formatId, kind, fileName: `${kind}.file` });

describe('what a format needs before it is sent', () => {
  it('is told by its form: files, dates and what only some forms have', () => {
    expect(missing('Paperback')).toEqual(['publicationDate', 'onSaleDate', 'file interior', 'file cover']);
    expect(missing('E-book (EPUB)')).toEqual(['publicationDate', 'onSaleDate', 'file e-book', 'file cover']);
    expect(missing('Audiobook download (MP3)', edition('Fen Light'))).toEqual(
      ['isbn', 'imprint', 'publicationDate', 'onSaleDate', 'file audio', 'file cover', 'listing'].filter(
        (need) => need !== 'imprint',
      ),
    );
  });

  it('is ready once everything every channel asks for is there, and says where each thing is mended', () => {
    const [paperback] = edition().formats;
    const formatId = paperback?.id ?? 0;
    record(formatId, 'interior');
    record(formatId, 'cover');
    expect(readiness('Paperback').ready).toBe(false);
    catalogue.call('formats.update', {
      id: formatId,
      publicationDate: '2026-05-15',
      onSaleDate: '2026-05-15',
    });
    const after = readiness('Paperback');
    expect(after.ready).toBe(true);
    expect(after.needs.filter((need) => need.state === 'missing')).toEqual([]);
    expect(after.needs.find((need) => need.need === 'file cover')).toMatchObject({
      detail: 'cover.file, final on 2026-03-02',
      mend: { at: 'file', fileKind: 'cover' },
    });
    catalogue.call('formats.withdrawFile', {
      id: edition().formats[0]?.files.find((file) => file.kind === 'cover')?.id ?? 0,
      reason: 'the spine is too wide',
    });
    expect(missing('Paperback')).toEqual(['file cover']);
  });

  it('hears each channel: what it does not ask for is not missing there, what it would not take is named', () => {
    const { channels } = catalogue.call('channels.list', {});
    const lantern = channels.find((channel) => channel.name === 'Lanternshelf');
    catalogue.call('editions.update', { id: edition().id, keywords: [] });
    expect(missing('E-book (EPUB)')).toContain('keywords');
    catalogue.call('channels.update', {
      id: lantern?.id ?? 0,
      sheetItems: ['isbn', 'title', 'contributors', 'form', 'description', 'prices'],
      descriptionLimit: 20,
    });
    expect(missing('E-book (EPUB)')).toEqual(['file e-book', 'file cover']);
    expect(readiness('E-book (EPUB)').needs.find((need) => need.need === 'description')).toMatchObject({
      state: 'care',
      channels: ['Lanternshelf'],
      detail: expect.stringContaining('Lanternshelf takes 20'),
    });
  });

  it('tells a printed proof and trade terms by channel', () => {
    const needs = readiness('Paperback').needs;
    expect(needs.filter((need) => need.need === 'proof').map((need) => need.channels)).toEqual([
      ['Printworks Direct'],
    ]);
    const [listing] = edition().formats[0]?.listings ?? [];
    catalogue.call('listings.update', { id: listing?.id ?? 0, discountBp: null });
    expect(
      readiness('Paperback').needs.find((need) => need.need === 'discount' && need.state === 'care'),
    ).toMatchObject({
      channels: [listing?.channelName],
      mend: { at: 'listing', listingId: listing?.id },
    });
  });

  it('says nothing of what is retired or cancelled', () => {
    const primer = edition('Lantern');
    expect(catalogue.call('editions.readiness', { editionId: primer.id }).formats).toEqual([]);
    expect(catalogue.refusal('editions.readiness', { editionId: 999 })).toMatchObject({ code: 'NOT_FOUND' });
  });
});

describe('the copyright page', () => {
  const pages = () => catalogue.call('editions.copyrightPage', { editionId: edition().id });

  it('lists every number with its form, its own first, with edition, dates and imprint', () => {
    for (const format of edition().formats)
      catalogue.call('formats.update', { id: format.id, publicationDate: '2026-05-15' });
    const { formats, remarks } = pages();
    expect(formats.map((format) => format.name)).toEqual([
      'Paperback',
      'E-book (EPUB)',
      'Hardcover (jacket)',
    ]);
    const hardcover = formats[2]?.text ?? '';
    const lines = hardcover.split('\n');
    for (const part of [
      'The Salt Almanac',
      'Second edition, with a new foreword',
      'Published in 2026 by Halyard & Fen',
      'First published in 2019',
      'Foreword: Tobias Wrenfield',
    ])
      expect(lines).toContain(part);
    const numbers = lines.filter((line) => line.startsWith('ISBN '));
    expect(numbers).toEqual([
      'ISBN 979-8-969999-05-3 (Hardcover, jacket)',
      'ISBN 979-8-969999-03-9 (Paperback)',
      'ISBN 979-8-969999-04-6 (E-book, EPUB)',
    ]);
    expect(formats[0]?.text.split('\n').filter((line) => line.startsWith('ISBN '))[0]).toContain(
      '(Paperback)',
    );
    expect(remarks.some((remark) => remark.includes('No publication date'))).toBe(false);
    expect(remarks.some((remark) => remark.includes('who holds them'))).toBe(true);
  });

  it('leaves out what is not known and says so', () => {
    const { formats, remarks } = pages();
    expect(formats[0]?.text).not.toMatch(/undefined|null|—/);
    expect(remarks.some((remark) => remark.startsWith('No publication date yet'))).toBe(true);
  });

  it('takes the year of the planned release where no date is set', () => {
    catalogue.call('plans.release', { editionId: edition().id, day: '2027-01-14' });
    expect(pages().formats[0]?.text).toContain('2027');
  });

  it('follows the user’s own text', () => {
    catalogue.call('templates.saveText', {
      kind: 'copyright page',
      subject: '',
      body: 'This {form} is {isbn}.\n{isbns}',
    });
    expect(pages().formats[0]?.text.split('\n')[0]).toBe('This Paperback is 979-8-969999-03-9.');
  });
});
