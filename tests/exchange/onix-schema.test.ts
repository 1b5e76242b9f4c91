import { describe, expect, it } from 'vitest';
import { openTestCatalogue } from '../support/catalogue.ts';
import { exported, FORMS } from '../support/onix/export.ts';
import { onixDataMissing, schemaErrors } from '../support/onix/validate.ts';

const missing = onixDataMissing();
if (missing) console.log(missing);

describe.skipIf(missing)('an ONIX message', () => {
  it.each(FORMS)(
    'of the demo is valid by the schema of $version in $tags names',
    async ({ version, tags }) => {
      const catalogue = openTestCatalogue('2026-11-25');
      catalogue.call('catalogue.demo', {});
      const whole = exported(catalogue, { version, tags });
      const registration = exported(catalogue, { version, tags, content: 'registration' });
      expect(await schemaErrors([whole, registration], version, tags)).toEqual([]);
      expect(whole.match(/<(?:b012|ProductForm)>/g)?.length).toBeGreaterThan(5);
      catalogue.close();
    },
  );

  it.each(FORMS)('of an empty catalogue is valid in $version, $tags', async ({ version, tags }) => {
    const catalogue = openTestCatalogue('2026-11-25');
    expect(await schemaErrors([exported(catalogue, { version, tags })], version, tags)).toEqual([]);
    catalogue.close();
  });
});
