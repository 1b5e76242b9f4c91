import type { CheckLine, PdfFacts, TextLine } from '../../contract/proof-checks/facts.ts';
import { ordinal } from '../labels.ts';
import {
  linesHolding,
  linesNearly,
  linesWithoutLigatures,
  placeOf,
  type Searched,
  searched,
  textOf,
} from './find-text.ts';
import { placedLineOf } from './place-line.ts';
import type { ProofRecord } from './record.ts';
import { editionsIn, holdsText, isRightsLine, yearsIn } from './wording.ts';

/** The text of an interior, and which of its lines speak of the edition itself. */
export interface Words {
  all: Searched;
  /** Lines of pages with a notice of rights or a number. */
  imprint: readonly TextLine[];
  /** Those, and lines of title pages: pages with little on them. */
  front: readonly TextLine[];
}

/** A title page has fewer lines; a page of text some thirty. */
const SPARSE_LINES = 12;
const FRONT_PAGES = 16;

export function wordsOf({ lines, isbns }: PdfFacts): Words {
  const pages = Map.groupBy(lines, ({ page }) => page);
  const numbered = new Set(isbns.map(({ page }) => page));
  const isImprint = (page: number, own: readonly TextLine[]) =>
    numbered.has(page) || own.some(({ text }) => isRightsLine(text) && yearsIn(text).length > 0);
  const imprint = [...pages].filter(([page, own]) => isImprint(page, own));
  const titles = [...pages].filter(
    ([page, own]) =>
      page <= FRONT_PAGES && own.length <= SPARSE_LINES && !imprint.some(([one]) => one === page),
  );
  return {
    all: searched(lines),
    imprint: imprint.flatMap(([, own]) => own),
    front: [...titles, ...imprint].flatMap(([, own]) => own),
  };
}

const NO_TEXT =
  'No text could be read on the first pages: it may be drawn as shapes or pictures. Look at them yourself.';

interface Sought {
  check: string;
  label: string;
  text: string;
  missing: string;
}

/** A text that has to stand in the file: there, there with a slip, or not there. */
function soughtLine({ all }: Words, { check, label, text, missing }: Sought): CheckLine {
  const expected = text;
  if (all.lines.length === 0) return placedLineOf(check, label, 'cannot tell', { expected, advice: NO_TEXT });
  const there = linesHolding(all, text);
  if (there !== null)
    return placedLineOf(check, label, 'agreed', { expected, found: textOf(there), place: placeOf(there) });
  const lost = linesWithoutLigatures(all, text);
  if (lost !== null)
    return placedLineOf(check, label, 'cannot tell', {
      expected,
      found: textOf(lost),
      advice:
        'The text of the file has lost letters such as fi that are drawn as one sign: look at the page.',
      place: placeOf(lost),
    });
  const near = linesNearly(all, text);
  if (near !== null)
    return placedLineOf(check, label, 'differs', {
      expected,
      found: textOf(near),
      advice: 'A letter or two are not as recorded: correct the file or the record.',
      place: placeOf(near),
    });
  return placedLineOf(check, label, 'not found', { expected, advice: missing });
}

export function titleLines(words: Words, { title, subtitle }: ProofRecord): CheckLine[] {
  const titled = soughtLine(words, {
    check: 'interior.title',
    label: 'Title',
    text: title,
    missing: 'The first pages do not name the title as recorded; see that this is the right book.',
  });
  if (subtitle === '') return [titled];
  return [
    titled,
    soughtLine(words, {
      check: 'interior.subtitle',
      label: 'Subtitle',
      text: subtitle,
      missing: 'The first pages do not name the subtitle as recorded; have it added, or correct the record.',
    }),
  ];
}

/** 'Oskarsdal, Maren' as 'Maren Oskarsdal' and the other way round. */
function otherWay(name: string): string {
  const [family, given, ...more] = name.split(',').map((part) => part.trim());
  return family && given && more.length === 0 ? `${given} ${family}` : name;
}

/** A line for every contributor, in whatever order the file names them. */
export function contributorLines(words: Words, { contributors }: ProofRecord): CheckLine[] {
  return contributors.map(({ name, roleName }) =>
    soughtLine(words, {
      check: 'interior.contributor',
      label: roleName,
      text: otherWay(name),
      missing: `${otherWay(name)} (${roleName.toLowerCase()}) is not named on the first pages or at the end; have the name added, or correct the record.`,
    }),
  );
}

