import type { CheckLine, PdfFacts, SeenIsbn } from '../../contract/proof-checks/facts.ts';
import { shownIsbn } from '../isbn/index.ts';
import { ownerOf } from './epub-numbers.ts';
import { placedLineOf } from './place-line.ts';
import type { ProofRecord } from './record.ts';

const placeOf = ({ page, box }: SeenIsbn) => ({ page, box });

/** This format's own number, which has to stand on the back of its title page (ISBN Users' Manual, STANDARDS A13). */
export function ownIsbnLine({ isbns, lines }: PdfFacts, record: ProofRecord): CheckLine {
  const label = 'ISBN of this format';
  if (record.isbn13 === null)
    return placedLineOf('interior.isbn', label, 'cannot tell', {
      found: [...new Set(isbns.map(({ raw }) => raw))].join(', '),
      advice: 'Give this format its number first; a file is not final before it holds it.',
    });
  const expected = shownIsbn(record.isbn13);
  const own = isbns.find(({ isbn13 }) => isbn13 === record.isbn13);
  if (own !== undefined)
    return placedLineOf('interior.isbn', label, 'agreed', { expected, found: own.raw, place: placeOf(own) });
  const [other] = isbns;
  if (other !== undefined)
    return placedLineOf('interior.isbn', label, 'differs', {
      expected,
      found: [...new Set(isbns.map(({ raw }) => raw))].slice(0, 10).join(', '),
      advice:
        'The file holds numbers, but not the one of this format: see that it is the right file, and have the number put in.',
      place: placeOf(other),
    });
  if (lines.length === 0)
    return placedLineOf('interior.isbn', label, 'cannot tell', {
      expected,
      advice: 'No text could be read; look for the number yourself.',
    });
  return placedLineOf('interior.isbn', label, 'not found', {
    expected,
    advice: 'Have the number put on the back of the title page, with the format that it belongs to.',
  });
}

/** So many numbers that do not belong are told one by one. */
const MOST_TOLD = 20;

function complaint(seen: SeenIsbn, record: ProofRecord): string | null {
  if (seen.isbn13 === null) return 'This is no valid ISBN: a digit is wrong or missing.';
  const { kind, words } = ownerOf(seen.isbn13, record);
  if (kind === 'own' || kind === 'sibling') return null;
  if (kind === 'spent') return `${shownIsbn(seen.isbn13)} is ${words}; take it out.`;
  if (kind === 'other')
    return `${shownIsbn(seen.isbn13)} is ${words}; this may be the file of another edition.`;
  return `${shownIsbn(seen.isbn13)} is ${words}: correct it, or say why it stands there (another book that is named, for example).`;
}

/** Every number in the file belongs to this edition; each that does not has a line with its place. */
export function otherIsbnLines({ isbns }: PdfFacts, record: ProofRecord): CheckLine[] {
  const label = 'Other ISBNs in the file';
  const expected = 'numbers of this edition alone';
  const distinct = [
    ...new Map(isbns.map((seen) => [seen.isbn13 ?? seen.raw, seen] as const).reverse()).values(),
  ].reverse();
  const wrong = distinct.flatMap((seen) => {
    const advice = complaint(seen, record);
    return advice === null ? [] : [{ seen, advice }];
  });
  if (wrong.length === 0) {
    const others = distinct.filter(({ isbn13 }) => isbn13 !== record.isbn13);
    const [first] = others;
    return [
      placedLineOf('interior.isbns', label, 'agreed', {
        expected,
        found: others.map(({ raw }) => raw).join(', ') || 'none',
        place: first ? placeOf(first) : null,
      }),
    ];
  }
  return wrong.slice(0, MOST_TOLD).map(({ seen, advice }, i) =>
    placedLineOf('interior.isbns', label, 'differs', {
      expected,
      found:
        i === MOST_TOLD - 1 && wrong.length > MOST_TOLD
          ? `${seen.raw}, and ${wrong.length - MOST_TOLD} more`
          : seen.raw,
      advice,
      place: placeOf(seen),
    }),
  );
}
