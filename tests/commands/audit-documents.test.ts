import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
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
    catalogue.call('settings.update', { imprint: 'Fen' });
    const [finding] = catalogue.call('audit.run', {}).findings;
    catalogue.call('audit.accept', {
      fingerprint: finding?.fingerprint ?? '',
      reason: 'It was meant so.',
      reviewOn: '2027-05-01',
    });
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
      'It was meant so.',
      'looked at again on 2027-05-01',
      `Journal head ${audit.journalHead}`,
      'Page 1 of ',
      'must never be printed',
    ])
      expect(text).toContain(fact);
    expect(audit.accepted).toHaveLength(1);
    const known = catalogue.call('catalogue.status', {}).list;
    for (const row of known) if (row.hyphenated) expect(text).toContain(`ISBN ${row.hyphenated}`);
    catalogue.close();
  },
);

test.skipIf(noReader)('the PDF is tagged, has a language and a title, and its page is no blank', () => {
  const catalogue = openTestCatalogue('2026-11-25');
  catalogue.call('catalogue.demo', {});
  const { base64 } = catalogue.call('audit.report', { as: 'pdf', paper: 'A4' });
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-report-'));
  const file = join(folder, 'report.pdf');
  writeFileSync(file, Buffer.from(base64, 'base64'));
  const told = execFileSync('/usr/bin/pdfinfo', [file], { encoding: 'utf8' });
  expect(told).toMatch(/^Tagged:\s+yes$/m);
  expect(told).toMatch(/^Title:\s+Audit of /m);
  expect(told).toMatch(/^Page size:\s+595\.28 x 841\.89 pts \(A4\)$/m);
  const outline = execFileSync('/usr/bin/pdfinfo', ['-struct-text', file], { encoding: 'utf8' });
  expect(outline).toMatch(/H1[\s\S]*"Audit of /);
  expect(outline).toMatch(/H2[\s\S]*"Formats"[\s\S]*H3[\s\S]*"Live \(/);
  expect(outline).not.toContain('Page 1 of');
  execFileSync('/usr/bin/pdftoppm', ['-r', '50', '-gray', '-singlefile', file, join(folder, 'page')]);
  const dots = readFileSync(join(folder, 'page.pgm')).subarray(20);
  const dark = dots.filter((dot) => dot < 128).length / dots.length;
  expect(dark).toBeGreaterThan(0.005);
  expect(dark).toBeLessThan(0.3);
  catalogue.close();
});

test('the HTML stands alone and leaves nothing unescaped', () => {
  const catalogue = openTestCatalogue('2026-11-25');
  catalogue.call('settings.update', { catalogueName: '<b>Halyard</b> & Fen' });
  const { base64 } = catalogue.call('audit.report', { as: 'html' });
  const text = Buffer.from(base64, 'base64').toString('utf8');
  expect(text).toContain('&lt;b&gt;Halyard&lt;/b&gt; &amp; Fen');
  expect(text).not.toMatch(/<script|src=|href=|url\(|@import/);
  catalogue.close();
});