export function imprintLine(words: Words, { imprint, publisher }: ProofRecord): CheckLine {
  const label = 'Imprint';
  const [first, second] = [imprint, publisher].filter(Boolean);
  if (first === undefined)
    return placedLineOf('interior.imprint', label, 'cannot tell', {
      advice: 'No imprint or publisher is recorded.',
    });
  const sought = (text: string) =>
    soughtLine(words, {
      check: 'interior.imprint',
      label,
      text,
      missing: 'Neither title page nor the back of it names the imprint as recorded.',
    });
  const line = sought(first);
  if (line.state === 'agreed' || second === undefined || second === first) return line;
  const other = sought(second);
  return other.state === 'agreed' ? other : line;
}

/** What one line, or two in a row, say of an edition. */
function statedEditions(lines: readonly TextLine[]): { editions: number[]; lines: TextLine[] }[] {
  return lines.flatMap((line, i) => {
    const editions = editionsIn(line.text);
    if (editions.length > 0) return [{ editions, lines: [line] }];
    const next = lines[i + 1];
    if (next === undefined || next.page !== line.page || editionsIn(next.text).length > 0) return [];
    const both = editionsIn(`${line.text} ${next.text}`);
    return both.length > 0 ? [{ editions: both, lines: [line, next] }] : [];
  });
}

export function editionLine(words: Words, record: ProofRecord): CheckLine {
  const label = 'Edition statement';
  const own = record.ordinal ?? 1;
  const expected = record.statement || (record.ordinal === null ? '' : `${ordinal(own)} edition`);
  const stated = statedEditions(words.front);
  // The history of printings names earlier editions too: the highest is the file's own.
  const highest = Math.max(0, ...stated.flatMap(({ editions }) => editions));
  const at = stated.find(({ editions }) => editions.includes(highest))?.lines;
  const literal = record.statement === '' ? null : linesHolding(searched(words.front), record.statement);
  const foreign = foreignStatement(words, record);
  const line = (state: CheckLine['state'], seen: readonly TextLine[] | null | undefined, advice = '') =>
    placedLineOf('interior.edition', label, state, {
      expected,
      found: seen ? textOf(seen) : '',
      advice,
      place: seen ? placeOf(seen) : null,
    });
  if (words.all.lines.length === 0) return line('cannot tell', null, NO_TEXT);
  if (highest > 0 && highest !== own)
    return line(
      'differs',
      at,
      `The file states the ${ordinal(highest)} edition; see that it is not another edition’s file.`,
    );
  if (literal !== null) return line('agreed', literal);
  if (foreign !== null)
    return line('differs', foreign, 'This is the statement of another edition of the work.');
  if (highest === own) return line('agreed', at);
  if (expected === '' || (own === 1 && record.statement === '')) return line('agreed', null);
  return line('not found', null, 'The file does not say which edition it is; have the statement added.');
}

/** The statement of another edition that is no part of this one's: 'Revised edition' under 'Enlarged edition'. */
function foreignStatement(
  { front }: Words,
  { statement, otherEditions }: ProofRecord,
): readonly TextLine[] | null {
  for (const other of otherEditions) {
    if (other.statement === '' || editionsIn(other.statement).length > 0) continue;
    if (statement !== '' && holdsText(statement, other.statement)) continue;
    const lines = linesHolding(searched(front), other.statement);
    if (lines !== null) return lines;
  }
  return null;
}

/** A notice of rights may go on in the next line: '© Maren Oskarsdal' / '2019, 2027'. */
function noticesOf(lines: readonly TextLine[]): TextLine[][] {
  return lines.flatMap((line, i) => {
    if (!isRightsLine(line.text)) return [];
    const next = lines[i + 1];
    return yearsIn(line.text).length === 0 && next?.page === line.page ? [[line, next]] : [[line]];
  });
}

export function yearLine({ all, imprint }: Words, { year }: ProofRecord): CheckLine {
  const label = 'Year in the notice of copyright';
  const notices = noticesOf(imprint).filter((lines) => lines.some(({ text }) => yearsIn(text).length > 0));
  const named = (lines: readonly TextLine[]) => lines.flatMap(({ text }) => yearsIn(text));
  const years = [...new Set(notices.flatMap(named))];
  const own = notices.find((lines) => year !== null && named(lines).includes(year));
  const seen = own ?? notices[0];
  const line = (state: CheckLine['state'], advice = '') =>
    placedLineOf('interior.year', label, state, {
      expected: year === null ? '' : String(year),
      found: years.join(', '),
      advice,
      place: seen ? placeOf(seen) : null,
    });
  if (year === null) return line('cannot tell', 'No publication date is recorded to hold it against.');
  if (all.lines.length === 0) return line('cannot tell', NO_TEXT);
  if (own !== undefined) return line('agreed');
  if (years.length === 0)
    return line('not found', 'No notice of copyright with a year was found; have it added.');
  return line(
    'differs',
    `The notice names ${years.join(', ')}; see that this is not another edition’s file.`,
  );
}
