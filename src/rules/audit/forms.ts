import { madeOf } from '../../contract/terms.ts';
import type { FormatFacts } from './facts.ts';
import {
  each,
  hasEnded,
  isSubmitted,
  NUMBER_PER_FILE_FORMAT,
  NUMBER_PER_FORM,
  ofFormat,
  PRACTICE,
  type Rule,
  UNCHANGED_KEEPS,
} from './rule.ts';

// What a format needs to be one definite product.

/** From its number on, what tells a format apart from its siblings should be settled. */
function isSettled(format: FormatFacts): boolean {
  return !hasEnded(format) && (format.number !== null || isSubmitted(format));
}

/** All that makes two formats of an edition different products. */
function productKey(format: FormatFacts): string {
  const { form, formDetail, caseKind, largePrint, trimWidthUm, trimHeightUm, interiorColour } = format;
  return [form, formDetail, caseKind, largePrint, trimWidthUm, trimHeightUm, interiorColour].join('/');
}

/** List 175 codes begin with A for audio, B for printed books and E for e-books; others fit several forms. */
const DETAIL_OF = { A: 'audio', B: 'print', E: 'e-book' } as const;

export const formRules: readonly Rule[] = [
  {
    id: 'form-twice-in-edition',
    sentence:
      'An edition has each product form once: two formats differ in form, file format, case, print size, trim or colour.',
    severity: 'should fix',
    mend: 'Say what tells the two apart, or cancel the one that was recorded twice; one product has one number.',
    source: UNCHANGED_KEEPS,
    find: (facts) =>
      facts.editions.flatMap((edition) => {
        const taken = new Set<string>();
        return each(edition.formats, ofFormat, (format) => {
          if (hasEnded(format)) return null;
          const again = taken.has(productKey(format));
          taken.add(productKey(format));
          return again
            ? `${edition.label} has more than one format ${format.name} with nothing to tell them apart.`
            : null;
        });
      }),
  },
  {
    id: 'file-format-of-other-form',
    sentence: 'The detail of a product form fits the form: no audio detail on a printed book.',
    severity: 'should fix',
    mend: 'Correct the form or its detail before the format is sent; both lock then.',
    source: NUMBER_PER_FORM,
    find: (facts) =>
      each(facts.formats, ofFormat, (format) => {
        const made = DETAIL_OF[format.formDetail?.[0] as keyof typeof DETAIL_OF];
        return made && made !== madeOf(format.form) && !hasEnded(format)
          ? `${format.label} is made as ${madeOf(format.form)}, but its detail ${format.formDetail} belongs to ${made}.`
          : null;
      }),
  },
  {
    id: 'digital-without-file-format',
    sentence: 'An e-book or audiobook download says its file format.',
    severity: 'should fix',
    mend: 'Choose the file format before the format is sent; it locks then, and another file format needs a number of its own.',
    source: NUMBER_PER_FILE_FORMAT,
    find: (facts) =>
      each(facts.formats, ofFormat, (format) => {
        const digital = madeOf(format.form) === 'e-book' || format.form === 'AJ';
        return digital && format.formDetail === null && isSettled(format)
          ? `${format.label} does not say its file format.`
          : null;
      }),
  },
  {
    id: 'hardcover-without-case',
    sentence: 'A hardcover says whether its case is laminated, cloth or jacketed.',
    severity: 'should fix',
    mend: 'Choose the kind of case before the format is sent; it locks then.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.formats, ofFormat, (format) =>
        format.form === 'BB' && format.caseKind === null && isSettled(format)
          ? `${format.label} does not say its kind of case.`
          : null,
      ),
  },
  {
    id: 'print-without-measures',
    sentence: 'A printed format that was sent has its trim size and its number of pages.',
    severity: 'should fix',
    mend: 'Enter trim size and pages as in the files that were sent; spine and cover follow from them.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.formats, ofFormat, (format) => {
        if (madeOf(format.form) !== 'print' || !isSubmitted(format)) return null;
        const missing = [
          format.trimWidthUm === null && 'trim size',
          format.pages === null && 'number of pages',
        ];
        const names = missing.filter((name) => name !== false).join(' and ');
        return names === '' ? null : `${format.label} has no ${names}.`;
      }),
  },
  {
    id: 'audio-without-duration',
    sentence: 'An audiobook that was sent has its duration.',
    severity: 'should fix',
    mend: 'Enter the duration in minutes.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.formats, ofFormat, (format) =>
        madeOf(format.form) === 'audio' && format.durationMinutes === null && isSubmitted(format)
          ? `${format.label} has no duration.`
          : null,
      ),
  },
  {
    id: 'odd-page-count',
    sentence: 'A printed format has an even number of pages, two to a leaf.',
    severity: 'note',
    mend: 'Count the blank page too, or add one; a printer adds it otherwise, and the spine follows the padded count.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.formats, ofFormat, (format) =>
        madeOf(format.form) === 'print' && (format.pages ?? 0) % 2 === 1 && !hasEnded(format)
          ? `${format.label} has ${format.pages} pages, an odd number.`
          : null,
      ),
  },
];
