import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestCatalogue, refusalOf, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
beforeAll(() => {
  catalogue = openTestCatalogue();
  catalogue.call('catalogue.demo', {});
});
afterAll(() => catalogue.close());

const formats = () =>
  catalogue
    .call('works.list', {})
    .works.flatMap((work) => catalogue.call('works.get', { id: work.id }).editions)
    .flatMap((edition) => edition.formats);
const ofForm = (form: string) => formats().find((format) => format.form === form)?.id ?? 0;
const text = (base64: string) => Buffer.from(base64, 'base64').toString('latin1');
const SIX_BY_NINE = { trimWidthUm: 152_400, trimHeightUm: 228_600, pages: 240 };
const POINTS_PER_UM = 72 / 25_400;

it('draws a template of true size: 6 × 9 in, 240 pages, 444 to the inch → 12.79 × 9.25 in (STANDARDS E2)', () => {
  const editionId = formats()[0]?.editionId ?? 0;
  const made = catalogue.call('formats.create', { editionId, form: 'BC', ...SIX_BY_NINE });
  const draw = (as: 'svg' | 'pdf') =>
    catalogue.call('covers.draw', { formatId: made.formatId, as, bulk: { pagesPerInch: 444 } });
  const { sheet, base64, figures } = draw('pdf');
  expect(Math.round((sheet.widthUm / 25_400) * 100) / 100).toBe(12.79);
  expect(sheet.heightUm).toBe(9.25 * 25_400);
  expect(figures.bleedUm).toBe(3_175);
  const box = (name: string) =>
    (new RegExp(`/${name} \\[([^\\]]+)\\]`).exec(text(base64))?.[1] ?? '').split(' ').map(Number);
  const [left = 0, foot = 0, right = 0, head = 0] = box('TrimBox');
  expect(box('MediaBox')[2]).toBeCloseTo(sheet.widthUm * POINTS_PER_UM, 3);
  expect(right - left).toBeCloseTo((sheet.widthUm - 2 * figures.bleedUm) * POINTS_PER_UM, 3);
  expect(head - foot).toBeCloseTo(648, 3);
  expect(text(draw('svg').base64)).toContain(`width="${sheet.widthUm / 1_000}mm" height="234.95mm"`);
});

it('takes the printer’s figures and papers from the settings, and those given over them', () => {
  catalogue.call('settings.update', {
    printerFigures: { bleedUm: 5_000, hingeUm: 8_000 },
    papers: [{ name: 'Harbour cream', bulk: { leafUm: 130 }, source: 'the mill' }],
  });
  expect(catalogue.call('covers.papers', {}).papers[0]).toMatchObject({ name: 'Harbour cream' });
  const hardback = ofForm('BB');
  const { sheet, figures } = catalogue.call('covers.draw', {
    formatId: hardback,
    as: 'svg',
    sheet: 'case',
    bulk: { leafUm: 130 },
    pages: 301,
    figures: { hingeUm: 9_000 },
  });
  expect(figures).toMatchObject({ bleedUm: 5_000, hingeUm: 9_000, turnInUm: 15_875 });
  expect(sheet.spineUm).toBe(151 * 130 + 3_175);
  expect(sheet.panels.map((panel) => panel.kind)).toEqual([
    'back cover',
    'back hinge',
    'spine',
    'front hinge',
    'front cover',
  ]);
});

it('says what is odd, and refuses what has no spine or no size', () => {
  const draw = (formatId: number, pages?: number) =>
    catalogue.call('covers.draw', {
      formatId,
      as: 'svg',
      bulk: { pagesPerInch: 400 },
      ...(pages ? { pages } : {}),
    });
  expect(draw(ofForm('BC'), 49).notes).toEqual([
    '49 pages are an odd count; a blank page is added, for a leaf has two.',
    'With fewer than 80 pages the spine carries no text.',
  ]);
  expect(refusalOf(() => draw(ofForm('ED')))).toMatchObject({ code: 'NOT_READY', field: 'formatId' });
  const editionId = formats()[0]?.editionId ?? 0;
  const bare = catalogue.call('formats.create', { editionId, form: 'BF' });
  expect(refusalOf(() => draw(bare.formatId))).toMatchObject({ code: 'NOT_READY' });
});

it('tries another trim and page count than the record has, bound in the multiple of the printer', () => {
  const editionId = formats()[0]?.editionId ?? 0;
  const { formatId } = catalogue.call('formats.create', { editionId, form: 'BC' });
  const trim = { widthUm: 152_400, heightUm: 228_600 };
  const ask = { formatId, as: 'svg' as const, bulk: { pagesPerInch: 444 } };
  expect(catalogue.refusal('covers.draw', ask)).toMatchObject({ code: 'NOT_READY', field: 'trim' });
  const figures = { bleedUm: 3_175 };
  const { sheet } = catalogue.call('covers.draw', { ...ask, trim, pages: 240, figures });
  expect(Math.round((sheet.widthUm / 25_400) * 100) / 100).toBe(12.79);
  const filled = catalogue.call('covers.draw', {
    ...ask,
    trim,
    pages: 237,
    figures: { ...figures, pageMultiple: 16 },
  });
  expect(filled.sheet.spineUm).toBe(sheet.spineUm);
  expect(filled.notes[0]).toBe('237 pages are bound as 240: blank ones are added up to a multiple of 16.');
  expect(
    catalogue.call('settings.update', { printerFigures: { pageMultiple: 4 } }).printerFigures.pageMultiple,
  ).toBe(4);
  expect(catalogue.refusal('covers.draw', { ...ask, trim: { widthUm: 1, heightUm: 1 } }).code).toBe(
    'BAD_INPUT',
  );
});
