import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { acts } from '../support/acts.ts';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// The demo's second edition, from the question whether it is one at all to the day it could be sent, as a person
// would go about it on the Work screen. The database is read after each part.

const TODAY = '2026-03-02';
let w: Window;
let act: ReturnType<typeof acts>;
let salt: number;

beforeAll(async () => {
  if (noBrowser) return;
  w = await openWindow({ today: TODAY, demo: true });
  act = acts(w);
  salt = (await w.call('works.list', { search: 'Salt' })).works[0]?.id ?? 0;
  await w.go(`/work/${salt}`);
});
afterAll(async () => {
  await w?.close();
});
afterEach(async ({ task }) => {
  if (task.result?.state === 'fail') await w?.picture('next-edition-failed');
});

const editions = async () => {
  const [second, first] = (await w.call('works.get', { id: salt })).editions;
  if (!second || !first) throw new Error('The demo has two editions of it.');
  return { second, first };
};
const numbers = async () =>
  (await w.call('works.get', { id: salt })).editions.flatMap((edition) =>
    edition.formats.map((format) => format.hyphenated),
  );
const missing = async (name: string) => {
  const { second } = await editions();
  const { formats } = await w.call('editions.readiness', { editionId: second.id });
  const needs = formats.find((format) => format.name === name)?.needs ?? [];
  return needs.filter((need) => need.state === 'missing').map((need) => need.need);
};
const dialog = () => w.page.locator('dialog[open]').last();

