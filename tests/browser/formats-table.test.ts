import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';
import { growLarge } from '../support/large.ts';

// The table of formats by keys alone on a long catalogue: only what is in sight is drawn, whatever is asked for.

const FORMATS = 6_000;

describe.skipIf(noBrowser)('the table of formats', () => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ today: '2026-11-25' });
    growLarge(w.launched.file, FORMATS);
    await w.page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await w.go('/catalogue', 'part=formats');
    await w.page.reload();
    await w.page
      .getByRole('gridcell', { name: /Almanac/ })
      .first()
      .waitFor();
  });
  afterAll(() => w?.close());

  const press = async (...keys: string[]) => {
    for (const key of keys) await w.page.keyboard.press(key);
  };
  const at = () =>
    w.page.evaluate(() => ({
      row: Number(document.activeElement?.closest('[role=row]')?.getAttribute('aria-rowindex')),
      column: Number(document.activeElement?.getAttribute('aria-colindex')),
    }));

  it('draws few of many rows, and the keys reach the last', async () => {
    await w.page.getByRole('gridcell').nth(1).focus();
    expect(await w.page.getByRole('row').count()).toBeLessThan(60);
    await press('Control+End');
    await expect.poll(at).toEqual({ row: FORMATS + 1, column: 8 });
    await expect
      .poll(() => w.page.evaluate(() => document.activeElement?.closest('[role=row]')?.textContent ?? '…'))
      .not.toContain('…');
    expect(await w.page.getByRole('row').count()).toBeLessThan(80);
    await press('Control+Home', 'ArrowDown', 'ArrowRight');
    await expect.poll(at).toEqual({ row: 3, column: 2 });
    expect(await w.faults()).toEqual([]);
  });

  it('sorts and resizes from the heads', async () => {
    await press('ArrowUp', 'ArrowUp', 'Enter');
    await w.page.locator('[aria-sort=descending]').waitFor();
    const width = () =>
      w.page.evaluate(
        () => document.querySelector('[role=columnheader][aria-colindex="2"]')?.clientWidth ?? 0,
      );
    const before = await width();
    await press('Shift+ArrowRight', 'Shift+ArrowRight');
    await expect.poll(width).toBe(before + 32);
  });

  it('chooses rows, copies them for a spreadsheet, and sets a price on them after a look', async () => {
    await press('Control+Home', 'Space', 'Shift+ArrowDown', 'Shift+ArrowDown');
    await w.page.getByText('3 formats chosen').waitFor();
    await press('Control+c');
    await w.page.getByText('3 rows is copied.').or(w.page.getByText('3 rows are copied.')).first().waitFor();
    const lines = (await w.page.evaluate(() => navigator.clipboard.readText())).split('\n');
    expect(lines).toHaveLength(4);
    expect(lines[0]).toBe('Edition\tFormat\tNumber\tStanding\tChannels\tOn sale\tPrice');
    await w.picture('formats-chosen');
    await w.page.getByRole('button', { name: 'Dismiss the message' }).click();
    await w.press(/^Set a price/);
    await w.page
      .locator('dialog[open]')
      .getByLabel(/^Price/)
      .fill('12.34');
    await w.press('Look at what would happen');
    await w.page.getByText('3 formats would change, none refused.').waitFor();
    expect(await w.faults()).toEqual([]);
    await w.press('Do it for all');
    await w.page.locator('dialog[open]').waitFor({ state: 'detached' });
    const { entries } = await w.call('journal.list', { count: 20 });
    expect(
      entries.filter((entry) => entry.entity === 'format_price' && entry.action === 'added'),
    ).toHaveLength(3);
  });

  it('combines conditions, keeps them in the address, and saves them under a name', async () => {
    await w.press(/^Filter/);
    await w.page.locator('dialog[open]').getByRole('checkbox', { name: 'Paperback' }).check();
    await w.page.locator('dialog[open]').getByRole('checkbox', { name: 'planned' }).check();
    expect(await w.faults()).toEqual([]);
    await w.press('Show these');
    await w.page.getByText(`1,500 formats of 6,000`).waitFor();
    await w.press(/^Save this filter/);
    await w.page.locator('dialog[open]').getByLabel(/^Name/).fill('Paperbacks to come');
    await w.press('Save the filter');
    await w.page.locator('dialog[open]').waitFor({ state: 'detached' });
    await w.page.reload();
    await w.page.getByText(`1,500 formats of 6,000`).waitFor();
    expect((await w.call('filters.list', {})).filters[0]?.terms).toMatchObject({
      forms: ['BC'],
      standings: ['planned'],
    });
    await w.press('Take away: planned');
    await w.press('Take away: Paperback');
    await w.page.getByText(`6,000 formats of 6,000`).waitFor();
    await w.page.getByLabel('Saved filters').selectOption({ label: 'Paperbacks to come' });
    await w.page.getByText(`1,500 formats of 6,000`).waitFor();
    expect(w.complaints).toEqual([]);
  });
});
