import { describe, expect, it } from 'vitest';
import { readMessage } from '../../src/exchange/onix/read.ts';
import { type MessageTerms, messageHead, messageTail, writeProduct } from '../../src/exchange/onix/write.ts';
import { xmlOut } from '../../src/exchange/onix/xml-out.ts';
import { codeNoteFaults } from '../support/onix/code-notes.ts';
import { FORMS } from '../support/onix/export.ts';
import { type RandomCatalogue, randomCatalogues } from '../support/onix/random.ts';
import { onixDataMissing, schemaErrors } from '../support/onix/validate.ts';

const missing = onixDataMissing();
if (missing) console.log(missing);

/** One message of many catalogues: each record is written with its own house, under the head of the first. */
function messageOf(catalogues: RandomCatalogue[], form: Pick<MessageTerms, 'version' | 'tags'>): string {
  const terms: MessageTerms = { ...form, content: 'full' };
  const out = xmlOut(form.tags);
  const [first] = catalogues;
  if (first) out.raw(messageHead(terms, first.house));
  for (const { house, records } of catalogues)
    for (const record of records) writeProduct(out, terms, house, record);
  out.raw(messageTail(terms, 1));
  return out.take();
}

const catalogues = randomCatalogues(1000, 20_261_125);

describe('1,000 random catalogues', () => {
  it.skipIf(missing).each(FORMS)('are valid by the schema of $version in $tags names', async (form) => {
    expect(await schemaErrors([messageOf(catalogues, form)], form.version, form.tags)).toEqual([]);
  });

  it('keep the notes of the code lists and the rules of numbers', () => {
    expect(codeNoteFaults(messageOf(catalogues, { version: '3.1', tags: 'reference' }))).toEqual([]);
  });

  it('read back as they were written', () => {
    for (const { house, records } of catalogues.slice(0, 300)) {
      const message = messageOf([{ house, records }], { version: '3.0', tags: 'short' });
      const { publisher, sender, country } = house;
      const back: unknown[] = [];
      readMessage(
        [Buffer.from(message)],
        { publisher, sender, country, language: 'eng', currency: null },
        ({ isbn13, edition, format }) =>
          back.push([
            isbn13,
            edition.number,
            edition.language,
            edition.contributors?.length,
            edition.audience,
            edition.ageFrom,
            edition.ageTo,
            format.form,
            format.pages,
            format.largePrint,
            format.prices,
          ]),
      );
      expect(back).toEqual(
        records.map(({ isbn13, edition, format }) => [
          isbn13,
          edition.number,
          edition.language,
          edition.contributors.length,
          edition.audience,
          edition.ageFrom,
          edition.ageTo,
          format.form,
          format.pages,
          format.largePrint,
          [...format.prices].sort((a, b) => (a.currency < b.currency ? -1 : 1)),
        ]),
      );
    }
  });
});
