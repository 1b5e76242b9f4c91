import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { acts } from '../support/acts.ts';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// The main job, played on the screens as a person would: from an owned block to a second edition live and the
// first one retired. The database is read after each part.

const TODAY = '2026-03-02';
let w: Window;
let act: ReturnType<typeof acts>;

beforeAll(async () => {
  if (noBrowser) return;
  w = await openWindow({ today: TODAY });
  act = acts(w);
});
afterAll(async () => {
  await w?.close();
});

const salt = async () => (await w.call('works.get', { id: 1 })).editions;

afterEach(async ({ task }) => {
  if (task.result?.state === 'fail') await w?.picture('story-failed');
});

describe.skipIf(noBrowser)('the main job on the screens', () => {
  it('begins with an empty catalogue that says what to do first', async () => {
    await w.page.getByRole('heading', { name: 'Record your ISBNs' }).waitFor();
    await w.picture('story-01-first-run');
    expect(await w.faults()).toEqual([]);
  });

  it('names the publisher in Settings', async () => {
    await w.go('/settings');
    await w.page.getByLabel('Publisher', { exact: true }).fill('Halyard & Fen');
    await w.page.getByLabel('Imprint', { exact: true }).fill('Halyard & Fen');
    await w.press(/^Save/);
    await expect.poll(async () => (await w.call('settings.get', {})).publisher).toBe('Halyard & Fen');
  });

  it('records the block and its numbers', async () => {
    await w.go('/numbers');
    await w.press(/^Record your first block/);
    await act.field(/^Prefix/).fill('979-8-969999');
    await w.press('Record the block');
    await act.closed();
    await w.page.getByText('100 of 100 free').first().waitFor();
    await w.picture('story-02-block');
    expect((await w.call('blocks.list', {})).blocks[0]).toMatchObject({
      capacity: 100,
      nextFree: '979-8-969999-00-8',
    });
  });

  it('adds the channels', async () => {
    await w.go('/channels');
    for (const [name, kind] of [
      ['Printworks Direct', 'print'],
      ['Lanternshelf', 'e-book'],
    ] as const) {
      await w.press(/^Add (a|your first) channel/);
      await act.field('Name').fill(name);
      await act.field('What it takes').selectOption(kind);
      await w.press(/^(Add|Save).* channel/);
      await act.closed();
    }
    await w.picture('story-03-channels');
    expect((await w.call('channels.list', {})).channels.map((row) => row.name)).toEqual([
      'Lanternshelf',
      'Printworks Direct',
    ]);
  });

  it('makes the first edition in two formats, with numbers and listings', async () => {
    await w.go('/catalogue');
    await w.press('New work');
    await act.field('Title').fill('The Salt Almanac');
    await act.field('Name 1').fill('Maren Oskarsdal');
    await w.press(/^(Record|Add|Make) the work/);
    await w.page.getByRole('heading', { name: 'The Salt Almanac', level: 1 }).waitFor();
    await act.addFormat('The Salt Almanac, first edition', 'BC', async () => {
      await act.field('Trim width').fill('129');
      await act.field('Trim height').fill('198');
      await act.field('Pages').fill('288');
      await act.addPrice('9.99');
    });
    await act.addFormat('The Salt Almanac, first edition', 'ED', async () => {
      await act.field('File format').selectOption('E101');
      await act.addPrice('4.99');
    });
    await act.takeNumber('Paperback');
    await act.takeNumber('E-book (EPUB)');
    await act.list('Paperback', 'Printworks Direct');
    await act.list('E-book (EPUB)', 'Lanternshelf');
    await w.picture('story-04-first-edition');
    const [first] = await salt();
    expect(first?.formats.map((format) => [format.name, format.hyphenated, format.standing])).toEqual([
      ['Paperback', '979-8-969999-00-8', 'planned'],
      ['E-book (EPUB)', '979-8-969999-01-5', 'planned'],
    ]);
  });

  it('puts it on sale, and from then on its identity is locked on the screen, in operations and in the file', async () => {
    await act.putOnSale('Paperback on Printworks Direct', '2024-05-02', true);
    await act.putOnSale('E-book (EPUB) on Lanternshelf', '2024-05-02', true);
    expect(await act.standings()).toEqual([
      'The Salt Almanac E-book (EPUB): live',
      'The Salt Almanac Paperback: live',
    ]);
    await w.page.getByText('Locked since 2 May 2024').first().waitFor();
    await w.press('Edit edition: The Salt Almanac, first edition');
    await w.picture('story-05-locked');
    expect(await w.page.locator('dialog[open]').getByLabel('Title', { exact: true }).count()).toBe(0);
    await w.page.keyboard.press('Escape');
    await expect(w.call('editions.update', { id: 1, title: 'Another' })).rejects.toThrow('FIELD_LOCKED');
  });

  it('prepares the next edition with a foreword and a hardcover, linked to the first', async () => {
    await w.press('Prepare the next edition: The Salt Almanac, first edition');
    await act.field('Edition statement').fill('Second edition, with a new foreword');
    await w.press('Add a further format');
    await act.field('Added format 1').selectOption('BB');
    await act.field('Kind of case of added format 1').selectOption('jacket');
    await w.picture('story-06-next-edition');
    await w.press('Prepare the next edition');
    await act.closed();
    const [second, first] = await salt();
    expect(second).toMatchObject({
      number: 2,
      replacesId: first?.id,
      statement: 'Second edition, with a new foreword',
    });
    expect(second?.formats.map((format) => [format.name, format.hyphenated, format.onSaleDate])).toEqual([
      ['Paperback', '979-8-969999-02-2', null],
      ['E-book (EPUB)', '979-8-969999-03-9', null],
      ['Hardcover (jacket)', '979-8-969999-04-6', null],
    ]);
    await w.press('Edit edition: The Salt Almanac, 2nd edition');
    await w.press('Add a contributor');
    await act.field('Name 2').fill('Tobias Wrenfield');
    await act.field('Role 2').fill('foreword');
    await w.page.keyboard.press('Enter');
    await w.press('Save the edition');
    await act.closed();
    await act.list('Hardcover (jacket)', 'Printworks Direct');
    await w.press('Edit format: Hardcover (jacket)');
    await act.field('Trim width').fill('138');
    await act.field('Trim height').fill('216');
    await act.field('Pages').fill('304');
    await act.addPrice('18.99');
    await w.press('Save the format');
    await act.closed();
    expect((await salt())[0]?.contributors).toEqual([
      { role: 'A01', name: 'Maren Oskarsdal' },
      { role: 'A23', name: 'Tobias Wrenfield' },
    ]);
  });

  it('brings every listing of the new edition on sale on one day by the tasks of its plan', async () => {
    await w.press('Plan the release: The Salt Almanac, 2nd edition');
    await act.field('Day of the release').fill(TODAY);
    await w.press('Plan the release');
    await w.page
      .getByText(/tasks?/)
      .first()
      .waitFor();
    await w.page.keyboard.press('Escape');
    await w.go('/agenda');
    await w.page
      .getByRole('button', { name: /^Done:/ })
      .first()
      .waitFor();
    await w.picture('story-07-agenda');
    expect(await w.faults()).toEqual([]);
    expect(await act.finishAllTasks()).toBeGreaterThan(10);
    const [second] = await salt();
    expect(
      second?.formats.flatMap((format) =>
        format.listings.map((row) => [row.channelName, row.standing, row.onSaleDate]),
      ),
    ).toEqual([
      ['Printworks Direct', 'selling', TODAY],
      ['Lanternshelf', 'selling', TODAY],
      ['Printworks Direct', 'selling', TODAY],
    ]);
  });

  it('finds in the audit that two editions sell side by side', async () => {
    await w.go('/audit');
    await w.page.getByRole('heading', { name: 'Findings' }).waitFor();
    await w.picture('story-08-audit-before');
    const { findings } = await w.call('audit.run', {});
    expect(findings.filter((finding) => finding.severity === 'must fix').length).toBeGreaterThan(0);
    expect(await w.page.getByText('must fix').first().isVisible()).toBe(true);
  });

  it('retires the first edition: asked for, chased, confirmed gone', async () => {
    await w.go('/work/1');
    await w.press('Plan the retirement: The Salt Almanac, first edition');
    await w.press('Plan the retirement');
    await w.page
      .getByText(/tasks?/)
      .first()
      .waitFor();
    await w.page.keyboard.press('Escape');
    await w.go('/agenda');
    await w.page
      .getByRole('button', { name: /^Request text:/ })
      .first()
      .click();
    const text = w.page.locator('dialog[open]').getByLabel('Text', { exact: true });
    // The dialog is there before its text has come.
    await expect.poll(() => text.inputValue()).toContain('979-8-969999-0');
    expect(await text.inputValue()).toContain('The Salt Almanac');
    await w.picture('story-09-request');
    await w.page.keyboard.press('Escape');
    await act.closed();
    await act.finishAllTasks();
    expect((await act.standings()).filter((row) => !row.includes('2nd'))).toEqual([
      'The Salt Almanac E-book (EPUB): retired',
      'The Salt Almanac Paperback: retired',
    ]);
  });

  it('reads in the audit what is live and what is retired, with nothing that must be fixed, and what was on a past day', async () => {
    await w.go('/audit');
    await w.page
      .getByText(/3 live/)
      .first()
      .waitFor();
    await w.picture('story-10-audit-after');
    const { findings, formats } = await w.call('audit.run', {});
    expect(findings.filter((finding) => finding.severity === 'must fix')).toEqual([]);
    expect(formats.filter((row) => row.standing === 'live')).toHaveLength(3);
    await w.go('/catalogue', 'asOf=2024-06-01');
    await w.page
      .getByText(/2 live, 0 retiring, 0 retired/)
      .first()
      .waitFor();
    await w.picture('story-11-past-day');
  });

  it('left every change in the journal, and the file sound', async () => {
    await w.go('/journal');
    await w.picture('story-12-journal');
    expect(await w.call('catalogue.check', {})).toMatchObject({ ok: true });
    expect(w.complaints).toEqual([]);
  });
});
