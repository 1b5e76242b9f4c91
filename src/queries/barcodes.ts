import { Refusal } from '../contract/refusal.ts';
import {
  type BarcodeOptions,
  barcodeGeometry,
  barcodePdf,
  barcodePng,
  barcodeSvg,
} from '../exchange/barcode/index.ts';
import { hyphenate } from '../rules/isbn/index.ts';
import { formatById, type StoredFormat } from '../store/formats.ts';
import { isDemo } from '../store/settings.ts';
import type { Queries } from './context.ts';

type AddOn = { price: string } | 'none' | null;

function addOnOf(format: StoredFormat, addOn: AddOn): BarcodeOptions['addOn'] {
  if (addOn === null) return null;
  if (addOn === 'none') return { kind: 'none' };
  const price = format.prices.find((candidate) => candidate.currency === addOn.price);
  if (!price)
    throw new Refusal(
      'NOT_READY',
      `This format has no price in ${addOn.price}; enter it first, or draw the code without a price.`,
      'addOn',
    );
  return { kind: 'price', amountMinor: price.amountMinor, currency: price.currency };
}

const MEDIA = { svg: 'image/svg+xml', pdf: 'application/pdf', png: 'image/png' } as const;

function bytesOf(as: keyof typeof MEDIA, options: BarcodeOptions, dpi: number): Uint8Array {
  if (as === 'png') return barcodePng({ ...options, dpi });
  return as === 'pdf' ? barcodePdf(options) : new TextEncoder().encode(barcodeSvg(options));
}

export const barcodeQueries = {
  'barcodes.draw': ({ db }, input) => {
    const format = formatById(db, input.formatId);
    if (!format) throw new Refusal('NOT_FOUND', `There is no format ${input.formatId}.`, 'formatId');
    if (!format.isbn13)
      throw new Refusal(
        'NOT_READY',
        'This format has no number yet; take one before its bar code is drawn.',
        'formatId',
      );
    if (format.standing === 'cancelled')
      throw new Refusal(
        'NOT_READY',
        'This format was cancelled and its number is spent; it must not be printed.',
        'formatId',
      );
    const demo = isDemo(db);
    const options: BarcodeOptions = {
      isbn13: format.isbn13,
      isbnLine: hyphenate(format.isbn13),
      addOn: addOnOf(format, input.addOn),
      magnification: input.magnification,
      barWidthReductionUm: input.barWidthReductionUm,
      caution: demo ? 'INVENTED - NEVER PRINT' : null,
    };
    const geometry = barcodeGeometry(options);
    return {
      fileName: `${format.isbn13}${demo ? '-invented-never-print' : ''}.${input.as}`,
      mediaType: MEDIA[input.as],
      base64: Buffer.from(bytesOf(input.as, options, input.dpi)).toString('base64'),
      widthMm: geometry.widthMm,
      heightMm: geometry.heightMm,
      notes: geometry.notes,
    };
  },
} satisfies Queries<'barcodes.draw'>;
