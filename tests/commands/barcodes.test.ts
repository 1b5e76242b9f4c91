import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { readWithZxing } from '../support/zxing.ts';

let catalogue: TestCatalogue;
beforeAll(() => {
  catalogue = openTestCatalogue();
  catalogue.call('catalogue.demo', {});
});
afterAll(() => catalogue.close());

const paperback = () => catalogue.call('works.get', { id: 2 }).editions[0]?.formats[0];

it('draws the bar code of a format with its price, and says on it that the demo’s number is invented', () => {
  const svg = catalogue.call('barcodes.draw', {
    formatId: paperback()?.id ?? 0,
    as: 'svg',
    addOn: { price: 'GBP' },
  });
  const plain = catalogue.call('barcodes.draw', { formatId: paperback()?.id ?? 0, as: 'svg' });
  expect(svg.fileName).toBe('9798969999039-invented-never-print.svg');
  expect(svg.widthMm).toBeGreaterThan(plain.widthMm);
  expect(Buffer.from(svg.base64, 'base64').toString()).toContain(
    `width="${Number(svg.widthMm.toFixed(3))}mm"`,
  );
});

it('can be read back from its picture', async () => {
  const png = catalogue.call('barcodes.draw', {
    formatId: paperback()?.id ?? 0,
    as: 'png',
    dpi: 300,
    addOn: { price: 'GBP' },
  });
  expect((await readWithZxing(Buffer.from(png.base64, 'base64'))).replaceAll(' ', '')).toBe(
    '979896999903900999',
  );
});

it('refuses a format without a number, a missing price, and a cancelled format', () => {
  const audiobook = catalogue.call('works.list', { search: 'Fen Light' }).works[0]?.formats[0]?.id ?? 0;
  expect(catalogue.refusal('barcodes.draw', { formatId: audiobook, as: 'svg' }).code).toBe('NOT_READY');
  const id = paperback()?.id ?? 0;
  expect(
    catalogue.refusal('barcodes.draw', { formatId: id, as: 'svg', addOn: { price: 'USD' } }),
  ).toMatchObject({ code: 'NOT_READY', field: 'addOn' });
  expect(catalogue.refusal('barcodes.draw', { formatId: id, as: 'svg', magnification: 70 })).toMatchObject({
    code: 'BAD_INPUT',
    field: 'magnification',
  });
  catalogue.call('formats.cancel', { id, reason: 'not this spring' });
  expect(catalogue.refusal('barcodes.draw', { formatId: id, as: 'svg' }).message).toContain('spent');
});
