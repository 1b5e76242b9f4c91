import type { FileFacts } from '../contract/proof-checks/facts.ts';
import { Refusal } from '../contract/refusal.ts';
import { formName, madeOf, roleName } from '../contract/terms.ts';
import { figuresWith, PAPERS } from '../rules/geometry/figures.ts';
import { usualSheet } from '../rules/geometry/usual-sheet.ts';
import { editionLabel } from '../rules/labels.ts';
import { type OtherNumber, type ProofRecord, USUAL_PROOF_FIGURES } from '../rules/proof-check/record.ts';
import type { ReadDb } from '../store/connection.ts';
import { editionById, editionsByIds, editionsOfWork, type StoredEdition } from '../store/editions.ts';
import { formatById, formatsByIds, formatsOfEditions, type StoredFormat } from '../store/formats.ts';
import { carriersOf } from '../store/proof-checks.ts';
import { readSettings } from '../store/settings.ts';

/** Every ISBN that was seen in a file, thirteen digits each. */
export function seenIsbns(facts: FileFacts): string[] {
  const inText = 'isbns' in facts ? facts.isbns.map((seen) => seen.isbn13) : [];
  const scanned = 'barcodes' in facts ? facts.barcodes.map((barcode) => barcode.digits) : [];
  const told = facts.of === 'epub' ? facts.identifiers.map((identifier) => identifier.isbn13) : [];
  return [...new Set([...inText, ...scanned, ...told].filter((isbn) => isbn !== null))];
}

const yearOf = (format: StoredFormat): number | null => {
  const day = format.publicationDate ?? format.onSaleDate;
  return day === null ? null : Number(day.slice(0, 4));
};

/** What else of the catalogue carries the numbers that were seen. */
function knownNumbers(db: ReadDb, isbns: readonly string[], own: StoredFormat) {
  const carriers = carriersOf(db, isbns).filter((row) => row.formatId !== own.id || row.spent === 1);
  const ids = carriers.flatMap((row) => (row.formatId === null ? [] : [row.formatId]));
  const formats = formatsByIds(db, ids);
  const editionIds = [...new Set([...formats.values()].map((format) => format.editionId))];
  const editions = new Map(editionsByIds(db, editionIds).map((edition) => [edition.id, edition]));
  const nameOf = (formatId: number | null): string => {
    const format = formatId === null ? undefined : formats.get(formatId);
    const edition = format && editions.get(format.editionId);
    return format && edition ? `${formName(format)}, ${editionLabel(edition)}` : 'no format yet';
  };
  const named = (row: (typeof carriers)[number]): OtherNumber => ({
    isbn13: row.isbn13,
    name: nameOf(row.formatId),
  });
  return {
    spent: carriers.filter((row) => row.spent === 1).map(named),
    others: carriers
      .filter((row) => row.spent === 0)
      .filter((row) => formats.get(row.formatId ?? 0)?.editionId !== own.editionId)
      .map(named),
  };
}

/** Numbers and years of the work's other editions. */
function otherEditions(db: ReadDb, edition: StoredEdition) {
  const others = editionsOfWork(db, edition.workId).filter((one) => one.id !== edition.id);
  const labels = new Map(others.map((one) => [one.id, editionLabel(one)]));
  const formats = formatsOfEditions(
    db,
    others.map((one) => one.id),
  );
  return {
    editions: others.map(({ statement, number }) => ({ statement, ordinal: number })),
    numbers: formats.flatMap((format): OtherNumber[] =>
      format.isbn13 === null
        ? []
        : [{ isbn13: format.isbn13, name: `${formName(format)}, ${labels.get(format.editionId) ?? ''}` }],
    ),
    years: [...new Set(formats.map(yearOf).filter((year) => year !== null))].sort((a, b) => a - b),
  };
}

function printedFacts(
  format: StoredFormat,
): Pick<
  ProofRecord,
  | 'pages'
  | 'trimWidthUm'
  | 'trimHeightUm'
  | 'interior'
  | 'insideCoverPrint'
  | 'rightToLeft'
  | 'paper'
  | 'sheet'
> {
  const { pages, trimWidthUm, trimHeightUm, insideCoverPrint, rightToLeft, paper, interiorColour } = format;
  const interior = interiorColour === null ? null : interiorColour === 'black' ? 'black and white' : 'colour';
  const sheet = madeOf(format.form) === 'print' ? usualSheet(format) : null;
  return { pages, trimWidthUm, trimHeightUm, interior, insideCoverPrint, rightToLeft, paper, sheet };
}

/** Who asks for a multiple of pages that stands among the printer's figures of the settings. */
const PRINTER = 'your printer, by Settings';

/** What is on record of a format, for a file in which some ISBNs were seen. Throws NOT_FOUND. */
export function proofRecord(db: ReadDb, formatId: number, isbns: readonly string[]): ProofRecord {
  const format = formatById(db, formatId);
  const edition = format && editionById(db, format.editionId);
  if (!format || !edition) throw new Refusal('NOT_FOUND', `There is no format ${formatId}.`, 'formatId');
  const settings = readSettings(db);
  const printer = figuresWith(settings.printerFigures);
  const known = knownNumbers(db, isbns, format);
  const other = otherEditions(db, edition);
  const year = yearOf(format);
  const { title, subtitle, statement, language, series, seriesNumber } = edition;
  return {
    title,
    subtitle,
    statement,
    language,
    series,
    seriesNumber,
    ordinal: edition.number,
    otherEditions: other.editions,
    contributors: edition.contributors.map(({ role, name }) => ({ role, roleName: roleName(role), name })),
    imprint: edition.imprint,
    publisher: settings.publisher,
    year,
    earlierYears: other.years.filter((one) => year === null || one < year),
    formatName: formName(format),
    form: format.form,
    formDetail: format.formDetail,
    made: madeOf(format.form),
    isbn13: format.isbn13,
    siblings: formatsOfEditions(db, [edition.id]).flatMap((one) =>
      one.id === format.id || one.isbn13 === null || one.standing === 'cancelled'
        ? []
        : [{ isbn13: one.isbn13, name: formName(one) }],
    ),
    others: [...new Map([...other.numbers, ...known.others].map((one) => [one.isbn13, one])).values()],
    spent: known.spent,
    ...printedFacts(format),
    bulk: [...settings.papers, ...PAPERS].find((paper) => paper.name === format.paper)?.bulk ?? null,
    printer,
    pageMultiples: printer.pageMultiple > 2 ? [{ channelName: PRINTER, multiple: printer.pageMultiple }] : [],
    prices: format.prices.map(({ currency, amountMinor }) => ({ currency, amountMinor })),
    durationMinutes: format.durationMinutes,
    lengthUnit: settings.lengthUnit,
    figures: USUAL_PROOF_FIGURES,
  };
}
