import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';
import { sidewaysOf } from '../support/screens.ts';

// The long lists besides the formats: numbers of a block, listings of a channel, entries of the journal. Each is sorted
// and copied by keys alone, and only what is in sight is drawn.

describe.skipIf(noBrowser)('long lists as tables', () => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ demo: true, today: '2026-11-25' });
    await w.page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  });
  afterAll(() => w?.close());

  const press = async (...keys: string[]) => {
    for (const key of keys) await w.page.keyboard.press(key);
  };
  const pasted = async () =>
    (await w.page.evaluate(() => navigator.clipboard.readText())).split('\n').map((line) => line.split('\t'));
  /** Opens a list and waits for its first row. */
  async function open(path: string, query?: string): Promise<void> {
    await w.go(path, query);
    await w.page.locator('.grid-body .grid-row').first().waitFor();
    await w.quiet();
    await w.page.getByRole('gridcell').nth(1).focus();
  }
  /** The page at three widths: nothing for axe, nothing wider than the window. */
  async function clean(name: string): Promise<void> {
    for (const width of [1280, 390]) {
      await w.page.setViewportSize({ width, height: 800 });
      await w.picture(`list-${name}-${width}`);
      expect(await sidewaysOf(w)).toBeLessThanOrEqual(0);
      expect(await w.faults()).toEqual([]);
    }
    await w.page.setViewportSize({ width: 1280, height: 800 });
    expect(w.complaints).toEqual([]);
  }

  it('numbers of a large block: the last one by key, chosen ones copied', async () => {
    const { id } = await w.call('blocks.add', { prefix: '979-8-8800' });
    await open('/numbers', `block=${id}&view=table`);
    await w.page.getByText('10,000 numbers').waitFor();
    const at = async (from: number) =>
      (await w.call('numbers.list', { blockId: id, from, count: 1 })).rows[0]?.hyphenated ?? '';
    await press('Control+End');
    await w.page.getByRole('gridcell', { name: await at(9_999), exact: true }).waitFor();
    expect(await w.page.locator('.grid-body .grid-row').count()).toBeLessThan(60);
    await press('Control+Home', 'Space', 'Shift+ArrowDown', 'Control+c');
    await w.page
      .getByText(/^The text of 2 numbers (is|are) copied/)
      .first()
      .waitFor();
    expect(await pasted()).toEqual([
      ['Number', 'Standing', 'Used for', 'Since', 'Why spent'],
      [await at(0), 'free', '', '', ''],
      [await at(1), 'free', '', '', ''],
    ]);
    await clean('numbers');
  });

  it('numbers sorted from the head, kept in the address; Enter opens one', async () => {
    await open('/numbers', 'block=1&view=table');
    await press('ArrowUp', 'ArrowRight', 'Enter', 'Enter');
    await w.page.waitForURL(/sort=-standing/);
    await w.page.locator('[aria-sort=descending]').waitFor();
    await w.quiet();
    const first = w.page.locator('.grid-row[aria-rowindex="2"]');
    await expect.poll(() => first.textContent()).toContain('assigned');
    await press('ArrowDown', 'Enter');
    await w.page.locator('dialog[open]').waitFor();
    await press('Escape');
    await w.page.locator('dialog[open]').waitFor({ state: 'detached' });
  });

  it('listings of a channel, as many as the channel says, with columns of the user’s choice', async () => {
    const { channels } = await w.call('channels.list', {});
    const channel = channels.find((one) => one.listings > 1);
    if (!channel) throw new Error('The demo has no channel with two listings.');
    await w.go('/channels');
    await w.page.getByRole('link', { name: `Listings on ${channel.name}` }).click();
    await w.page.getByRole('heading', { level: 1, name: 'Listings' }).waitFor();
    await w.page.getByText(`${channel.listings} listings`, { exact: true }).waitFor();
    await w.press('Columns…');
    await w.page.getByRole('checkbox', { name: 'Returns' }).check();
    await w.page.getByRole('checkbox', { name: 'Discount' }).uncheck();
    await w.press('Done');
    await w.page.getByRole('columnheader', { name: 'Returns' }).waitFor();
    expect(await w.page.getByRole('columnheader', { name: 'Discount' }).count()).toBe(0);
    await w.press('Copy all rows');
    await w.page.getByText(`The text of ${channel.listings} listings`).first().waitFor();
    const [head, ...rows] = await pasted();
    expect(head?.slice(0, 4)).toEqual(['Edition', 'Format', 'Number', 'Stands']);
    const { rows: told } = await w.call('listings.find', { channelId: channel.id });
    expect(rows.map((row) => [row[2], row[3]])).toEqual(told.map((row) => [row.hyphenated, row.standing]));
    await clean('listings');
  });

  it('entries of the journal, by the kind of record, one opened in full', async () => {
    await open('/journal', 'view=table');
    const { total } = await w.call('journal.rows', { count: 1 });
    await w.page.getByText(`${total.toLocaleString('en-GB')} entries`, { exact: true }).waitFor();
    await clean('journal');
    await w.page.getByRole('gridcell').nth(1).focus();
    await press('ArrowDown', 'Enter');
    await w.page.locator('dialog[open]').waitFor();
    expect(await w.page.locator('dialog[open] h2').textContent()).toMatch(/^Entry [\d,]+: /);
    expect(await w.faults()).toEqual([]);
    await press('Escape');
    await w.page.getByRole('tab', { name: 'By change' }).click();
    await w.page.locator('.command').first().waitFor();
  });
});
