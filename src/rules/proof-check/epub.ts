import { LANGUAGES } from '../../contract/languages.ts';
import type { CheckLine, EpubFacts } from '../../contract/proof-checks/facts.ts';
import { copyrightIsbnLine, identifierLine, otherIsbnsLine } from './epub-numbers.ts';
import { peopleLines } from './epub-people.ts';
import { editionLine, printedTitleLine, subtitleLine, titleLine, yearLine } from './epub-words.ts';
import { textLineOf } from './line.ts';
import type { ProofRecord } from './record.ts';
import { bareText, yearsIn } from './wording.ts';

/** The first part of a language tag in its shortest form: 'en' for 'en-GB', 'eng'; 'de' for 'ger' and 'deu'. */
function language(tag: string): string {
  try {
    const [canonical = ''] = Intl.getCanonicalLocales(tag.trim().replaceAll('_', '-'));
    return canonical.split('-')[0] ?? '';
  } catch {
    return tag.trim().toLowerCase();
  }
}

/** Codes of ISO 639-2 that name no one language: several, undetermined, none. */
const NO_ONE_LANGUAGE = ['mul', 'und', 'zxx'];

function languageLine(facts: EpubFacts, record: ProofRecord): CheckLine {
  const name = LANGUAGES.find(([code]) => code === record.language)?.[1];
  const expected = name === undefined ? record.language : `${name} (${record.language})`;
  const said = { expected, found: facts.languages.join(', ') };
  const label = 'Language';
  if (facts.languages.length === 0)
    return textLineOf('epub.language', label, 'not found', {
      ...said,
      advice: 'Have the language put in (dc:language); every EPUB needs it, and reading aloud depends on it.',
    });
  const written = facts.languages.map(language);
  if (NO_ONE_LANGUAGE.includes(record.language) || written.includes(language(record.language)))
    return textLineOf('epub.language', label, 'agreed', said);
  return textLineOf('epub.language', label, 'differs', {
    ...said,
    advice: 'Have the language written as recorded, or correct the record.',
  });
}

function publisherLine(facts: EpubFacts, record: ProofRecord): CheckLine {
  const own = [record.imprint, record.publisher].filter((name) => name !== '');
  const said = { expected: [...new Set(own)].join(', '), found: facts.publishers.join(', ') };
  const label = 'Publisher';
  if (own.length === 0)
    return textLineOf('epub.publisher', label, 'cannot tell', {
      ...said,
      advice: 'No publisher or imprint is recorded.',
    });
  if (facts.publishers.length === 0)
    return textLineOf('epub.publisher', label, 'not found', {
      ...said,
      advice: 'Have the publisher put in (dc:publisher).',
    });
  const bare = own.map(bareText);
  if (facts.publishers.some((name) => bare.includes(bareText(name))))
    return textLineOf('epub.publisher', label, 'agreed', said);
  return textLineOf('epub.publisher', label, 'differs', {
    ...said,
    advice: 'Have the publisher or imprint written as recorded.',
  });
}

/** dc:date is the date of publication (EPUB 3.3, dc:date); only its year is held against the record. */
function dateLine(facts: EpubFacts, record: ProofRecord): CheckLine {
  const label = 'Date of publication';
  const said = { expected: record.year === null ? '' : String(record.year), found: facts.date ?? '' };
  if (record.year === null)
    return textLineOf('epub.date', label, 'cannot tell', {
      ...said,
      advice: 'No publication date is recorded.',
    });
  if (facts.date === null)
    return textLineOf('epub.date', label, 'not found', {
      ...said,
      advice: 'The file gives no date of publication (dc:date); it may be left out, but shops show it.',
    });
  const [year] = yearsIn(facts.date.slice(0, 4));
  if (year === record.year) return textLineOf('epub.date', label, 'agreed', said);
  return textLineOf('epub.date', label, 'differs', {
    ...said,
    advice: 'Have the date of publication set; programs like to put in the day of export.',
  });
}

/** Kinds of e-book by ONIX List 175 that an EPUB is not: HTML, PDF, PDF/A, comic archive. */
const OTHER_KINDS: Readonly<Record<string, string>> = {
  E105: 'HTML',
  E107: 'PDF',
  E108: 'PDF/A',
  E149: 'comic archive',
};

function kindLine(facts: EpubFacts, record: ProofRecord): CheckLine {
  const other = OTHER_KINDS[record.formDetail ?? ''];
  const said = { expected: record.formatName, found: `EPUB ${facts.version}`.trim() };
  return other === undefined
    ? textLineOf('epub.kind', 'Kind of e-book', 'agreed', said)
    : textLineOf('epub.kind', 'Kind of e-book', 'differs', {
        ...said,
        advice: `This format is recorded as ${other}; an EPUB is another product and needs a number of its own.`,
      });
}

function coverLine({ cover }: EpubFacts): CheckLine {
  const expected = 'A picture named as cover';
  if (cover === null)
    return textLineOf('epub.cover', 'Cover picture', 'not found', {
      expected,
      advice: 'No picture is named as the cover, so readers’ shelves show none; have it named.',
    });
  const size = cover.widthPx > 0 ? `, ${cover.widthPx} × ${cover.heightPx} pixels` : '';
  return textLineOf('epub.cover', 'Cover picture', 'agreed', { expected, found: `${cover.name}${size}` });
}

/** Faults that are told in full; the rest are counted. */
const TOLD = 4;

function structureLine({ faults, version, documents }: EpubFacts): CheckLine {
  const expected = 'A sound EPUB';
  const label = 'Structure of the file';
  if (faults.length === 0)
    return textLineOf('epub.structure', label, 'agreed', {
      expected,
      found: `EPUB ${version}, ${documents} ${documents === 1 ? 'document' : 'documents'}`,
    });
  const more = faults.length > TOLD ? ` And ${faults.length - TOLD} more.` : '';
  return textLineOf('epub.structure', label, 'differs', {
    expected,
    found: `${faults.slice(0, TOLD).join(' ')}${more}`,
    advice: 'Have these mended by whoever made the file; channels refuse such files or show them badly.',
  });
}

/** Programs inside are allowed (EPUB 3.3, scripting), yet many reading systems do not run them. */
function scriptsLine({ scripts }: EpubFacts): CheckLine[] {
  if (scripts === 0) return [];
  return [
    textLineOf('epub.scripts', 'Programs inside', 'cannot tell', {
      expected: 'None',
      found: `${scripts} ${scripts === 1 ? 'script' : 'scripts'}`,
      advice:
        'Nothing was run. Many channels and readers do not take e-books with programs; ask, or have them taken out.',
    }),
  ];
}

/** An e-book against the record, a line for each thing that was looked at. */
export function checkEpub(facts: EpubFacts, record: ProofRecord): CheckLine[] {
  return [
    identifierLine(facts, record),
    copyrightIsbnLine(facts, record),
    otherIsbnsLine(facts, record),
    titleLine(facts, record),
    ...subtitleLine(facts, record),
    printedTitleLine(facts, record),
    editionLine(facts, record),
    yearLine(facts, record),
    ...peopleLines(facts, record),
    languageLine(facts, record),
    publisherLine(facts, record),
    dateLine(facts, record),
    kindLine(facts, record),
    coverLine(facts),
    structureLine(facts),
    ...scriptsLine(facts),
  ];
}
