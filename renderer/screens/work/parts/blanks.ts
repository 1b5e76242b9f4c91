import type { EditionFields } from '../../../../src/contract/editions.ts';
import type { FormatFields } from '../../../../src/contract/formats.ts';

// Kept here and not taken from the contract's own blanks, since importing those would bring every schema into the window.

/** An edition on which nothing is recorded yet. */
export function blankEdition(known: Pick<EditionFields, 'title' | 'language' | 'imprint'>): EditionFields {
  return {
    subtitle: '',
    number: null,
    statement: '',
    contributors: [{ role: 'A01', name: '' }],
    series: '',
    seriesNumber: '',
    description: '',
    keywords: [],
    subjects: [],
    audience: 'general',
    ageFrom: null,
    ageTo: null,
    ...known,
  };
}

/** A format on which nothing but its form is recorded yet. */
export function blankFormat(form: string): FormatFields {
  return {
    form,
    formDetail: null,
    caseKind: null,
    trimWidthUm: null,
    trimHeightUm: null,
    pages: null,
    durationMinutes: null,
    interiorColour: null,
    paper: '',
    finish: null,
    insideCoverPrint: false,
    largePrint: false,
    rightToLeft: false,
    publicationDate: null,
    onSaleDate: null,
    note: '',
    prices: [],
  };
}
