import type { Contributor } from '../contract/editions.ts';
import { formName, roleName } from '../contract/terms.ts';
import type { TextFacts } from '../contract/text-kinds.ts';
import { ordinal } from './labels.ts';
import { fillText } from './text-templates.ts';

/** A format as the copyright page names it. */
export interface PrintedFormat {
  id: number;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: boolean;
  hyphenated: string | null;
  publicationDate: string | null;
  onSaleDate: string | null;
}

export interface PrintedEdition {
  title: string;
  subtitle: string;
  series: string;
  seriesNumber: string;
  number: number | null;
  statement: string;
  contributors: readonly Contributor[];
  imprint: string;
  formats: readonly PrintedFormat[];
}

export interface CopyrightFacts {
  edition: PrintedEdition;
  publisher: string;
  /** The first day any earlier edition came out; null where there is none, or no day of it is known. */
  firstPublished: string | null;
  /** The day a release is planned for, where the format's own dates are not set. */
  plannedDay: string | null;
}

/** Stands where the year is to be filled in. */
const UNDATED = '[year]';

const yearOf = (day: string | null) => day?.slice(0, 4) ?? '';

/** 'ISBN 979-8-969999-05-3 (Paperback)': several formats at once are all listed, the form in brackets (FI; ISBN Users' Manual). */
function isbnLine(format: PrintedFormat): string {
  const name = formName(format);
  return `ISBN ${format.hyphenated} (${name.replace(/ \((.*)\)/, ', $1')})`;
}

function factsFor(
  { edition, publisher, firstPublished, plannedDay }: CopyrightFacts,
  format: PrintedFormat,
): TextFacts<'copyright page'> {
  const published = format.publicationDate ?? format.onSaleDate ?? plannedDay;
  const own = edition.formats.filter((one) => one.id === format.id);
  const others = edition.formats.filter((one) => one.id !== format.id);
  const numbered = [...own, ...others].filter((one) => one.hyphenated !== null);
  const authors = edition.contributors.filter(({ role }) => role === 'A01');
  const firstYear = yearOf(firstPublished);
  return {
    title: edition.title,
    subtitle: edition.subtitle,
    series: [edition.series, edition.seriesNumber].filter(Boolean).join(', '),
    edition: edition.statement || (edition.number === null ? '' : `${ordinal(edition.number)} edition`),
    authors: authors.map(({ name }) => name).join(', '),
    contributors: edition.contributors
      .filter(({ role }) => role !== 'A01')
      .map(({ role, name }) => `${roleName(role)}: ${name}`)
      .join('\n'),
    imprint: edition.imprint,
    publisher: publisher === edition.imprint ? '' : publisher,
    firstYear: firstYear === yearOf(published) ? '' : firstYear,
    year: yearOf(published) || UNDATED,
    published: published ?? '',
    isbns: numbered.map(isbnLine).join('\n'),
    isbn: format.hyphenated ?? '',
    form: formName(format),
  };
}

/** The block for the back of the title page of each format: its own number first, then those of the others. */
export function copyrightPages(
  template: string,
  facts: CopyrightFacts,
): { formatId: number; name: string; text: string }[] {
  return facts.edition.formats.map((format) => ({
    formatId: format.id,
    name: formName(format),
    text: fillText('copyright page', template, factsFor(facts, format)),
  }));
}

/** What is not known yet of a page, or has to be checked by somebody else. */
export function copyrightRemarks({ edition, firstPublished, plannedDay }: CopyrightFacts): string[] {
  const unnumbered = edition.formats.filter((format) => format.hyphenated === null);
  const undated = edition.formats.filter(
    (format) => format.publicationDate === null && format.onSaleDate === null && plannedDay === null,
  );
  const names = (formats: readonly PrintedFormat[]) => formats.map(formName).join(', ');
  return [
    ...(unnumbered.length === 0
      ? []
      : [
          `No number yet, so none is listed: ${names(unnumbered)}. Take the numbers before the files are final.`,
        ]),
    ...(undated.length === 0
      ? []
      : [`No publication date yet, so the year stands as ${UNDATED}: ${names(undated)}.`]),
    ...((edition.number ?? 1) > 1 && firstPublished === null
      ? ['The year of the first edition is not known here; add it.']
      : []),
    'The line of rights names the authors as holders: check who holds them, and what else your country or your contracts ask for.',
    'Only a format’s own number belongs on its cover and in its bar code; set all of them in 9 point or larger.',
  ];
}
