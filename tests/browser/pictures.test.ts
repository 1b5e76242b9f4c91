import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// The pictures at three widths, light and dark: axe, nothing wider than the window, the keyboard, the files they are
// saved as. The screens as they look are kept in test-output/.

async function clean(w: Window): Promise<void> {
  expect(await w.faults()).toEqual([]);
  const [wide, window] = await w.page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  expect(wide).toBeLessThanOrEqual(window ?? 0);
  expect(w.complaints).toEqual([]);
}

async function open(w: Window, path: string, query?: string): Promise<void> {
  await w.go(path, query);
  await w.page.locator('.drawing-svg').first().waitFor();
  await w.page.waitForLoadState('networkidle').catch(() => {});
}

describe.skipIf(noBrowser).each([
  { width: 1280, height: 900, dark: false },
  { width: 768, height: 1024, dark: true },
  { width: 390, height: 844, dark: false },
])('at $width × $height, dark: $dark', (size) => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ ...size, demo: true, today: '2026-11-25' });
    await w.call('plans.release', { editionId: 3, day: '2027-02-01' });
  });
  afterAll(() => w?.close());
  const name = (what: string) => `picture-${what}-${size.width}${size.dark ? '-dark' : ''}`;

  it('draws the life of a work', async () => {
    await open(w, '/work/2');
    await w.page.locator('.drawing').first().scrollIntoViewIfNeeded();
    await w.picture(name('life'));
    expect(await w.page.locator('.drawing a.spot').count()).toBe(5);
    await clean(w);
  });

  it('draws the catalogue at a glance, and keeps the list first', async () => {
    await w.go('/catalogue');
    expect(await w.page.getByRole('tab', { name: 'List' }).getAttribute('aria-selected')).toBe('true');
    await w.page.getByRole('tab', { name: 'At a glance' }).click();
    await w.page.locator('.drawing-svg').nth(2).waitFor();
    await w.picture(name('glance'));
    await w.page.locator('.drawing').nth(2).scrollIntoViewIfNeeded();
    await w.picture(name('money'));
    await clean(w);
  });

  it('shows findings with what mends them', async () => {
    await w.call('settings.update', { imprint: 'Fen' });
    await w.go('/audit');
    await w.page
      .getByRole('button', { name: /^Set it to Fen/ })
      .first()
      .waitFor();
    await w.picture(name('audit'));
    await clean(w);
    await w.call('settings.update', { imprint: 'Halyard & Fen' });
  });
});

describe.skipIf(noBrowser)('with keyboard and files', () => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ demo: true, today: '2026-11-25' });
  });
  afterAll(() => w?.close());

  it('tells of a lane that has the focus, and opens its format', async () => {
    await open(w, '/work/2');
    const lane = w.page.locator('.drawing a.spot').first();
    await lane.focus();
    const told = await w.page.locator('.drawing-look').first().textContent();
    expect(told).toMatch(/^Paperback, ISBN 979-8-969999-01-5: planned from/);
    expect(told).toContain('live from 2 May 2019');
    await w.page.keyboard.press('Enter');
    await w.page.waitForURL(/format=2/);
  });

  it('says in words what it draws', async () => {
    await open(w, '/catalogue', 'part=glance');
    await w.page.getByText('The same as words').first().click();
    await w.page.getByText('The Salt Almanac · E-book (EPUB) (live): Lanternshelf selling.').waitFor();
  });

  it('goes back to a past day', async () => {
    await open(w, '/work/2', 'asOf=2019-04-20');
    expect(await w.page.locator('.drawing a.spot').count()).toBe(2);
    await w.page.locator('.drawing a.spot').first().focus();
    expect(await w.page.locator('.drawing-look').first().textContent()).not.toContain('live from');
  });

  it('is saved as SVG that stands alone, and as PNG twice as fine', async () => {
    await open(w, '/work/2');
    const [svg] = await Promise.all([
      w.page.waitForEvent('download'),
      w.page.getByRole('button', { name: /^Save as SVG: The life/ }).click(),
    ]);
    expect(svg.suggestedFilename()).toBe('life-of-the-salt-almanac-2026-11-25.svg');
    const text = readFileSync((await svg.path()) ?? '', 'utf8');
    expect(text).toMatch(/^<svg [^>]*xmlns="http:\/\/www.w3.org\/2000\/svg"/);
    expect(text).toContain('The Salt Almanac');
    expect(text).not.toMatch(/href=|class=|var\(--/);
    const [png] = await Promise.all([
      w.page.waitForEvent('download'),
      w.page.getByRole('button', { name: /^Save as PNG: The life/ }).click(),
    ]);
    const bytes = readFileSync((await png.path()) ?? '');
    expect(bytes.subarray(1, 4).toString('latin1')).toBe('PNG');
    const drawn = await w.page.locator('.drawing-svg').first().getAttribute('width');
    expect(bytes.readUInt32BE(16)).toBe(2 * Number(drawn));
    expect(w.complaints).toEqual([]);
  });

  it('mends at one press, accepts with a reason, and shows how many are left in the contents', async () => {
    await w.call('settings.update', { imprint: 'Fen' });
    await w.go('/audit');
    const before = await w.call('audit.count', {});
    await w.page
      .getByRole('button', { name: /^Set it to Fen/ })
      .first()
      .click();
    await w.page
      .getByText(/^Done: Gives /)
      .first()
      .waitFor();
    expect((await w.call('audit.count', {})).note).toBe(before.note - 1);
    expect(await w.faults()).toEqual([]);
    await w.page
      .getByRole('button', { name: /^Accept: / })
      .first()
      .click();
    await w.page.locator('dialog[open]').waitFor();
    expect(await w.faults()).toEqual([]);
    await w.page.getByLabel(/^Why it may stay/).fill('It was sold under that name.');
    await w.press('Accept it');
    await w.page.locator('dialog[open]').waitFor({ state: 'detached' });
    expect(await w.call('audit.count', {})).toMatchObject({ note: before.note - 2, accepted: 1 });
    await w.page.getByText('Show what was accepted (1)').click();
    await w.page.getByText('It was sold under that name.').waitFor();
    const link = w.page.getByRole('link', { name: /^Audit/ });
    expect(await link.textContent()).toContain(`${before.note - 2} open`);
    await w.press('Judge everything anew');
    await w.page
      .getByText(/nothing came out otherwise/)
      .first()
      .waitFor();
    expect(await w.faults()).toEqual([]);
  });
});
