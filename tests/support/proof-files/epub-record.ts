import type { ProofRecord } from '../../../src/rules/proof-check/record.ts';
import { proofRecord } from './record.ts';

/** What is on record of the e-book of the demo press's second edition, with whatever a test changes. */
export function epubRecord(changes: Partial<ProofRecord> = {}): ProofRecord {
  return proofRecord({
    formatName: 'E-book (EPUB)',
    form: 'ED',
    formDetail: 'E101',
    made: 'e-book',
    isbn13: '9798969999046',
    siblings: [
      { isbn13: '9798969999022', name: 'Paperback' },
      { isbn13: '9798969999039', name: 'Hardcover (jacket)' },
    ],
    spent: [{ isbn13: '9798969999015', name: 'misprinted' }],
    pages: null,
    trimWidthUm: null,
    trimHeightUm: null,
    interior: null,
    paper: '',
    bulk: null,
    sheet: null,
    ...changes,
  });
}
