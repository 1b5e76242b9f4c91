import { describe, expect, it } from 'vitest';
import type { OnixVersion, TagSet } from '../../src/contract/onix.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { exported, FORMS } from '../support/onix/export.ts';
import { leavesOf } from '../support/onix/leaves.ts';
import { putFile } from '../support/onix/put.ts';
import { onixDataMissing, onixFile, schemaErrors } from '../support/onix/validate.ts';

// EDItEUR's published sample record (STANDARDS.md section C6; ../shared/data/onix/samples), in 3.0 and 3.1,
// reference names and short tags.

const missing = onixDataMissing();
if (missing) console.log(missing);

const sample = (version: OnixVersion, tags: TagSet) =>
  onixFile(`samples/editeur-sample-${version}-${tags}.xml`);

function imported(message: string): TestCatalogue {
  const catalogue = openTestCatalogue('2026-11-25');
  catalogue.call('onix.import', { file: putFile(catalogue, message) });
  return catalogue;
}

/** The one work of a catalogue, without what only says when and where it was recorded. */
const recordOf = (catalogue: TestCatalogue) => catalogue.call('works.get', { id: 1 });

describe.skipIf(missing)('EDItEUR’s sample record', () => {
  it.each(FORMS)('is taken over with every value from $version in $tags names', ({ version, tags }) => {
    const catalogue = imported(sample(version, tags));
    const work = recordOf(catalogue);
    expect(work.title).toBe('Roseanna');
    expect(work.editions).toHaveLength(1);
    const [edition] = work.editions;
    expect(edition).toMatchObject({
      title: 'Roseanna',
      subtitle: '',
      number: null,
      statement: '',
      language: 'eng',
      imprint: 'HarperPerennial',
      series: 'The Martin Beck series',
      seriesNumber: '1',
      audience: 'general',
      ageFrom: null,
      ageTo: null,
      contributors: [
        { role: 'A01', name: 'Maj Sjöwall' },
        { role: 'A01', name: 'Per Wahlöö' },
        { role: 'B06', name: 'Lois Roth' },
        { role: 'A24', name: 'Henning Mankell' },
      ],
      subjects: [
        { scheme: 'thema', code: 'FFP', heading: '' },
        { scheme: 'thema', code: 'FYT', heading: '' },
        { scheme: 'thema', code: '1DNS', heading: '' },
        { scheme: 'thema', code: '3MPQS', heading: '' },
        { scheme: 'bisac', code: 'FIC022000', heading: '' },
      ],
      keywords: ['Martin Beck', 'Roseanna McGraw', 'Lake Vättern', 'Stockholm', 'police procedural'],
    });
    const paragraphs = edition?.description.split('\n\n') ?? [];
    expect(paragraphs).toHaveLength(4);
    expect(paragraphs[1]).toMatch(/^Written in 1965, Roseanna is the work of .* in crime fiction\.$/);
    expect(edition?.formats).toHaveLength(1);
    expect(edition?.formats[0]).toMatchObject({
      form: 'BC',
      formDetail: 'B105',
      caseKind: null,
      trimHeightUm: 197_000,
      trimWidthUm: 130_000,
      pages: 245,
      durationMinutes: null,
      largePrint: false,
      publicationDate: '2006-08-07',
      onSaleDate: null,
      isbn13: '9780007232833',
      hyphenated: '978-0-00-723283-3',
      standing: 'planned',
      prices: [
        { currency: 'EUR', amountMinor: 899, tax: 'excluding' },
        { currency: 'GBP', amountMinor: 799, tax: 'including' },
      ],
    });
    catalogue.close();
  });

  it.each(FORMS)('gives back from $version in $tags names every part that came in', ({ version, tags }) => {
    const message = sample(version, tags);
    const catalogue = imported(message);
    const back = leavesOf(exported(catalogue, { version, tags }));
    const lost = leavesOf(message).filter((leaf) => !back.includes(leaf));
    expect(lost).toEqual([]);
    catalogue.close();
  });

  it.each(FORMS)(
    'comes through import, export and import the same, as $version in $tags names',
    async (form) => {
      const messages: string[] = [];
      for (const source of FORMS) {
        const first = imported(sample(source.version, source.tags));
        const message = exported(first, form);
        const second = imported(message);
        expect(recordOf(second)).toEqual(recordOf(first));
        expect(exported(second, form)).toBe(message);
        messages.push(message);
        first.close();
        second.close();
      }
      expect(await schemaErrors(messages, form.version, form.tags)).toEqual([]);
    },
  );

  it('changes nothing when it is taken over again, and shows as unchanged', () => {
    const message = sample('3.1', 'reference');
    const catalogue = imported(message);
    const { journalEntries } = catalogue.call('catalogue.info', {});
    const file = putFile(catalogue, message);
    expect(catalogue.call('onix.preview', { file })).toMatchObject({
      version: '3.1',
      sender: 'Global Bookinfo',
      products: 1,
      counts: { unchanged: 1, new: 0 },
    });
    catalogue.call('onix.import', { file, rows: [1] });
    expect(catalogue.call('catalogue.info', {}).journalEntries).toBe(journalEntries);
    catalogue.close();
  });
});