describe.skipIf(noBrowser)('the second edition of the demo', () => {
  it('keeps the numbers of the first for a price and a cover, and says why no new ones are given', async () => {
    const before = await numbers();
    await w.press('New edition or reprint?: The Salt Almanac, first edition');
    await w.page.getByText(/Say first how far the text changes/).waitFor();
    await act.say('Not at all', 'The price changes', 'The cover design or its colour changes', 'New numbers');
    await w.page.getByText('Keep the numbers: this is a reprint or a correction.').waitFor();
    await dialog()
      .getByText(/A new number for the wish alone is not permitted/)
      .first()
      .waitFor();
    expect(
      await dialog()
        .getByText(/section 5[.]1/)
        .count(),
    ).toBeGreaterThan(0);
    expect(await w.faults()).toEqual([]);
    await w.picture('next-01-reprint');
    await w.press('This is a reprint or correction: keep the numbers');
    await act.closed();
    const { first } = await editions();
    const { kept } = await w.call('editions.keptAdvice', { editionId: first.id });
    expect(kept.map(({ verdict, lines }) => [verdict, lines.length])).toEqual([['same', 4]]);
    expect(await numbers()).toEqual(before);
  });

  it('is a new edition by what the records tell and what only a person can say', async () => {
    await w.press('Is it a new edition?: The Salt Almanac, 2nd edition');
    await dialog().getByText('new: Tobias Wrenfield (foreword)').first().waitFor();
    await w.page.getByText(/Say first how far the text changes/).waitFor();
    await act.say('Substantially');
    await dialog().getByText('New numbers are required.').waitFor();
    await act.field('Why, in your own words').fill('Three chapters are new.');
    await w.picture('next-02-new-edition');
    await w.press('Keep this answer with the edition');
    await act.closed();
    const { second } = await editions();
    const { kept } = await w.call('editions.keptAdvice', { editionId: second.id });
    expect(kept[0]).toMatchObject({ verdict: 'new', note: 'Three chapters are new.', madeOn: TODAY });
    expect(kept[0]?.lines.map((line) => [line.formatName, line.verdict, line.told])).toEqual([
      ['Paperback', 'new', 'stated'],
      ['Paperback', 'judge', 'record'],
      ['E-book (EPUB)', 'new', 'stated'],
      ['E-book (EPUB)', 'judge', 'record'],
      ['Hardcover (jacket)', 'new', 'record'],
    ]);
  });

  it('warns before it is sent with something missing, and does not stand in the way', async () => {
    expect(await missing('Paperback')).toEqual([
      'publicationDate',
      'onSaleDate',
      'file interior',
      'file cover',
    ]);
    await w.press('Mark sent: Paperback on Printworks Direct');
    await dialog().getByText('Not everything is there that a channel asks for.').waitFor();
    expect(await dialog().getByText('Final cover file: no final file is recorded').count()).toBe(1);
    expect(
      await dialog().getByRole('button', { name: 'Record sent and lock these fields' }).isEnabled(),
    ).toBe(true);
    await w.page.keyboard.press('Escape');
    await act.closed();
    expect((await editions()).second.lock).toBeNull();
  });

  it('is made ready from the list of what is missing', async () => {
    await w.page.getByText('Not ready: 4 things missing').first().click();
    await w.picture('next-03-missing');
    for (const [kind, name] of [
      ['interior', 'salt-2-inside.pdf'],
      ['cover', 'salt-2-cover.pdf'],
    ] as const) {
      await w.press(`Record the file: Final ${kind} file of Paperback`);
      await act.field('File name').fill(name);
      await w.press('Record the file');
      await act.closed();
    }
    await w.press('Edit format: Publication date of Paperback');
    await act.field('Publication date').fill('2026-05-15');
    await act.field('On-sale date').fill('2026-05-15');
    await w.press('Save the format');
    await act.closed();
    await w.page.getByText('Ready to be sent').first().waitFor();
    expect(await missing('Paperback')).toEqual([]);
    const { second } = await editions();
    expect(
      second.formats[0]?.files.map((file) => [file.kind, file.fileName, file.finalOn, file.ended]),
    ).toEqual([
      ['cover', 'salt-2-cover.pdf', TODAY, null],
      ['interior', 'salt-2-inside.pdf', TODAY, null],
    ]);
    await w.press('Mark sent: Paperback on Printworks Direct');
    await dialog().getByText('From now on these are locked for ever.').waitFor();
    expect(await dialog().getByText('Not everything is there').count()).toBe(0);
    await w.page.keyboard.press('Escape');
    await act.closed();
  });

  it('keeps a superseded file, and withdraws one that was not final', async () => {
    await w.press('Record a file: Paperback');
    await act.field('Which file').selectOption('cover');
    await act.field('File name').fill('salt-2-cover-b.pdf');
    await w.press('Record the file');
    await act.closed();
    await w.press('Withdraw salt-2-cover-b.pdf');
    await act.field('Reason').fill('the spine is too wide');
    await w.press('Withdraw the file');
    await act.closed();
    const { second } = await editions();
    expect(
      second.formats[0]?.files.map((file) => [
        file.fileName,
        file.ended?.how ?? 'in force',
        file.ended?.reason,
      ]),
    ).toEqual([
      ['salt-2-inside.pdf', 'in force', undefined],
      ['salt-2-cover-b.pdf', 'withdrawn', 'the spine is too wide'],
      ['salt-2-cover.pdf', 'replaced', ''],
    ]);
    expect(await missing('Paperback')).toEqual(['file cover']);
  });

  it('has a copyright page for every format with every number, and bar codes one press away', async () => {
    // Puts the message line away, which lies behind the dialog otherwise.
    expect(await w.faults()).toEqual([]);
    await w.press('Copyright page: The Salt Almanac, 2nd edition');
    const text = await act.field('Paperback').inputValue();
    for (const part of [
      'Second edition, with a new foreword',
      'Published in 2026 by Halyard & Fen',
      'First published in 2019',
      'ISBN 979-8-969999-03-9 (Paperback)',
      'ISBN 979-8-969999-04-6 (E-book, EPUB)',
      'ISBN 979-8-969999-05-3 (Hardcover, jacket)',
    ])
      expect(text).toContain(part);
    expect(await w.faults()).toEqual([]);
    await w.picture('next-04-copyright');
    await w.page.keyboard.press('Escape');
    await act.closed();
    await w.press('Bar code: Hardcover (jacket)');
    await dialog().getByRole('heading', { name: 'Bar code of Hardcover (jacket)' }).waitFor();
    await w.page.keyboard.press('Escape');
    await act.closed();
  });

  it('stands beside the first edition field by field', async () => {
    const summary = w.page.getByText(/^Beside the first edition: \d+ to decide/);
    await summary.click();
    const table = w.page.getByRole('table', { name: /: Paperback$/ });
    await table.getByRole('row', { name: /Publication date.*2019-05-02.*2026-05-15.*changed/ }).waitFor();
    expect(await table.getByRole('row', { name: /Pages 288 288 carried/ }).count()).toBe(1);
    await summary.scrollIntoViewIfNeeded();
    await w.picture('next-05-beside');
    expect(await w.faults()).toEqual([]);
  });

  it('leads from the verdict to the next edition of another book, with what was said of it', async () => {
    const id = (await w.call('works.list', { search: 'Knots' })).works[0]?.id ?? 0;
    await w.go(`/work/${id}`);
    await w.press('New edition or reprint?: Knots for Small Hands, first edition');
    await act.say('Some passages', 'The subtitle changes', 'E-book (EPUB)');
    await dialog().getByText('New numbers are required.').waitFor();
    await w.press('Prepare the next edition');
    await act.field('Subtitle').fill('Thirty that hold');
    await expect.poll(() => act.field('Added format 1').inputValue()).toBe('ED');
    await w.press('Prepare the next edition');
    await act.closed();
    const [next, old] = (await w.call('works.get', { id })).editions;
    expect(next).toMatchObject({ number: 2, subtitle: 'Thirty that hold', replacesId: old?.id });
    expect(next?.formats.map((format) => format.name)).toEqual(['Hardcover (laminate)', 'E-book (EPUB)']);
    const { kept } = await w.call('editions.keptAdvice', { editionId: next?.id ?? 0 });
    expect(kept[0]?.verdict).toBe('new');
    expect(kept[0]?.lines.map((line) => line.title)).toContain('The subtitle changes');
    await w.page.getByText('New edition or reprint: what was answered').click();
    await w.picture('next-06-kept');
    expect(await w.faults()).toEqual([]);
    expect(await w.call('catalogue.check', {})).toMatchObject({ ok: true });
    expect(w.complaints).toEqual([]);
  });
});
