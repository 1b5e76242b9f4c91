import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { acts } from '../support/acts.ts';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';
import { drawInterior, SALT_ALMANAC, withPage } from '../support/proof-files/interior.ts';

// The paperback's interior with the hardcover's number in it: dropped, seen, in the way of clearing, and cleared once
// the reason is given. The database is read after each step.

const TODAY = '2026-11-25';
const HARDCOVER = 'ISBN 979-8-969999-05-3 (hardcover)';
let w: Window;
let act: ReturnType<typeof acts>;
let work = 0;

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
  if (task.result?.state === 'fail') await w?.picture('proof-check-failed');
});

const paperback = async () => {
  const [second] = (await w.call('works.get', { id: work })).editions;
  const format = second?.formats.find((one) => one.form === 'BC');
  const listing = format?.listings.find((one) => one.channelName === 'Printworks Direct');
  if (!format || !listing) throw new Error('The demo has no paperback of the second edition.');
  return { format, listing };
};
const checks = async () => w.call('proofChecks.list', { formatId: (await paperback()).format.id });

/** An interior as the record has it, but for the numbers on the back of its title page. */
const interior = async (isbns: readonly string[]) =>
  Buffer.from(
    await drawInterior(
      withPage(4, ['Second edition, with a new foreword', 'Halyard & Fen', ...isbns], SALT_ALMANAC),
    ),
  );

async function drop(name: string, buffer: Buffer): Promise<void> {
  await w.page.locator('input[name="file-interior"]').setInputFiles({
    name,
    mimeType: 'application/pdf',
    buffer,
  });
  await w.page.getByRole('heading', { level: 2, name: `Interior: ${name}` }).waitFor();
  await w.quiet();
}

describe.skipIf(noBrowser)('an interior with the number of another format', () => {
  it('is told to differ, and shows where', async () => {
    const { format, listing } = await paperback();
    const fits = { pages: 24, trimWidthUm: 139_700, trimHeightUm: 215_900 };
    await w.call('formats.update', { id: format.id, ...fits });
    await w.call('listings.move', { id: listing.id, to: 'sent' });
    await w.call('listings.move', { id: listing.id, to: 'proof' });
    await w.go(`/work/${work}`);
    await w.page
      .getByRole('link', { name: `Proof check: ${format.name}`, exact: true })
      .first()
      .click();
    await w.page.getByRole('heading', { level: 1, name: 'Proof check' }).waitFor();
    await drop('almanac.pdf', await interior([HARDCOVER]));
    const differs = w.page.getByRole('region', { name: 'Differs' });
    await differs.getByText('ISBN of this format', { exact: true }).waitFor();
    const [check] = (await checks()).checks;
    expect(check).toMatchObject({ fileName: 'almanac.pdf', inForce: true, final: 'none' });
    const { lines, pictured } = await w.call('proofChecks.show', { checkId: check?.id ?? 0 });
    const wrong = lines.filter((line) => line.state === 'differs');
    expect(wrong.map((line) => line.label)).toEqual(['ISBN of this format']);
    expect(pictured.length).toBeGreaterThan(2);
    const show = differs.getByRole('button', { name: /^Show page \d+: ISBN of this format/ });
    if ((await show.count()) > 0) {
      await show.focus();
      await w.page.keyboard.press('Enter');
      await w.page.locator('.page-box-chosen').waitFor();
    }
    await w.picture('proof-check-01-differs');
    expect(await w.faults()).toEqual([]);
  });

  it('cannot be cleared by a proof round', async () => {
    const { listing } = await paperback();
    await w.go(`/work/${work}`);
    const record = w.page.getByRole('button', { name: /Record a proof.*Paperback on Printworks Direct/ });
    await record.first().click();
    await w.press('Record the proof round');
    await w.page.getByText(/cannot be cleared: the check of its interior file almanac\.pdf/).waitFor();
    await w.picture('proof-check-02-refused');
    expect((await paperback()).listing.standing).toBe('proof');
    await expect(w.call('listings.move', { id: listing.id, to: 'selling' })).rejects.toThrow('STEP_REFUSED');
    await w.page.keyboard.press('Escape');
  });

  it('is recorded as final, and another file is told from it', async () => {
    const { format } = await paperback();
    await w.go(`/work/${work}/check/${format.id}`);
    await w.press('Record as the final interior file');
    await w.page.getByText('This is the final interior file on record, byte for byte.').waitFor();
    expect((await checks()).kinds[0]?.final).toMatchObject({ fileName: 'almanac.pdf' });
    await drop('other.pdf', await interior(['ISBN 979-8-969999-03-9 (paperback)', HARDCOVER]));
    await w.page.getByText('This is not the final interior file on record.').waitFor();
    await w.page.getByText('Another file than at the check before.').waitFor();
    const { checks: kept, kinds } = await checks();
    expect(kept.map((check) => [check.fileName, check.inForce])).toEqual([
      ['other.pdf', false],
      ['almanac.pdf', true],
    ]);
    expect(kinds[0]?.inForce).toBe(kept[1]?.id);
  });

  it('is set beside the other, page by page', async () => {
    await w.page.getByLabel('Before').selectOption({ index: 1 });
    await w.page.getByText('Pages: 1 changed; 23 the same. 24 pages before, 24 after.').waitFor();
    await w.page.getByRole('img', { name: 'Before: page 4 of almanac.pdf' }).waitFor();
    await w.page.getByRole('img', { name: 'After: page 4 of other.pdf' }).waitFor();
    await w.picture('proof-check-03-compared');
    expect(await w.faults()).toEqual([]);
  });

  it('is cleared once the reason is given, by keyboard, and the reason stays', async () => {
    await w.page.getByRole('button', { name: 'almanac.pdf' }).press('Enter');
    await w.page.getByRole('heading', { level: 2, name: 'Interior: almanac.pdf' }).waitFor();
    await w.page.getByRole('button', { name: 'Give a reason: ISBN of this format' }).press('Enter');
    await act.field('Reason').fill('The first printing carries a slip.');
    await w.page.locator('dialog[open]').getByRole('button', { name: 'Keep the reason' }).press('Enter');
    await act.closed();
    await w.page.getByText('The first printing carries a slip.').waitFor();
    await w.call('listings.move', { id: (await paperback()).listing.id, to: 'cleared' });
    expect((await paperback()).listing.standing).toBe('cleared');
    await w.page.setViewportSize({ width: 390, height: 844 });
    await w.quiet();
    expect(
      await w.page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      ),
    ).toBeLessThanOrEqual(0);
    await w.picture('proof-check-04-narrow');
    expect(await w.faults()).toEqual([]);
    expect(w.complaints).toEqual([]);
  });
});
