import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { OutputOf } from '../../src/contract/index.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-03-02');
});
afterEach(() => catalogue.close());

type Work = OutputOf<'works.get'>;
function salt(): Work {
  const { works } = catalogue.call('works.list', { search: 'Salt' });
  return catalogue.call('works.get', { id: works[0]?.id ?? 0 });
}
function edition(work: Work, index: number): Work['editions'][number] {
  const found = work.editions[index];
  if (!found) throw new Error(`There is no edition at ${index}.`);
  return found;
}

describe('a work with its first edition', () => {
  it('keeps everything as it was entered, in its order', () => {
    const fields = {
      title: 'Knots for Small Hands',
      subtitle: 'Twenty that hold',
      contributors: [
        { role: 'A12', name: 'Ilse Quayle' },
        { role: 'A01', name: 'Maren Oskarsdal' },
      ],
      language: 'eng',
      imprint: 'Halyard & Fen',
      series: 'Small Hands',
      seriesNumber: '1',
      description: 'Knots.',
      keywords: ['knots', 'boats', 'making'],
      subjects: [
        { scheme: 'own' as const, code: 'B', heading: '' },
        { scheme: 'own' as const, code: 'A', heading: '' },
      ],
      audience: 'children' as const,
      ageFrom: 6,
      ageTo: 9,
    };
    const { workId, editionId } = catalogue.call('works.create', fields);
    const formatFields = {
      form: 'BB',
      caseKind: 'laminate' as const,
      trimWidthUm: 152_400,
      trimHeightUm: 228_600,
      pages: 48,
      interiorColour: 'premium colour' as const,
      paper: 'white 120 gsm',
      finish: 'gloss' as const,
      insideCoverPrint: true,
      largePrint: true,
      rightToLeft: true,
      prices: [
        { currency: 'EUR', amountMinor: 1499, tax: 'including' as const },
        { currency: 'GBP', amountMinor: 1299, tax: 'excluding' as const },
      ],
      publicationDate: '2026-10-01',
      onSaleDate: '2026-10-01',
    };
    catalogue.call('formats.create', { editionId, ...formatFields });
    const work = catalogue.call('works.get', { id: workId });
    expect(work.editions[0]).toMatchObject({ ...fields, number: null, label: 'Knots for Small Hands' });
    expect(work.editions[0]?.formats[0]).toMatchObject({
      ...formatFields,
      name: 'Hardcover (laminate), large print',
      standing: 'planned',
    });
  });

  it('refuses bad input in one sentence with its field and saves nothing', () => {
    expect(catalogue.refusal('works.create', { title: '  ' })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'title',
    });
    expect(catalogue.refusal('works.create', { title: 'x', ageFrom: 9, ageTo: 6 })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'ageTo',
    });
    expect(
      catalogue.refusal('works.create', { title: 'x', subjects: [{ scheme: 'bisac', code: 'AB1' }] }),
    ).toMatchObject({ field: 'subjects.0.code' });
    expect(catalogue.call('works.list', {}).total).toBe(0);
    expect(catalogue.call('journal.list', {}).entries).toEqual([]);
  });

  it('makes another format of an edition without the number and what belongs to the form', () => {
    catalogue.call('catalogue.demo', {});
    const first = edition(salt(), 1);
    const paperback = first.formats[0];
    const copied = catalogue.call('formats.copy', {
      fromFormatId: paperback?.id ?? 0,
      form: 'BB',
      caseKind: 'cloth',
    });
    const ebook = catalogue.call('formats.copy', {
      fromFormatId: paperback?.id ?? 0,
      form: 'ED',
      formDetail: 'E107',
    });
    const formats = edition(salt(), 1).formats;
    expect(formats.find((format) => format.id === copied.formatId)).toMatchObject({
      form: 'BB',
      caseKind: 'cloth',
      pages: 288,
      trimWidthUm: 129_000,
      isbn13: null,
      prices: [],
    });
    expect(formats.find((format) => format.id === ebook.formatId)).toMatchObject({
      form: 'ED',
      pages: null,
      trimWidthUm: null,
      isbn13: null,
      onSaleDate: '2019-05-02',
    });
  });
});

