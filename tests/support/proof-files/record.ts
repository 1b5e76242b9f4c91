import { USUAL_FIGURES } from '../../../src/rules/geometry/figures.ts';
import { type ProofRecord, USUAL_PROOF_FIGURES } from '../../../src/rules/proof-check/record.ts';

/** What is on record of an invented hardcover of the demo press, with whatever a test changes. */
export function proofRecord(changes: Partial<ProofRecord> = {}): ProofRecord {
  return {
    title: 'The Salt Almanac',
    subtitle: '',
    statement: 'Second edition',
    ordinal: 2,
    otherEditions: [{ statement: '', ordinal: 1 }],
    contributors: [
      { role: 'A01', roleName: 'Author', name: 'Maren Oskarsdal' },
      { role: 'A23', roleName: 'Foreword', name: 'Tobias Wrenfield' },
    ],
    language: 'eng',
    imprint: 'Halyard & Fen',
    publisher: 'Halyard & Fen',
    series: '',
    seriesNumber: '',
    year: 2027,
    earlierYears: [2019],
    formatName: 'Hardcover (jacket)',
    form: 'BB',
    formDetail: null,
    made: 'print',
    isbn13: '9798969999039',
    siblings: [
      { isbn13: '9798969999022', name: 'Paperback' },
      { isbn13: '9798969999046', name: 'E-book (EPUB)' },
    ],
    others: [{ isbn13: '9798969999008', name: 'Paperback, first edition' }],
    spent: [],
    pages: 320,
    trimWidthUm: 139_700,
    trimHeightUm: 215_900,
    interior: 'black and white',
    insideCoverPrint: false,
    rightToLeft: false,
    paper: 'Cream, print on demand',
    bulk: { pagesPerInch: 400 },
    sheet: 'jacket',
    printer: USUAL_FIGURES,
    pageMultiples: [],
    prices: [{ currency: 'EUR', amountMinor: 2_499 }],
    durationMinutes: null,
    lengthUnit: 'in',
    figures: USUAL_PROOF_FIGURES,
    ...changes,
  };
}
