import type { CheckLine, EpubFacts, SeenIsbn } from '../../contract/proof-checks/facts.ts';
import { shownIsbn } from '../isbn/index.ts';
import { textLineOf } from './line.ts';
import type { OtherNumber, ProofRecord } from './record.ts';
import { holdsText } from './wording.ts';

/** Whose a number is by the record. */
export interface Owner {
  kind: 'own' | 'sibling' | 'other' | 'spent' | 'unknown';
  /** 'of the paperback of this edition' */
  words: string;
}

const named = (list: readonly OtherNumber[], isbn13: string) => list.find((one) => one.isbn13 === isbn13);

/** Whose a number is: this format's, another's of the edition, another edition's, a spent one, or nobody's here. */
export function ownerOf(isbn13: string, record: ProofRecord): Owner {
  if (isbn13 === record.isbn13) return { kind: 'own', words: 'of this format' };
  const spent = named(record.spent, isbn13);
  if (spent) return { kind: 'spent', words: `spent (${spent.name}) and must never be used again` };
  const sibling = named(record.siblings, isbn13);
  if (sibling) return { kind: 'sibling', words: `of another format of this edition, ${sibling.name}` };
  const other = named(record.others, isbn13);
  return other
    ? { kind: 'other', words: `of ${other.name}` }
    : { kind: 'unknown', words: 'not in this catalogue' };
}

const IDENTIFIER = 'ISBN in the file’s own data';
const shown = (isbn13: string | null) => (isbn13 === null ? '' : shownIsbn(isbn13));
const ownNumber = (record: ProofRecord) => (record.isbn13 === null ? 'No number yet' : shown(record.isbn13));

/**
 * The identifier of an e-book is its own ISBN and never that of another format (EPUB 3.3, dc:identifier; an ISBN names one
 * format, ISO 2108). The unique identifier itself may be another kind; the print ISBN may stand as dc:source.
 */
export function identifierLine(facts: EpubFacts, record: ProofRecord): CheckLine {
  const claimed = facts.identifiers.filter(({ claimsIsbn }) => claimsIsbn);
  const found = claimed.map(({ value, isbn13 }) => shown(isbn13) || value).join(', ');
  const line = (state: CheckLine['state'], advice = '') =>
    textLineOf('epub.identifier', IDENTIFIER, state, { expected: ownNumber(record), found, advice });
  if (record.isbn13 === null)
    return line('cannot tell', 'Give this format its number first, then have the e-book made with it.');
  if (claimed.length === 0)
    return line(
      'not found',
      'Have this format’s own ISBN put in as the identifier (dc:identifier) of the e-book.',
    );
  const invalid = claimed.find(({ isbn13 }) => isbn13 === null);
  if (invalid !== undefined)
    return line(
      'differs',
      `“${invalid.value.slice(0, 60)}” is marked as an ISBN and is none; put in the e-book’s own.`,
    );
  const foreign = claimed.map(({ isbn13 }) => isbn13 ?? '').filter((isbn13) => isbn13 !== record.isbn13);
  const [first] = foreign;
  if (first === undefined) return line('agreed');
  const owner = ownerOf(first, record);
  const place =
    owner.kind === 'sibling'
      ? ' The number of a printed format belongs in the source (dc:source), if anywhere.'
      : '';
  return line(
    'differs',
    `${shown(first)} is ${owner.words}; the identifier has to be this e-book’s own number.${place}`,
  );
}

const onCopyright = (facts: EpubFacts) => facts.isbns.filter(({ page }) => page === facts.copyrightPage);

/** The e-book's own number on its copyright page (ISBN Users' Manual, placement in electronic publications). */
export function copyrightIsbnLine(facts: EpubFacts, record: ProofRecord): CheckLine {
  const there = onCopyright(facts);
  const own = facts.isbns.filter(({ isbn13 }) => isbn13 !== null && isbn13 === record.isbn13);
  const [best] = [...own.filter(({ page }) => page === facts.copyrightPage), ...own];
  const found = there.map(({ isbn13, raw }) => shown(isbn13) || raw).join(', ');
  const line = (state: CheckLine['state'], said: { found: string; advice?: string; page?: number | null }) =>
    textLineOf('epub.copyright-isbn', 'ISBN on the copyright page', state, {
      expected: ownNumber(record),
      ...said,
    });
  if (record.isbn13 === null)
    return line('cannot tell', {
      found,
      advice: 'Give this format its number first.',
      page: facts.copyrightPage,
    });
  if (best !== undefined) return line('agreed', { found: shown(best.isbn13), page: best.page });
  if (facts.lines.length === 0)
    return line('cannot tell', {
      found,
      advice: 'No text could be read on the first pages; look at them yourself.',
    });
  const valid = there.find(({ isbn13 }) => isbn13 !== null);
  if (valid !== undefined)
    return line('differs', {
      found,
      advice: `${shown(valid.isbn13)} is ${ownerOf(valid.isbn13 ?? '', record).words}; this e-book’s own number is missing.`,
      page: facts.copyrightPage,
    });
  return line('not found', {
    found,
    advice:
      facts.copyrightPage === null
        ? 'No copyright page was found, and the number stands nowhere in the book; add it.'
        : 'Add this e-book’s own number to the copyright page.',
    page: facts.copyrightPage,
  });
}