describe('locks', () => {
  beforeEach(() => {
    catalogue.call('catalogue.demo', {});
  });

  it('locks the identity of an edition with its first submission, and says by what', () => {
    const next = edition(salt(), 0);
    const paperback = next.formats.find((format) => format.form === 'BC');
    const listing = paperback?.listings.find((row) => row.channelName === 'Printworks Direct');
    expect(next.lock).toBeNull();
    catalogue.call('editions.update', { id: next.id, subtitle: 'A Year on the Marsh' });
    catalogue.call('listings.move', { id: listing?.id ?? 0, to: 'sent' });
    const locked = edition(salt(), 0);
    expect(locked.lock).toMatchObject({
      since: '2026-03-02',
      channelName: 'Printworks Direct',
      formatName: 'Paperback',
    });
    const refusal = catalogue.refusal('editions.update', {
      id: next.id,
      subtitle: 'Another',
      description: 'New words.',
    });
    expect(refusal).toMatchObject({ code: 'FIELD_LOCKED', field: 'subtitle' });
    expect(refusal.message).toContain('Printworks Direct');
    expect(edition(salt(), 0).description).toBe(next.description);
    catalogue.call('editions.update', {
      id: next.id,
      subtitle: 'A Year on the Marsh',
      description: 'New words.',
    });
    expect(edition(salt(), 0).description).toBe('New words.');
    expect(catalogue.refusal('formats.update', { id: paperback?.id ?? 0, form: 'BE' })).toMatchObject({
      code: 'FIELD_LOCKED',
      field: 'form',
    });
    // A sibling that was not sent keeps its own product form open; the shared identity is locked for it too.
    const hardcover = next.formats.find((format) => format.form === 'BB');
    catalogue.call('formats.update', { id: hardcover?.id ?? 0, caseKind: 'cloth' });
  });

  it('stays locked when the channel refuses the submission', () => {
    const next = edition(salt(), 0);
    const listing = next.formats[0]?.listings[0];
    catalogue.call('listings.move', { id: listing?.id ?? 0, to: 'sent' });
    catalogue.call('listings.move', { id: listing?.id ?? 0, to: 'unsent', note: 'refused' });
    expect(edition(salt(), 0).formats[0]?.standing).toBe('committed');
    expect(catalogue.refusal('editions.update', { id: next.id, title: 'Another' }).code).toBe('FIELD_LOCKED');
    expect(catalogue.refusal('listings.remove', { id: listing?.id ?? 0 }).code).toBe('FIELD_LOCKED');
  });
});

describe('the next edition', () => {
  it('carries what should carry, raises the number, and takes numbers from the block', () => {
    catalogue.call('catalogue.demo', {});
    const [second, first] = [edition(salt(), 0), edition(salt(), 1)];
    expect(second).toMatchObject({
      number: 2,
      statement: 'Second edition, with a new foreword',
      replacesId: first.id,
      description: first.description,
      keywords: first.keywords,
      subjects: first.subjects,
      contributors: [
        { role: 'A01', name: 'Maren Oskarsdal' },
        { role: 'A23', name: 'Tobias Wrenfield' },
      ],
    });
    expect(first.replacedById).toBe(second.id);
    const [paperback, ebook, hardcover] = second.formats;
    expect(paperback).toMatchObject({
      form: 'BC',
      pages: 288,
      publicationDate: null,
      onSaleDate: null,
      standing: 'planned',
    });
    expect(paperback?.prices).toEqual(first.formats[0]?.prices);
    expect(paperback?.isbn13).not.toBe(first.formats[0]?.isbn13);
    expect(paperback?.listings.map((row) => [row.channelName, row.standing, row.onSaleDate])).toEqual(
      first.formats[0]?.listings.map((row) => [row.channelName, 'unsent', null]),
    );
    expect([ebook?.form, hardcover?.form]).toEqual(['ED', 'BB']);
    expect(new Set(second.formats.map((format) => format.isbn13)).size).toBe(3);
  });

  it('refuses a second successor, a stranger format, and an edition that was never on sale', () => {
    catalogue.call('catalogue.demo', {});
    const [second, first] = [edition(salt(), 0), edition(salt(), 1)];
    const carry = first.formats.map((format) => format.id);
    expect(catalogue.refusal('editions.prepareNext', { editionId: first.id, carry }).code).toBe(
      'ALREADY_EXISTS',
    );
    expect(catalogue.refusal('editions.prepareNext', { editionId: second.id, carry: [] }).code).toBe(
      'NOT_READY',
    );
    const before = catalogue.call('journal.list', { count: 1 }).entries[0]?.seq;
    const knots = catalogue.call('works.list', { search: 'Knots' }).works[0];
    const own = knots?.formats[0]?.editionId ?? 0;
    expect(catalogue.refusal('editions.prepareNext', { editionId: own, carry }).code).toBe('NOT_FOUND');
    expect(catalogue.call('journal.list', { count: 1 }).entries[0]?.seq).toBe(before);
  });

  it('makes nothing at all when the numbers run out', () => {
    catalogue.call('blocks.add', { prefix: '978-1-7343145' });
    const { editionId } = catalogue.call('works.create', { title: 'Fen Light' });
    const { formatId } = catalogue.call('formats.create', { editionId, form: 'BC' });
    catalogue.call('numbers.assign', { formatId });
    const { channelId } = catalogue.call('channels.create', { name: 'Nettlewick Bookshop' });
    const { listingId } = catalogue.call('listings.create', { formatId, channelId });
    catalogue.call('listings.move', { id: listingId, to: 'selling' });
    catalogue.call('numbers.reserve', { count: 9, reservedFor: 'all the rest' });
    expect(catalogue.refusal('editions.prepareNext', { editionId, carry: [formatId] }).code).toBe(
      'BLOCK_EMPTY',
    );
    expect(catalogue.call('works.get', { id: 1 }).editions).toHaveLength(1);
  });
});
