import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { requestQueries } from '../../src/queries/requests.ts';
import { replacementIsbn } from '../../src/rules/request-text.ts';
import { openTestFile, refusalOf, type TestFile } from '../support/catalogue.ts';
import { seedChannel, seedEdition, seedFormat, seedListing } from '../support/seed.ts';

describe('the replacement', () => {
  const format = (
    form: string,
    isbn13: string | null,
    formDetail: string | null = null,
    largePrint = false,
  ) => ({
    form,
    isbn13,
    formDetail,
    largePrint,
  });

  it('is the numbered format of the same form, else any other, else none', () => {
    const old = format('ED', '1', 'E101');
    expect(
      replacementIsbn(old, [format('BC', 'a'), format('ED', 'b', 'E107'), format('ED', 'c', 'E101')]),
    ).toBe('c');
    expect(replacementIsbn(old, [format('BC', 'a'), format('ED', null, 'E101')])).toBe('a');
    expect(replacementIsbn(old, [format('ED', null, 'E101')])).toBeNull();
    expect(replacementIsbn(format('BC', '1'), [format('BC', 'large', null, true), format('BC', 'b')])).toBe(
      'b',
    );
  });
});

describe('the text for a listing', () => {
  let test: TestFile;
  beforeEach(() => {
    test = openTestFile();
  });
  afterEach(() => test.close());
  const text = (id: number) =>
    test.query((context) => requestQueries['listings.requestText'](context, { id, kind: 'removal request' }));

  it('names this format and the one that replaces it, hyphenated, by the text in use', () => {
    const id = test.command(({ db }) => {
      const first = seedEdition(db, { number: 1 });
      const paperback = seedFormat(db, first);
      const second = seedEdition(db, { number: 2, replacesId: first });
      seedFormat(db, second, { form: 'ED' });
      seedFormat(db, second);
      db.run("INSERT INTO setting (name, value) VALUES ('publisher', '\"Halyard & Fen\"')");
      return seedListing(
        db,
        paperback,
        seedChannel(db, 'Printworks Direct', { contact: 'stock@printworks.example' }),
        {
          standing: 'selling',
        },
      );
    });
    expect(text(id)).toEqual({
      to: 'stock@printworks.example',
      subject: 'Please stop selling: The Salt Almanac, 1st edition, Paperback, 979-8-969990-00-5',
      text: [
        'To Printworks Direct',
        '',
        'Please stop selling this edition and confirm when it no longer shows:',
        '',
        'The Salt Almanac',
        'Edition: 1st edition',
        'Form: Paperback',
        'ISBN: 979-8-969990-00-5',
        'Replaced by: 979-8-969990-02-9',
        '',
        'Asked on 2026-03-02 by Halyard & Fen',
      ].join('\n'),
    });
  });

  it("uses the channel's own text, and a dash where nothing replaces the edition", () => {
    const id = test.command(({ db }) =>
      seedListing(
        db,
        seedFormat(db, seedEdition(db)),
        seedChannel(db, 'Lanternshelf', { requestTemplate: '{channel}: {replacement} {who}' }),
      ),
    );
    expect(text(id).text).toBe('Lanternshelf: — {who}');
  });

  it('is refused for a listing that does not exist', () => {
    expect(refusalOf(() => text(7)).code).toBe('NOT_FOUND');
  });
});
