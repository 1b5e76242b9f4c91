import { expect, test } from 'vitest';
import { bytesOf } from '../../renderer/lib/base64.ts';
import {
  addOnChoices,
  drawInput,
  FIRST_DRAFT,
  NO_PRICE,
  sizeInWords,
} from '../../renderer/screens/work/barcode/draft.ts';
import { drawBarcode } from '../../src/contract/barcodes.ts';

test('what is asked for is what the contract takes, with a resolution for a PNG alone', () => {
  for (const as of ['svg', 'pdf', 'png'] as const) {
    const input = drawInput(7, { ...FIRST_DRAFT, addOn: 'USD', dpi: 300 }, as);
    expect(drawBarcode.input.parse(input)).toMatchObject({ formatId: 7, as, addOn: { price: 'USD' } });
    expect(input?.dpi).toBe(as === 'png' ? 300 : undefined);
  }
  expect(drawInput(7, { ...FIRST_DRAFT, addOn: NO_PRICE }, 'svg')?.addOn).toBe('none');
  expect(drawInput(7, FIRST_DRAFT, 'svg')?.addOn).toBeNull();
});

test('nothing is asked for while a number is missing that the file needs', () => {
  const draft = { ...FIRST_DRAFT, dpi: undefined };
  expect(drawInput(7, draft, 'png')).toBeUndefined();
  expect(drawInput(7, draft, 'pdf')).toBeDefined();
  expect(drawInput(7, { ...FIRST_DRAFT, magnification: undefined }, 'svg')).toBeUndefined();
  expect(drawInput(7, { ...FIRST_DRAFT, reduction: undefined }, 'svg')).toBeUndefined();
});

test('each price of the format is offered between no add-on and the one without a price', () => {
  const values = addOnChoices([
    { amountMinor: 1250, currency: 'EUR', tax: 'including' },
    { amountMinor: 1499, currency: 'USD', tax: 'excluding' },
  ]).map((choice) => choice.value);
  expect(values.slice(1, 3)).toEqual(['EUR', 'USD']);
  expect(values.at(-1)).toBe(NO_PRICE);
});

test('a size is told in tenths of a millimetre, and bytes come out of base64 as they were', () => {
  expect(sizeInWords(37.29, 26, 'en')).toBe('37.3 mm wide and 26.0 mm high');
  expect([...bytesOf('AP8Q')]).toEqual([0, 255, 16]);
});