const ANY_FORMAT =
  /(?<!\p{L})(?:print(?:ed)?|paper ?back|pbk|hard ?(?:back|cover)|hbk|soft ?cover|case ?bound|cloth|laminate|jacket(?:ed)?|board book|spiral|large print|e-?book|e-?pub|electronic|digital|pdf|audio ?book|audio|cd|taschenbuch|gebunden|druckausgabe|papier|imprimé|impreso|tapa dura|tapa blanda|gebonden)(?!\p{L})/iu;

/** Whether the format that a number belongs to is named in its line, or in one that stands alone beside it. */
function formatNamed(facts: EpubFacts, seen: SeenIsbn, name: string): boolean {
  const lines = facts.lines.filter(({ page }) => page === seen.page).map(({ text }) => text);
  const at = lines.findIndex((text) => text.includes(seen.raw));
  const near = [lines[at], lines[at - 1], lines[at + 1]].filter((text) => text !== undefined);
  const own = near.slice(0, 1);
  const beside = near.slice(1).filter((text) => text.length < 40 && !/\d{5}/.test(text));
  return [...own, ...beside].some(
    (text) => ANY_FORMAT.test(text) || holdsText(text, name.split(' (')[0] ?? name),
  );
}

/** What is wrong with one number that is not the e-book's own; null where nothing is. */
function complaint(facts: EpubFacts, seen: SeenIsbn, record: ProofRecord): string | null {
  if (seen.isbn13 === null) return `“${seen.raw}” is no valid ISBN; correct it.`;
  const { kind, words } = ownerOf(seen.isbn13, record);
  const number = shown(seen.isbn13);
  if (kind === 'spent') return `${number} is ${words}; take it out.`;
  if (kind === 'other') return `${number} is ${words}; this may be the file of another edition.`;
  if (kind !== 'sibling') return null;
  const name = named(record.siblings, seen.isbn13)?.name ?? '';
  return formatNamed(facts, seen, name)
    ? null
    : `${number} is ${words}, which is not named beside it; name the format, so that nobody takes it for the e-book’s.`;
}

/**
 * Numbers besides the e-book's own on its copyright page and as sources. Those of other books in lists further on are left
 * alone; a spent one is not, wherever it stands.
 */
export function otherIsbnsLine(facts: EpubFacts, record: ProofRecord): CheckLine {
  const label = 'Other ISBNs in the e-book';
  const asSource = facts.sources.flatMap((source): SeenIsbn[] => {
    const isbn13 = /97[89][-\s\d]{10,14}/.exec(source)?.[0].replaceAll(/\D/g, '') ?? null;
    return isbn13 !== null && ownerOf(isbn13, record).kind === 'other'
      ? [{ page: 1, raw: source, isbn13, box: null }]
      : [];
  });
  const isSpent = ({ isbn13 }: SeenIsbn) => isbn13 !== null && ownerOf(isbn13, record).kind === 'spent';
  const rest = facts.isbns.filter((seen) => seen.page !== facts.copyrightPage && isSpent(seen));
  const looked = [...onCopyright(facts), ...rest, ...asSource].filter(
    ({ isbn13 }) => isbn13 === null || isbn13 !== record.isbn13,
  );
  const found = [...new Set(looked.map(({ isbn13, raw }) => shown(isbn13) || raw))].join(', ');
  const wrong = looked.filter((seen) => complaint(facts, seen, record) !== null);
  const complaints = [...new Set(wrong.map((seen) => complaint(facts, seen, record)))];
  const expected = 'Only numbers of this edition, each with its format';
  if (wrong.length > 0)
    return textLineOf('epub.other-isbns', label, 'differs', {
      expected,
      found,
      advice: complaints.join(' '),
      page: wrong[0]?.page ?? null,
    });
  const unknown = looked.filter(
    ({ isbn13 }) => isbn13 !== null && ownerOf(isbn13, record).kind === 'unknown',
  );
  if (unknown.length === 0) return textLineOf('epub.other-isbns', label, 'agreed', { expected, found });
  return textLineOf('epub.other-isbns', label, 'cannot tell', {
    expected,
    found,
    advice: `${unknown.map(({ isbn13 }) => shown(isbn13)).join(', ')} is not in this catalogue; see that it belongs there.`,
    page: unknown[0]?.page ?? null,
  });
}
