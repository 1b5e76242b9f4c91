import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';
import { onixDataMissing, onixFile, schemaErrors } from '../support/onix/validate.ts';

const missing = onixDataMissing();
if (missing) console.log(missing);

async function clean(w: Window, picture: string): Promise<void> {
  await w.picture(picture);
  expect(await w.faults()).toEqual([]);
  const [wide, window] = await w.page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  expect(wide).toBeLessThanOrEqual(window ?? 0);
  expect(w.complaints).toEqual([]);
}

describe.skipIf(noBrowser || missing).each([
  { width: 1280, height: 800, dark: false },
  { width: 390, height: 844, dark: true },
])('ONIX at $width × $height, dark: $dark', (size) => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ ...size, demo: true, today: '2026-11-25' });
  });
  afterAll(() => w?.close());

  it('goes out as a message that is valid by EDItEUR’s schema', async () => {
    await w.go('/catalogue/export');
    await w.page.getByLabel('ONIX for Books').check();
    await w.page.getByLabel('Version of ONIX').selectOption('3.0');
    await w.page.getByLabel('Names in the file').selectOption('short');
    await clean(w, `onix-export-${size.width}`);
    const [download] = await Promise.all([w.page.waitForEvent('download'), w.press('Write the file')]);
    expect(download.suggestedFilename()).toMatch(/\.onix\.xml$/);
    const message = readFileSync(await download.path(), 'utf8');
    expect(message).toContain('9798969999');
    expect(await schemaErrors([message], '3.0', 'short')).toEqual([]);
  });

  it('comes in after a look at every product', async () => {
    await w.go('/catalogue/import');
    await w.page.getByLabel('File', { exact: true }).setInputFiles({
      name: 'sample.xml',
      mimeType: 'application/xml',
      buffer: Buffer.from(onixFile('samples/editeur-sample-3.1-short.xml')),
    });
    await w.page.getByText('ONIX 3.1 from Global Bookinfo: 1 product.').waitFor();
    await w.page.getByText('978-0-00-723283-3').waitFor();
    await clean(w, `onix-preview-${size.width}`);
    await w.page.getByLabel('Where row 1 goes').selectOption({ label: 'A work of its own' });
    await w.page.getByText('Chosen by you.').waitFor();
    await w.press('Take 1 over');
    await w.page.getByText('The message is taken over.').waitFor();
    await clean(w, `onix-taken-${size.width}`);
    const found = await w.call('works.list', { search: 'Roseanna' });
    expect(found.works[0]?.formats[0]?.hyphenated).toBe('978-0-00-723283-3');
  });

  it('is refused with a sentence where it was made to hurt', async () => {
    await w.go('/catalogue/import');
    await w.page.getByLabel('File', { exact: true }).setInputFiles({
      name: 'bomb.xml',
      mimeType: 'application/xml',
      buffer: Buffer.from('<!DOCTYPE ONIXMessage [<!ENTITY a "b">]><ONIXMessage>&a;</ONIXMessage>'),
    });
    await w.page.getByText('declares entities or elements of its own').waitFor();
    expect(await w.faults()).toEqual([]);
  });
});
