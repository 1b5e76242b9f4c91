import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { CheckDetail } from '../../src/contract/proof-checks/checks.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { changed, type EpubParts, packed, SALT_ALMANAC } from '../support/proof-files/epub.ts';
import { drawInterior, SALT_ALMANAC as INTERIOR } from '../support/proof-files/interior.ts';
import { exported, stage } from '../support/staged.ts';

// From a file that is laid ready, through the real reader in its thread, to what is kept: the app alone, no window.

const NUMBERS = [
  ['Paperback', 'BC', '9798969999022'],
  ['Hardcover', 'BB', '9798969999039'],
  ['E-book', 'ED', '9798969999046'],
] as const;
const SUGAR = changed('OEBPS/package.opf', '>The Salt Almanac<', '>The Sugar Almanac<');

let c: TestCatalogue;
let ebook: number;
let listing: number;
let edition: number;

beforeEach(() => {
  c = openTestCatalogue('2026-11-25');
  c.call('settings.update', { publisher: 'Halyard & Fen' });
  c.call('blocks.add', { prefix: '979-8-969999' });
  const { workId } = c.call('works.create', { title: 'The Salt Almanac' });
  const { editionId } = c.call('editions.create', {
    workId,
    title: 'The Salt Almanac',
    number: 2,
    statement: 'Second edition',
    language: 'eng',
    imprint: 'Halyard & Fen',
    contributors: [
      { role: 'A01', name: 'Maren Oskarsdal' },
      { role: 'A23', name: 'Tobias Wrenfield' },
    ],
  });
  edition = editionId;
  for (const [, form, isbn] of NUMBERS) {
    const made = { editionId, form, ...(form === 'ED' ? { formDetail: 'E101' } : {}) };
    const { formatId } = c.call('formats.create', { ...made, publicationDate: '2027-03-04' });
    c.call('numbers.assign', { formatId, isbn });
    if (form === 'ED') ebook = formatId;
  }
  const { channelId } = c.call('channels.create', { name: 'Lanternshelf', kind: 'e-book' });
  listing = c.call('listings.create', { formatId: ebook, channelId }).listingId;
  c.call('listings.move', { id: listing, to: 'proof' });
});
afterEach(() => c.close());

async function check(parts: EpubParts, name = 'almanac.epub'): Promise<CheckDetail> {
  const file = stage(c, packed(parts), name);
  const { reading } = await c.read('proofChecks.read', { file, kind: 'e-book' });
  const { id } = c.call('proofChecks.record', { formatId: ebook, kind: 'e-book', reading });
  return c.call('proofChecks.show', { checkId: id });
}

const differing = (detail: CheckDetail) =>
  detail.lines.filter((line) => line.state === 'differs').map((line) => line.label);

