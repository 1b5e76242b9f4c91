import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { acts } from '../support/acts.ts';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// The demo's second edition on the screens: from the submission sheet through sending, a proof round with a new
// file, clearing and selling, to the first edition gone. The database is read after each step.

const TODAY = '2026-03-02';
let w: Window;
let act: ReturnType<typeof acts>;
let work = 0;
const PAPER = 'Paperback on Printworks Direct';

beforeAll(async () => {
  if (noBrowser) return;
  w = await openWindow({ today: TODAY, demo: true });
  act = acts(w);
  const { works } = await w.call('works.list', {});
  work = works.find((one) => one.title === 'The Salt Almanac')?.id ?? 0;
});
afterAll(async () => {
  await w?.close();
});
afterEach(async ({ task }) => {
  if (task.result?.state === 'fail') await w?.picture('desk-failed');
});

const editions = async () => {
  const [second, first] = (await w.call('works.get', { id: work })).editions;
  if (!first || !second) throw new Error('The demo has no second edition.');
  return { first, second };
};
const paper = async () => {
  const { second } = await editions();
  const listings = second.formats.find((format) => format.form === 'BC')?.listings ?? [];
  const listing = listings.find((one) => one.channelName === 'Printworks Direct');
  if (!listing) throw new Error('The paperback is not listed.');
  return listing;
};
const sheet = async () => w.call('submissions.sheet', { listingId: (await paper()).id });
const desk = async () =>
  (await w.call('retirement.desk', { editionId: (await editions()).first.id })).listings;

