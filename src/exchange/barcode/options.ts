import { z } from 'zod';
import { Refusal } from '../../contract/refusal.ts';
import { checkDigit13 } from '../../rules/isbn/index.ts';
import { addOnChoice, addOnDigits, addOnNotes } from './add-on.ts';

/** Smallest and largest magnification of EAN-13 at retail, in percent (STANDARDS B1). */
export const MAGNIFICATION = { min: 80, max: 200 } as const;

/** Device resolutions a picture may be asked for, in dots per inch; the largest is a plate setter's. */
const DPI = { min: 150, max: 2540 } as const;

const magnificationText = `The magnification must be a number from ${MAGNIFICATION.min} to ${MAGNIFICATION.max} per cent: GS1 allows no bar code on goods at retail outside these.`;
const dpiText = `The resolution of a picture must be a whole number from ${DPI.min} to ${DPI.max} dots per inch.`;
const reductionText = 'The bar width reduction must be a number of micrometres, 0 or more.';

const barcodeOptions = z.object({
  /** Thirteen digits without hyphens. */
  isbn13: z.string('Give the ISBN as thirteen digits.'),
  /** The hyphenated ISBN for the line above the bars, with or without 'ISBN ' before it; null leaves the line out. */
  isbnLine: z.string('Give the line above the bars as text, or null to leave it out.').nullable(),
  addOn: addOnChoice.nullable(),
  /** Per cent of the nominal size; 100 is a module of 0.330 mm. */
  magnification: z
    .number(magnificationText)
    .min(MAGNIFICATION.min, magnificationText)
    .max(MAGNIFICATION.max, magnificationText),
  /** How much narrower than its modules each bar is drawn, against ink spread, in micrometres. */
  barWidthReductionUm: z.number(reductionText).min(0, reductionText).default(0),
  /** A line below the digits, such as 'INVENTED - NEVER PRINT' for a number that must not reach a press. */
  caution: z
    .string()
    .regex(
      /^[A-Z0-9 -]{1,30}$/,
      'The line below the digits takes capital letters, digits, spaces and hyphens, 30 at most.',
    )
    .nullable()
    .default(null),
});

const barcodePngOptions = barcodeOptions.extend({
  dpi: z.int(dpiText).min(DPI.min, dpiText).max(DPI.max, dpiText),
});

export type BarcodeOptions = z.input<typeof barcodeOptions>;
export type BarcodePngOptions = z.input<typeof barcodePngOptions>;

/** What is drawn, after every check: the number, its line, the add-on's digits, the reduction, and advice. */
export interface BarcodeContent {
  isbn13: string;
  isbnLine: string | null;
  addOn: string | null;
  magnification: number;
  barWidthReductionUm: number;
  caution: string | null;
  notes: string[];
}

/** Checks options for a vector file. @throws Refusal BAD_INPUT naming the field */
export function parseOptions(input: BarcodeOptions): BarcodeContent {
  return toContent(parseWith(barcodeOptions, input));
}

/** Checks options for a picture. @throws Refusal BAD_INPUT naming the field */
export function parsePngOptions(input: BarcodePngOptions): { content: BarcodeContent; dpi: number } {
  const options = parseWith(barcodePngOptions, input);
  return { content: toContent(options), dpi: options.dpi };
}

function parseWith<T extends z.ZodType>(schema: T, input: unknown): z.output<T> {
  const result = schema.safeParse(input);
  if (result.success) return result.data;
  const issue = result.error.issues[0];
  throw new Refusal('BAD_INPUT', issue?.message ?? 'The bar code cannot be drawn.', issue?.path.join('.'));
}

function toContent(options: z.output<typeof barcodeOptions>): BarcodeContent {
  checkIsbn(options.isbn13);
  return {
    isbn13: options.isbn13,
    isbnLine: options.isbnLine === null ? null : toLine(options.isbnLine, options.isbn13),
    addOn: options.addOn === null ? null : addOnDigits(options.addOn),
    magnification: options.magnification,
    barWidthReductionUm: options.barWidthReductionUm,
    caution: options.caution,
    notes: options.addOn === null ? [] : addOnNotes(options.addOn),
  };
}

/** Form, prefix 978 or 979, and check digit (STANDARDS A3, A4); ranges are not looked up here. */
function checkIsbn(isbn13: string): void {
  const refuse = (message: string) => new Refusal('BAD_INPUT', message, 'isbn13');
  if (!/^\d{13}$/.test(isbn13))
    throw refuse(`'${isbn13}' is not an ISBN of thirteen digits: give the digits without hyphens or spaces.`);
  if (!/^97[89]/.test(isbn13))
    throw refuse(`${isbn13} is not an ISBN: the first three digits must be 978 or 979.`);
  const right = checkDigit13(isbn13.slice(0, 12));
  if (isbn13[12] !== right)
    throw refuse(
      `The check digit of ${isbn13} is wrong: after ${isbn13.slice(0, 12)} it would be ${right}; look for a mistyped digit.`,
    );
}

/** Brings the line to the form 'ISBN 978-…': five elements that spell the very number in the bars. */
function toLine(line: string, isbn13: string): string {
  const text = line.trim().replace(/^ISBN\s*/, '');
  if (!/^97[89]([- ])\d{1,5}\1\d{1,7}\1\d{1,6}\1\d$/.test(text))
    throw new Refusal(
      'BAD_INPUT',
      `The line above the bars, '${line}', is not an ISBN in five parts: write it like 978-0-306-40615-7.`,
      'isbnLine',
    );
  if (text.replace(/[- ]/g, '') !== isbn13)
    throw new Refusal(
      'BAD_INPUT',
      `The line above the bars says ${text}, but the bars say ${isbn13}: give both the same number.`,
      'isbnLine',
    );
  return `ISBN ${text}`;
}
