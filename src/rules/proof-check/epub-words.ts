import type { CheckLine, EpubFacts } from '../../contract/proof-checks/facts.ts';
import { ordinal } from '../labels.ts';
import { sameTitle } from '../same-title.ts';
import { textLineOf } from './line.ts';
import type { ProofRecord } from './record.ts';
import { bareText, editionsIn, holdsText, isRightsLine, yearsIn } from './wording.ts';

const SIDE_TITLES = ['subtitle', 'collection', 'edition', 'short'];

/** The title that reading systems show: the one marked main, or the first that is nothing else. */
function mainTitle(facts: EpubFacts): string {
  const main = facts.titles.find(({ kind }) => kind === 'main');
  return (main ?? facts.titles.find(({ kind }) => !SIDE_TITLES.includes(kind)))?.text ?? '';
}

/** A title without the statement of its edition behind it: 'The Salt Almanac (second edition)'. */
function withoutStatement(title: string, record: ProofRecord): string {
  const [, head = '', tail = ''] = /^(.*?)\s*[,:(–—-]\s*([^,:(–—]+?)\)?$/.exec(title) ?? [];
  const stated = editionsIn(tail);
  const own =
    bareText(tail) === bareText(record.statement) || (stated.length === 1 && stated[0] === record.ordinal);
  return head !== '' && tail !== '' && own ? head : title;
}

export function titleLine(facts: EpubFacts, record: ProofRecord): CheckLine {
  const main = mainTitle(facts);
  const said = { expected: record.title, found: main };
  if (main === '')
    return textLineOf('epub.title', 'Title in the file’s own data', 'not found', {
      ...said,
      advice: 'Have the title put in (dc:title); without it shops and readers show the file’s name.',
    });
  const same = [main, withoutStatement(main, record)].some((title) => sameTitle(title, record));
  return same
    ? textLineOf('epub.title', 'Title in the file’s own data', 'agreed', said)
    : textLineOf('epub.title', 'Title in the file’s own data', 'differs', {
        ...said,
        advice: 'See whether this is the right file; if it is, have the title written as recorded.',
      });
}

export function subtitleLine(facts: EpubFacts, record: ProofRecord): CheckLine[] {
  if (record.subtitle === '') return [];
  const inData = facts.titles.find(({ text }) => holdsText(text, record.subtitle));
  const inBook = facts.lines.find(({ text }) => holdsText(text, record.subtitle));
  const given = facts.titles.find(({ kind }) => kind === 'subtitle');
  const expected = record.subtitle;
  if (given !== undefined && inData === undefined)
    return [
      textLineOf('epub.subtitle', 'Subtitle', 'differs', {
        expected,
        found: given.text,
        advice: 'Have the subtitle written as recorded.',
      }),
    ];
  const found = inData?.text ?? inBook?.text ?? '';
  const state = found === '' ? 'not found' : 'agreed';
  const advice =
    found === ''
      ? 'The subtitle stands neither in the file’s data nor on its first pages; have it added.'
      : '';
  return [
    textLineOf('epub.subtitle', 'Subtitle', state, { expected, found, advice, page: inBook?.page ?? null }),
  ];
}

/** Lines of each document as one text, so that a title set in several lines is found. */
function pagesOf(facts: EpubFacts): { page: number; text: string }[] {
  const pages = new Map<number, string[]>();
  for (const { page, text } of facts.lines) pages.set(page, [...(pages.get(page) ?? []), text]);
  return [...pages].map(([page, lines]) => ({ page, text: lines.join(' ') }));
}

/** The title in the text itself: another book under the right data is not seen otherwise. */
export function printedTitleLine(facts: EpubFacts, record: ProofRecord): CheckLine {
  const label = 'Title inside the book';
  const expected = record.title;
  if (facts.lines.length === 0)
    return textLineOf('epub.printed-title', label, 'cannot tell', {
      expected,
      advice: 'No text could be read on the first pages; look at them yourself.',
    });
  const there = pagesOf(facts).find(({ text }) => holdsText(text, record.title));
  if (there !== undefined)
    return textLineOf('epub.printed-title', label, 'agreed', {
      expected,
      found: record.title,
      page: there.page,
    });
  return textLineOf('epub.printed-title', label, 'not found', {
    expected,
    found: facts.lines
      .slice(0, 3)
      .map(({ text }) => text.slice(0, 80))
      .join(' / '),
    advice: 'The first pages do not name the title. It may be a picture; see that this is the right book.',
  });
}

/** Lines that may state an edition: those of the copyright page, and short ones of the other first pages. */
const SHORT = 60;

export function editionLine(facts: EpubFacts, record: ProofRecord): CheckLine {
  const label = 'Edition statement';
  const expected = record.statement || (record.ordinal === null ? '' : `${ordinal(record.ordinal)} edition`);
  const own = record.ordinal ?? 1;
  const looked = facts.lines.filter(({ page, text }) => page === facts.copyrightPage || text.length <= SHORT);
  const literal =
    record.statement === '' ? undefined : looked.find(({ text }) => holdsText(text, record.statement));
  const stated = looked
    .map((line) => ({ line, editions: editionsIn(line.text) }))
    .filter(({ editions }) => editions.length > 0);
  // A printing history names earlier editions too: the highest is the file's own.
  const highest = Math.max(0, ...stated.flatMap(({ editions }) => editions));
  const at = stated.find(({ editions }) => editions.includes(highest))?.line;
  const found = at?.text ?? literal?.text ?? '';
  const page = at?.page ?? literal?.page ?? null;
  const line = (state: CheckLine['state'], advice = '') =>
    textLineOf('epub.edition', label, state, { expected, found, advice, page });
  if (facts.lines.length === 0)
    return line('cannot tell', 'No text could be read on the first pages; look at them yourself.');
  if (highest > 0 && highest !== own)
    return line(
      'differs',
      `The file states the ${ordinal(highest)} edition; see that it is not the file of another edition.`,
    );
  if (highest === own || literal !== undefined || own === 1) return line('agreed');
  return line(
    'not found',
    'The file does not say which edition it is; see that it is the right one, and have it added.',
  );
}

/** The year of publication in the notice of copyright; earlier editions' years may stand beside it. */
export function yearLine(facts: EpubFacts, record: ProofRecord): CheckLine {
  const label = 'Year in the copyright notice';
  const notices = facts.lines.filter(
    ({ page, text }) => isRightsLine(text) && (facts.copyrightPage === null || page === facts.copyrightPage),
  );
  const years = [...new Set(notices.flatMap(({ text }) => yearsIn(text)))];
  const found = years.join(', ');
  const expected = record.year === null ? '' : String(record.year);
  const page = notices[0]?.page ?? null;
  const line = (state: CheckLine['state'], advice = '') =>
    textLineOf('epub.year', label, state, { expected, found, advice, page });
  if (record.year === null) return line('cannot tell', 'No publication date is recorded to hold it against.');
  if (years.includes(record.year)) return line('agreed');
  if (years.length === 0)
    return line('not found', 'No notice of copyright with a year was found; have it added.');
  return line('differs', `The notice names ${found}; see that this is not last edition’s file.`);
}
