import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

/** The file that an act of the page hands to the person. */
async function saved(w: Window, act: () => Promise<void>): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([w.page.waitForEvent('download'), act()]);
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}

async function clean(w: Window, picture: string): Promise<void> {
  await w.picture(picture);
  expect(await w.faults()).toEqual([]);
  const [wide, window] = await w.page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  expect(wide).toBeLessThanOrEqual(window ?? 0);
  expect(w.complaints).toEqual([]);
}

describe.skipIf(noBrowser).each([
  { width: 1280, height: 800, dark: false },
  { width: 390, height: 844, dark: true },
])('exchange at $width × $height, dark: $dark', (size) => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ ...size, demo: true, today: '2026-11-25' });
  });
  afterAll(() => w?.close());

  it('writes the catalogue as a table', async () => {
    await w.go('/catalogue');
    await w.page.getByRole('link', { name: 'Export…' }).click();
    await w.page.getByRole('heading', { level: 1, name: 'Export' }).waitFor();
    const file = await saved(w, () => w.press('Write the file'));
    expect(file.name).toBe('halyard-fen-demo-2026-11-25.csv');
    expect(file.text.startsWith('\uFEFFWork,Edition number,')).toBe(true);
    expect(file.text).toContain('979-8-969999-');
    await w.page.getByText('is saved.').waitFor();
    await clean(w, `export-${size.width}`);
  });

  it('saves no file when the saving is called off, and saves it when it is asked for again', async () => {
    await w.go('/catalogue/export');
    let held = true;
    await w.page.route('**/files.get', async (route) => {
      if (held) await new Promise((go) => setTimeout(go, 1_500));
      await route.continue();
    });
    let files = 0;
    w.page.on('download', () => {
      files += 1;
    });
    await w.page.getByLabel('Changes, JSON').check();
    await w.press('Write the file');
    await w.page.getByText('Saving').waitFor();
    await w.press('Cancel');
    await w.page.getByText('Called off; no file was saved.').first().waitFor();
    held = false;
    await w.quiet();
    expect(files).toBe(0);
    expect(await w.page.getByText('is saved.').count()).toBe(0);
    await saved(w, () => w.press('Write the file'));
    await w.page.getByText('is saved.').waitFor();
  });

  it('takes a dropped table over once it is understood', async () => {
    const sheet = [
      'Book Title,Binding,EAN,RRP,Out',
      'Marsh Bells,pbk,979-8-969999-50-3,£9.99,03/04/2027',
      'Marsh Bells,epub,979896999951.0,£4.99,',
      'Tide Tables,parchment,,,',
    ].join('\n');
    await w.go('/catalogue');
    const data = await w.page.evaluateHandle((text) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([text], 'spring list.csv', { type: 'text/csv' }));
      return transfer;
    }, sheet);
    await w.page.dispatchEvent('body', 'drop', { dataTransfer: data });
    await w.page.getByRole('heading', { level: 1, name: 'Import' }).waitFor();
    await w.page.getByText('3 rows below the header').waitFor();
    const attempt = w.page.getByRole('button', { name: 'See what would come of it' });
    await w.page.getByLabel('What Out holds').selectOption('publicationDate');
    expect(await attempt.getAttribute('aria-disabled')).toBe('true');
    await w.page.getByLabel('How Out is written').selectOption('dmy');
    await clean(w, `import-columns-${size.width}`);
    await attempt.click();
    await w.page.getByRole('heading', { name: 'What is refused' }).waitFor();
    await clean(w, `import-tried-${size.width}`);
    const refused = await saved(w, () => w.press('Save the refused rows'));
    expect(refused.text).toContain('Reason');
    await w.page.getByLabel('Record the good rows only').check();
    await w.press(/^Record \d+ row/);
    await w.page.getByRole('heading', { name: 'Recorded' }).waitFor();
    await clean(w, `import-recorded-${size.width}`);
    const found = await w.call('works.list', { search: 'Marsh Bells' });
    expect(found.works[0]?.formats.length).toBeGreaterThan(0);
  });

  it('takes a whole catalogue into an empty one alone', async () => {
    await w.go('/catalogue/export');
    await w.page.getByLabel('Whole catalogue, JSON').check();
    const file = await saved(w, () => w.press('Write the file'));
    await w.go('/catalogue/import');
    const json = { name: 'whole.json', mimeType: 'application/json', buffer: Buffer.from(file.text) };
    await w.page.getByLabel('File', { exact: true }).setInputFiles(json);
    await w.page.locator('#screen').getByText('into an empty one only').waitFor();
    await clean(w, `import-whole-${size.width}`);
  });

  it('writes the agency sheet of one work', async () => {
    await w.go('/catalogue/export', 'work=1');
    await w.page.getByText('Write the whole catalogue instead').waitFor();
    await w.page.getByLabel('Agency sheet, CSV').check();
    const file = await saved(w, () => w.press('Write the file'));
    expect(file.name).toMatch(/\.agency\.csv$/);
    expect(file.text.split('\r\n')[0]).toContain('Product form (ONIX List 150)');
    expect(file.text).not.toContain('Knots');
  });

  it('merges what was done in a copy, and asks where both have changed the same', async () => {
    await w.go('/catalogue/export');
    await w.page.getByLabel('Changes, JSON').check();
    const file = await saved(w, () => w.press('Write the file'));
    expect(file.name).toMatch(/[.]changes[.]json$/);
    const content = JSON.parse(file.text);
    const first = content.entries.find(({ entity }: { entity: string }) => entity === 'channel');
    const seq = content.entries.length;
    const renamed = { ...first, seq: seq + 1, hash: 'c'.repeat(64), action: 'changed' };
    renamed.before = { ...first.after, name: 'Before Both' };
    renamed.after = { ...first.after, name: 'Renamed in the Copy' };
    const added = { ...first, seq: seq + 2, hash: 'd'.repeat(64), key: '90' };
    added.after = { ...first.after, id: 90, name: 'Added in the Copy' };
    content.entries.push(renamed, added);
    await w.go('/catalogue/import');
    const buffer = Buffer.from(JSON.stringify(content));
    await w.page
      .getByLabel('File', { exact: true })
      .setInputFiles({ name: 'copy.changes.json', mimeType: 'application/json', buffer });
    await w.page.getByText('1 change would be taken over').waitFor();
    expect(await w.page.getByRole('button', { name: 'Take them over' }).isDisabled()).toBe(true);
    await clean(w, `changes-${size.width}`);
    await w.page.getByLabel('Take Renamed in the Copy').check();
    await w.press('Take them over');
    await w.page.getByText('2 changes taken over.').first().waitFor();
    await w.go('/channels');
    await w.page.getByText('Renamed in the Copy').first().waitFor();
    await w.page.getByText('Added in the Copy').first().waitFor();
  });
});
