import type { CheckLine, PdfFacts, TextLine } from '../../contract/proof-checks/facts.ts';
import { shownIsbn } from '../isbn/index.ts';
import { ordinal } from '../labels.ts';
import { coverLine } from './cover-line.ts';
import { ownerOf } from './epub-numbers.ts';
import type { ProofRecord } from './record.ts';
import { bareText, editionsIn, holdsText, nearName } from './wording.ts';

const OUTLINED =
  'The cover holds no text that can be read: it was turned into outlines or a picture. Look at it yourself.';
/** Shorter texts without spaces turn up in others by chance. */
const LEAST_UNSPACED = 6;

const unspaced = (text: string) => bareText(text).replaceAll(' ', '');

/** The line that shows a text, alone or with those after it: titles run over several lines, and letters may be spaced. */
function lineWith(lines: readonly TextLine[], sought: string): TextLine | null {
  const single = lines.find(({ text }) => holdsText(text, sought));
  if (single) return single;
  const bare = unspaced(sought);
  for (let first = 0; first < lines.length; first += 1) {
    const begun = lines[first];
    if (begun === undefined) continue;
    const three = lines.slice(first, first + 4).map(({ text }) => text);
    if (holdsText(three.join(' '), sought) && !holdsText(three.slice(1).join(' '), sought)) return begun;
    if (bare.length >= LEAST_UNSPACED && unspaced(begun.text).includes(bare)) return begun;
  }
  return null;
}

const firstPage = ({ lines }: PdfFacts) => lines.filter(({ page }) => page === 1);

export function titleLine(facts: PdfFacts, record: ProofRecord): CheckLine {
  const said = { expected: record.title };
  const lines = firstPage(facts);
  if (lines.length === 0) return coverLine('title', 'Title', 'cannot tell', { ...said, advice: OUTLINED });
  const at = lineWith(lines, record.title);
  if (at) return coverLine('title', 'Title', 'agreed', { ...said, found: at.text, page: 1, box: at.box });
  return coverLine('title', 'Title', 'not found', {
    ...said,
    advice:
      'The title does not stand on the cover as recorded. See that this is the right cover; lettering that is drawn cannot be read.',
  });
}

/** Authors, or editors of a book without one, stand on the cover; others may (common practice, no source). */
function mainOf(record: ProofRecord): ProofRecord['contributors'] {
  const by = (role: string) => record.contributors.filter((one) => one.role === role);
  return by('A01').length > 0 ? by('A01') : by('B01');
}

export function namesLine(facts: PdfFacts, record: ProofRecord): CheckLine[] {
  const main = mainOf(record);
  if (main.length === 0) return [];
  const lines = firstPage(facts);
  const label = 'Contributors';
  const expected = main.map(({ name }) => name).join(', ');
  if (lines.length === 0)
    return [coverLine('contributors', label, 'cannot tell', { expected, advice: OUTLINED })];
  const others = record.contributors.filter((one) => !main.includes(one));
  const missing = main.filter(({ name }) => lineWith(lines, name) === null);
  const slips = [...missing, ...others].flatMap(({ name }) =>
    lineWith(lines, name)
      ? []
      : lines.filter(({ text }) => nearName(withoutRole(text), name)).map((line) => ({ name, line })),
  );
  const [slip] = slips;
  if (slip)
    return [
      coverLine('contributors', label, 'differs', {
        expected: slip.name,
        found: slip.line.text,
        advice: `“${slip.line.text}” may be a slip for ${slip.name}; have it set as recorded.`,
        page: 1,
        box: slip.line.box,
      }),
    ];
  if (missing.length > 0)
    return [
      coverLine('contributors', label, 'not found', {
        expected,
        advice: `${missing.map(({ name }) => name).join(', ')} does not stand on the cover as recorded. See that this is the right cover.`,
      }),
    ];
  const seen = lineWith(lines, main[0]?.name ?? '');
  const named = [...main, ...others.filter(({ name }) => lineWith(lines, name))];
  return [
    coverLine('contributors', label, 'agreed', {
      expected,
      found: named.map(({ name }) => name).join(', '),
      page: 1,
      box: seen?.box ?? null,
    }),
  ];
}

/** 'With a foreword by Tobias Wrenfield' as 'Tobias Wrenfield'. */
const withoutRole = (text: string) => text.replace(/^.{0,60}\bby\s+/i, '');

/** An edition that the cover names has to be this one; it need not name any. */
export function editionLine(facts: PdfFacts, record: ProofRecord): CheckLine[] {
  const label = 'Edition statement';
  const own = record.ordinal ?? 1;
  const expected = record.statement || `${ordinal(own)} edition`;
  const stated = firstPage(facts)
    .map((line) => ({ line, editions: editionsIn(line.text) }))
    .filter(({ editions }) => editions.length > 0);
  const foreign = stated.find(({ editions }) => !editions.includes(own));
  const at = (foreign ?? stated[0])?.line;
  if (at === undefined) return [];
  const said = { expected, found: at.text, page: 1, box: at.box };
  if (foreign === undefined) return [coverLine('edition', label, 'agreed', said)];
  return [
    coverLine('edition', label, 'differs', {
      ...said,
      advice: `The cover names the ${ordinal(foreign.editions[0] ?? 0)} edition; see that it is not the cover of another one.`,
    }),
  ];
}

/** The ISBN in type beside the bar code: the bar code's, and the record's (STANDARDS A13). */
export function typedIsbnLine(facts: PdfFacts, record: ProofRecord): CheckLine {
  const label = 'ISBN in type';
  const typed = facts.isbns.filter(({ page }) => page === 1);
  const foreign = typed.find(({ isbn13 }) => isbn13 !== record.isbn13);
  const at = foreign ?? typed[0];
  const said = {
    expected: record.isbn13 === null ? 'No number yet' : shownIsbn(record.isbn13),
    found: [...new Set(typed.map(({ isbn13, raw }) => (isbn13 === null ? raw : shownIsbn(isbn13))))].join(
      ', ',
    ),
    page: 1,
    box: at?.box ?? null,
  };
  const line = (state: CheckLine['state'], advice = '') =>
    coverLine('isbn', label, state, { ...said, advice });
  if (at === undefined)
    return firstPage(facts).length === 0
      ? line('cannot tell', OUTLINED)
      : line(
          'not found',
          'The ISBN belongs in readable type directly above the bar code; if it is there, it was drawn and has to be compared by eye.',
        );
  if (record.isbn13 === null) return line('cannot tell', 'Give this format its number first.');
  if (foreign === undefined) return line('agreed');
  if (foreign.isbn13 === null)
    return line('differs', `“${foreign.raw}” is no valid ISBN; have it corrected.`);
  const inBars = facts.barcodes.some(({ digits }) => digits === foreign.isbn13);
  return line(
    'differs',
    `${shownIsbn(foreign.isbn13)} is ${ownerOf(foreign.isbn13, record).words}${inBars ? ', and the bar code has it too' : ', and the bar code says otherwise'}. A cover bears the number of its own format alone.`,
  );
}