describe.skipIf(noBrowser)('a second edition from its sheet to the first one gone', () => {
  it('shows everything to type in, with what locks, and tells what goes beyond the channel', async () => {
    const { second } = await editions();
    await w.call('channels.update', {
      id: (await paper()).channelId,
      titleLimit: 10,
      descriptionMarkup: 'none',
    });
    await w.go(`/work/${work}`);
    await w.page
      .getByRole('link', { name: `Submission sheet: ${PAPER}`, exact: true })
      .first()
      .click();
    await w.page.getByRole('heading', { name: 'Submission sheet', level: 1 }).waitFor();
    await w.page.getByText('16 characters; Printworks Direct takes 10.').waitFor();
    await w.page.getByText(/values will lock when you send it/).waitFor();
    expect(await w.page.getByRole('button', { name: /^Copy / }).count()).toBeGreaterThan(15);
    await w.picture('desk-01-sheet');
    expect(await w.faults()).toEqual([]);
    expect((await sheet()).submissions).toEqual([]);
    expect(second.lock).toBeNull();
    await w.call('channels.update', { id: (await paper()).channelId, titleLimit: null });
  });

  it('keeps what was sent, and shows later what differs from it', async () => {
    await w.press('Mark sent');
    await w.press('Record sent and lock these fields');
    await act.closed();
    expect(await paper()).toMatchObject({ standing: 'sent', firstSentOn: TODAY });
    expect((await sheet()).submissions).toMatchObject([{ kind: 'sent', on: TODAY }]);
    const { second } = await editions();
    expect(second.lock?.fields).toContain('title');
    await w.call('editions.update', { id: second.id, keywords: ['salt marsh', 'almanac'] });
    await w.page.getByRole('heading', { name: 'Changed since it was sent' }).waitFor();
    await w.picture('desk-02-differs');
    expect((await sheet()).differences.map((row) => row.of)).toEqual(['keywords']);
    await w.press('Record as sent');
    await w.press('Record as sent');
    await act.closed();
    expect((await sheet()).differences).toEqual([]);
    expect((await sheet()).submissions.map((one) => one.kind)).toEqual(['update', 'sent']);
  });

  it('goes back for a new file by a proof round, with what it cost and the tasks that follow', async () => {
    await w.press('Record a proof');
    await w.page.getByLabel('A new file is needed').check();
    await w.page.getByLabel('Interior file').uncheck();
    await act.field('What it cost').fill('25');
    await act.field('Note').fill('the spine is too narrow');
    await w.picture('desk-03-proof');
    await w.press('Record the proof round');
    await act.closed();
    expect(await paper()).toMatchObject({ standing: 'unsent', firstSentOn: TODAY });
    const { second } = await editions();
    expect((await w.call('proofs.list', { editionId: second.id })).rounds).toMatchObject([
      { outcome: 'new file needed', note: 'the spine is too narrow', on: TODAY },
    ]);
    expect((await w.call('costs.ofEdition', { editionId: second.id })).totals).toEqual([
      { currency: 'GBP', amountMinor: 2500 },
    ]);
    const { tasks } = await w.call('tasks.list', { editionId: second.id });
    expect(tasks.map((task) => task.kind)).toEqual(['make-cover', 'submit', 'check-proof', 'approve']);
    await expect(w.call('editions.update', { id: second.id, title: 'Other' })).rejects.toThrow(
      'FIELD_LOCKED',
    );
  });

  it('is sent again, cleared by the next round, and sold', async () => {
    await w.press('Mark sent');
    await w.press('Record sent');
    await act.closed();
    await w.press('Record a proof');
    await w.press('Record the proof round');
    await act.closed();
    expect((await paper()).standing).toBe('cleared');
    expect((await sheet()).submissions).toHaveLength(3);
    const { second } = await editions();
    for (const listing of second.formats.flatMap((format) => format.listings))
      await w.call('listings.move', { id: listing.id, to: 'selling' });
    await w.go(`/work/${work}/costs/${second.id}`);
    await w.page.getByText(/25.00 so far/).waitFor();
    await w.picture('desk-04-costs');
    expect(await w.faults()).toEqual([]);
  });

  it('asks, chases and confirms every listing of the first edition at the desk, by keyboard', async () => {
    const { first } = await editions();
    await w.call('plans.retirement', { editionId: first.id });
    await w.go(`/work/${work}/desk/${first.id}`);
    await w.page
      .getByRole('button', { name: /^Ask: / })
      .first()
      .waitFor();
    expect(await w.faults()).toEqual([]);
    const names = (await desk()).map((row) => `${row.formatName} on ${row.channelName}`);
    for (const name of names) {
      await w.page.getByRole('button', { name: `Ask: ${name}`, exact: true }).focus();
      await w.page.keyboard.press('Enter');
      const text = w.page.locator('dialog[open]').getByLabel('Text', { exact: true });
      await text.waitFor();
      await expect.poll(() => text.inputValue()).toContain('979-8-969999-0');
      await w.press('Record that it was asked');
      await act.closed();
    }
    expect((await desk()).map((row) => [row.standing, row.askedOn])).toEqual(
      names.map(() => ['leaving', TODAY]),
    );
    const [name = ''] = names;
    await w.press(`Note the promise: ${name}`);
    await act.field('Promised by').fill('2026-03-04');
    await w.press('Note the promise');
    await act.closed();
    await w.press(`Chase: ${name}`);
    await w.press('Record that it was asked again');
    await act.closed();
    await w.picture('desk-05-leaving');
    expect((await desk())[0]).toMatchObject({ promisedBy: '2026-03-04', chasedOn: TODAY, chases: 1 });
    for (const one of names) {
      await w.page.getByRole('button', { name: `Confirm gone: ${one}`, exact: true }).click();
      await act.field('Evidence').fill('the page is no longer there');
      await w.press('Confirm that it is gone');
      await act.closed();
    }
    expect((await desk()).map((row) => [row.standing, row.goneOn, row.evidence])).toEqual(
      names.map(() => ['gone', TODAY, 'the page is no longer there']),
    );
    expect((await editions()).first.formats.map((format) => format.standing)).toEqual(['retired', 'retired']);
  });

  it('records returns, copies and the agency after the end, and says on the old number what replaced it', async () => {
    const { first } = await editions();
    await w.page
      .getByRole('button', { name: /^Set the date: returns of / })
      .first()
      .click();
    await act.field('Last date for returns').fill('2026-08-31');
    await w.press('Save the date');
    await act.closed();
    await w.press('Count copies');
    await act.field('Where they are').fill('Our shelf');
    await act.field('Copies').fill('12');
    await w.press('Record the count');
    await act.closed();
    await w.press('Record as out of print');
    await w.press('Record as out of print');
    await act.closed();
    await w.picture('desk-06-after');
    const kept = await w.call('retirement.desk', { editionId: first.id });
    expect(kept.stock).toMatchObject([{ place: 'Our shelf', copies: 12 }]);
    expect(kept.listings.some((row) => row.returnsUntil === '2026-08-31' && row.returnsOpen)).toBe(true);
    expect(kept.numbers.every((row) => row.outOfPrintOn === TODAY)).toBe(true);
    await w.go(`/work/${work}`);
    await w.page
      .getByText(/Replaced by/)
      .first()
      .waitFor();
    expect(first.formats.every((format) => format.replacedBy !== null)).toBe(true);
    await expect(w.call('editions.update', { id: first.id, description: 'x' })).rejects.toThrow(
      'FIELD_LOCKED',
    );
    expect(await w.call('catalogue.check', {})).toMatchObject({ ok: true });
    expect(w.complaints).toEqual([]);
  });
});
