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

  it('writes the agency sheet of one work', async () => {
    await w.go('/catalogue/export', 'work=1');
    await w.page.getByText('Write the whole catalogue instead').waitFor();
    await w.page.getByLabel('Agency sheet, CSV').check();
    const file = await saved(w, () => w.press('Write the file'));
    expect(file.name).toMatch(/\.agency\.csv$/);
    expect(file.text.split('\r\n')[0]).toContain('Product form (ONIX List 150)');
    expect(file.text).not.toContain('Knots');
  });
});
