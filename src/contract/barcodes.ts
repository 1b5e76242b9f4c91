import { z } from 'zod';
import { operation, rowId } from './operation.ts';

export const drawBarcode = operation({
  name: 'barcodes.draw',
  kind: 'query',
  summary:
    'Draw the EAN-13 bar code of a format’s ISBN, with the ISBN above it and an optional price add-on, as SVG, PDF or PNG of true size.',
  input: z.object({
    formatId: rowId,
    as: z.enum(['svg', 'pdf', 'png']),
    /** Per cent of the nominal size, 80 to 200. */
    magnification: z.number().default(100),
    barWidthReductionUm: z.number().default(0),
    /** Dots per inch of a PNG. */
    dpi: z.int().default(600),
    /** `price` takes the format's price in that currency; `none` is 90000; without it there is no add-on. */
    addOn: z
      .union([z.object({ price: z.string().regex(/^[A-Z]{3}$/) }), z.literal('none')])
      .nullable()
      .default(null),
  }),
  output: z.object({
    fileName: z.string(),
    mediaType: z.string(),
    base64: z.string(),
    widthMm: z.number(),
    heightMm: z.number(),
    /** Advice, one sentence each. */
    notes: z.array(z.string()),
  }),
  errors: ['NOT_READY'],
});
