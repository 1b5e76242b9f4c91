import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openTestCatalogue } from '../support/catalogue.ts';

const PDFTOTEXT = '/usr/bin/pdftotext';
const noReader = !existsSync(PDFTOTEXT);
if (noReader) console.log(`Not run: there is no pdftotext at ${PDFTOTEXT}.`);

test.skipIf(noReader).each(['A4', 'Letter'] as const)(
  'the PDF on %s says what the catalogue holds',
  (paper) => {
    const catalogue = openTestCatalogue('2026-11-25');
    catalogue.call('catalogue.demo', {});
    const audit = catalogue.call('audit.run', {});
    const { base64, fileName } = catalogue.call('audit.report', { as: 'pdf', paper });
    expect(fileName).toBe('test-audit-2026-11-25.pdf');
    const text = execFileSync(PDFTOTEXT, ['-layout', '-', '-'], {
      input: Buffer.from(base64, 'base64'),
      encoding: 'utf8',
    });
    for (const format of audit.formats) {
      expect(text).toContain(format.name);
      if (format.hyphenated) expect(text).toContain(format.hyphenated);
      for (const line of format.channels) expect(text).toContain(line);
    }
    for (const fact of [
      audit.fileName,
      audit.ruleSet,
      `Journal head ${audit.journalHead}`,
      'Page 1 of ',
      'must never be printed',
    ])
      expect(text).toContain(fact);
    catalogue.close();
  },
);

test('the HTML stands alone and leaves nothing unescaped', () => {
  const catalogue = openTestCatalogue('2026-11-25');
  catalogue.call('settings.update', { catalogueName: '<b>Halyard</b> & Fen' });
  const { base64 } = catalogue.call('audit.report', { as: 'html' });
  const text = Buffer.from(base64, 'base64').toString('utf8');
  expect(text).toContain('&lt;b&gt;Halyard&lt;/b&gt; &amp; Fen');
  expect(text).not.toMatch(/<script|src=|href=|url\(|@import/);
  catalogue.close();
});