describe('a final file held against the record', () => {
  it('agrees where it says what is recorded, and nothing stands in the way of clearing', async () => {
    const detail = await check(SALT_ALMANAC);
    expect(differing(detail)).toEqual([]);
    expect(detail).toMatchObject({ fileName: 'almanac.epub', inForce: true, final: 'none', intact: true });
    expect(detail.counts.agreed).toBeGreaterThan(8);
    c.call('listings.move', { id: listing, to: 'cleared' });
  });

  it('bars clearing while it differs, whichever way is tried, until the reason is given', async () => {
    const detail = await check(SUGAR);
    expect(differing(detail).length).toBeGreaterThan(0);
    for (const to of ['cleared', 'selling'] as const)
      expect(c.refusal('listings.move', { id: listing, to })).toMatchObject({
        code: 'STEP_REFUSED',
        message: expect.stringContaining('check of its e-book file almanac.epub on 2026-11-25 differs'),
      });
    for (const outcome of ['clear for sale', 'clear for own orders'] as const)
      expect(
        c.refusal('proofs.record', {
          listingId: listing,
          outcome,
          proof: 'electronic',
          ...(outcome === 'clear for own orders' ? { saleDay: '2027-03-04' } : {}),
        }).code,
      ).toBe('STEP_REFUSED');
    for (const line of detail.lines.filter(({ state }) => state === 'differs'))
      c.call('proofChecks.reason', { lineId: line.id, reason: 'The shop shows it so.' });
    const [first] = detail.lines.filter(({ state }) => state === 'differs');
    expect(c.refusal('proofChecks.reason', { lineId: first?.id ?? 0, reason: 'again' }).code).toBe(
      'ALREADY_EXISTS',
    );
    c.call('listings.move', { id: listing, to: 'cleared' });
    const kept = c.call('proofChecks.show', { checkId: detail.id });
    expect(kept.open).toBe(0);
    expect(kept.lines.find(({ id }) => id === first?.id)?.reason).toEqual({
      text: 'The shop shows it so.',
      on: '2026-11-25',
    });
    const again = await check(SUGAR, 'again.epub');
    expect(again.otherThanBefore).toBeNull();
    expect(again.lines.find(({ label }) => label === first?.label)?.earlierReason).toBe(
      'The shop shows it so.',
    );
  });

  it('tells the final file from another, in readiness and in the audit', async () => {
    const needs = () =>
      c
        .call('editions.readiness', { editionId: edition })
        .formats.find(({ formatId }) => formatId === ebook)
        ?.needs.find(({ need }) => need === 'check e-book')?.detail;
    const rules = () => c.call('audit.run', {}).findings.map(({ rule }) => rule);
    const clean = await check(SALT_ALMANAC);
    expect(needs()).toBe('checked on 2026-11-25: nothing differs');
    const { fileName, sha256 } = clean;
    c.call('formats.recordFile', { formatId: ebook, kind: 'e-book', fileName, sha256 });
    const wrong = await check(SUGAR, 'sugar.epub');
    expect(wrong).toMatchObject({ inForce: false, final: 'other' });
    expect(wrong.otherThanBefore).toEqual({ fileName: 'almanac.epub', checkedOn: '2026-11-25' });
    expect(c.call('proofChecks.show', { checkId: clean.id })).toMatchObject({ inForce: true, final: 'same' });
    expect(rules()).not.toContain('other-file-checked');
    c.call('formats.recordFile', {
      formatId: ebook,
      kind: 'e-book',
      fileName: 'new.epub',
      sha256: '0'.repeat(64),
    });
    expect(needs()).toBe('checked: other file than the final one');
    expect(rules()).toContain('other-file-checked');
    c.call('formats.recordFile', {
      formatId: ebook,
      kind: 'e-book',
      fileName: 'sugar.epub',
      sha256: wrong.sha256,
    });
    expect(rules()).toContain('final-file-differs');
    expect(needs()).toContain('without a reason, so it cannot be cleared');
  });

  it('is kept: the format is not removed, a past day does not know it, and the whole catalogue carries it', async () => {
    const { id } = await check(SUGAR);
    expect(c.call('proofChecks.list', { formatId: ebook }).checks).toHaveLength(1);
    c.setToday('2026-11-26');
    await check(SALT_ALMANAC, 'mended.epub');
    const then = c.call('proofChecks.list', { formatId: ebook, asOf: '2026-11-25' });
    expect(then.checks.map((one) => [one.id, one.inForce])).toEqual([[id, true]]);
    const json = exported(c, 'json');
    const to = openTestCatalogue('2026-11-26');
    to.call('catalogue.import', { file: stage(to, json) });
    expect(to.call('proofChecks.show', { checkId: id })).toMatchObject({
      fileName: 'almanac.epub',
      intact: true,
    });
    expect(exported(to, 'json').equals(json)).toBe(true);
    to.close();
    expect(c.call('catalogue.check', {})).toMatchObject({ ok: true });
  });

  it('is refused for what was never read, another kind, and a format that ended', async () => {
    const junk = (text: string) => ({
      formatId: ebook,
      kind: 'e-book' as const,
      reading: stage(c, text, 'a.json'),
    });
    for (const text of ['', '{', '{}', '[1]', '{"fileName":"a","bytes":-1}'])
      expect(c.refusal('proofChecks.record', junk(text))).toMatchObject({
        code: 'BAD_INPUT',
        field: 'reading',
      });
    const file = stage(c, packed(SALT_ALMANAC), 'a.epub');
    const { reading } = await c.read('proofChecks.read', { file, kind: 'e-book' });
    expect(c.refusal('proofChecks.record', { formatId: ebook, kind: 'interior', reading })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'kind',
    });
    expect(c.refusal('proofChecks.record', { formatId: 99, kind: 'e-book', reading }).code).toBe('NOT_FOUND');
    await expect(c.read('proofChecks.read', { file, kind: 'interior' })).rejects.toMatchObject({
      code: 'BAD_INPUT',
    });
    c.call('listings.move', { id: listing, to: 'unsent' });
    c.call('formats.cancel', { id: ebook, reason: 'given up' });
    expect(c.refusal('proofChecks.record', { formatId: ebook, kind: 'e-book', reading }).code).toBe(
      'FIELD_LOCKED',
    );
  });

  it('asks for the multiple of pages that the printer’s figures of the settings name', async () => {
    const { formatId } = c.call('formats.create', { editionId: edition, form: 'BC', pages: 22 });
    const multiple = async () => {
      const file = stage(c, await drawInterior(INTERIOR.slice(0, 22)), 'inside.pdf');
      const { reading } = await c.read('proofChecks.read', { file, kind: 'interior' });
      const { id } = c.call('proofChecks.record', { formatId, kind: 'interior', reading });
      const { lines } = c.call('proofChecks.show', { checkId: id });
      return lines.find(({ check }) => check === 'interior.multiple');
    };
    expect(await multiple()).toMatchObject({ state: 'agreed' });
    c.call('settings.update', { printerFigures: { pageMultiple: 4 } });
    expect(await multiple()).toMatchObject({
      state: 'differs',
      expected: 'a multiple of 4 (your printer, by Settings)',
    });
  });
});
