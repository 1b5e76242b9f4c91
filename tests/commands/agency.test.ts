import Papa from 'papaparse';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { exported as message } from '../support/onix/export.ts';
import { leavesOf } from '../support/onix/leaves.ts';
import { exported, imported } from '../support/staged.ts';

// What is registered with each number: STANDARDS.md, section A12, after the ISBN Users' Manual, section 8.

const TODAY = '2026-11-25';
const DESCRIPTION = 'A year on the marsh, day by day.';
const SHEET = [
  'Title,Subtitle,Series,Volume,Author,Translator,Edition number,Edition statement,Language,Imprint,Form,File format,ISBN,Publication date,Price GBP,Pages,Description,Keywords',
  `Salt Almanac,A year,Fen Books,7,Maren Oskarsdal,Ilse Quayle,2,revised and enlarged,eng,Fen Lane,E-book,EPUB,979-8-969999-00-8,2027-05-06,6.99,,"${DESCRIPTION}",salt`,
  `Salt Almanac,A year,Fen Books,7,Maren Oskarsdal,Ilse Quayle,2,revised and enlarged,eng,Fen Lane,Paperback,,979-8-969999-01-5,2027-05-06,12.99,240,"${DESCRIPTION}",salt`,
  'Salt Almanac,A year,Fen Books,7,Maren Oskarsdal,Ilse Quayle,2,revised and enlarged,eng,Fen Lane,Hardcover,,,,,,,',
].join('\n');

let c: TestCatalogue;
beforeEach(() => {
  c = openTestCatalogue(TODAY);
  c.call('settings.update', { publisher: 'Halyard & Fen', countryOfPublication: 'GB' });
  expect(imported(c, SHEET).problems).toEqual([]);
});
afterEach(() => c.close());

describe('the agency sheet', () => {
  it('as CSV has a column for each fact to be registered, filled where the catalogue records it', () => {
    const text = exported(c, 'agency-csv').toString('utf8').replace('\uFEFF', '');
    const { data } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
    const both = {
      Title: 'Salt Almanac',
      Subtitle: 'A year',
      Series: 'Fen Books',
      Volume: '7',
      Contributors: 'Maren Oskarsdal (Author); Ilse Quayle (Translator)',
      'Edition number': '2',
      'Edition statement': 'revised and enlarged',
      'Language of text (ISO 639-2/B)': 'eng',
      Imprint: 'Fen Lane',
      Publisher: 'Halyard & Fen',
      'Country of publication': 'GB',
      'Publication date': '2027-05-06',
      'ISBN of the whole (parts only)': '',
      'Usage constraints (digital only)': '',
    };
    expect(data).toEqual([
      {
        ISBN: '979-8-969999-00-8',
        'Product form (ONIX List 150)': 'ED',
        'Product form detail (ONIX List 175)': 'E101',
        ...both,
        'Other formats of this edition': '979-8-969999-01-5',
      },
      {
        ISBN: '979-8-969999-01-5',
        'Product form (ONIX List 150)': 'BC',
        'Product form detail (ONIX List 175)': '',
        ...both,
        'Other formats of this edition': '979-8-969999-00-8',
      },
    ]);
  });

  it('as ONIX tells the same of each number, and nothing of prices, texts or subjects', () => {
    const leaves = leavesOf(message(c, { content: 'registration' }));
    const of = (path: string) => leaves.filter((leaf) => leaf.startsWith(`/Product/${path}`));
    const values = (path: string) =>
      of(path).map((leaf) => leaf.replace(/^\S*\/([A-Za-z]+)(?:@\S*)? /, '$1 '));
    const twice = (...lines: string[]) => lines.flatMap((line) => [line, line]);
    expect(values('ProductIdentifier')).toEqual(
      expect.arrayContaining(['IDValue 9798969999008', 'IDValue 9798969999015']),
    );
    expect(values('DescriptiveDetail/ProductForm ')).toEqual(['ProductForm BC', 'ProductForm ED']);
    expect(values('DescriptiveDetail/ProductFormDetail')).toEqual(['ProductFormDetail E101']);
    expect(values('DescriptiveDetail/TitleDetail')).toEqual(
      expect.arrayContaining(twice('Subtitle A year', 'TitleText Salt Almanac')),
    );
    expect(values('DescriptiveDetail/Collection')).toEqual(
      expect.arrayContaining(twice('PartNumber 7', 'TitleText Fen Books')),
    );
    expect(values('DescriptiveDetail/Contributor/ContributorRole')).toEqual([
      ...twice('ContributorRole A01'),
      ...twice('ContributorRole B06'),
    ]);
    expect(values('DescriptiveDetail/Contributor/PersonName')).toEqual([
      ...twice('PersonName Ilse Quayle'),
      ...twice('PersonName Maren Oskarsdal'),
    ]);
    expect(values('DescriptiveDetail/EditionNumber')).toEqual(twice('EditionNumber 2'));
    expect(values('DescriptiveDetail/EditionStatement')).toEqual(
      twice('EditionStatement revised and enlarged'),
    );
    expect(values('DescriptiveDetail/Language/LanguageCode')).toEqual(twice('LanguageCode eng'));
    expect(values('PublishingDetail/Imprint/ImprintName')).toEqual(twice('ImprintName Fen Lane'));
    expect(values('PublishingDetail/Publisher/PublisherName')).toEqual(
      twice('PublisherName Halyard &amp; Fen'),
    );
    expect(values('PublishingDetail/CountryOfPublication')).toEqual(twice('CountryOfPublication GB'));
    expect(values('PublishingDetail/PublishingDate/Date')).toEqual(twice('Date 20270506'));
    expect(of('ProductSupply')).toEqual([]);
    expect(of('CollateralDetail')).toEqual([]);
    expect(of('DescriptiveDetail/Subject')).toEqual([]);
    expect(leaves.join('\n')).not.toContain(DESCRIPTION);
  });
});
