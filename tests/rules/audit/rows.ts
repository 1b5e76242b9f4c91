import type { Finding } from '../../../src/contract/audit.ts';
import type { FormatStanding, ListingStanding } from '../../../src/contract/terms.ts';
import { Board } from '../../../src/rules/audit/board.ts';
import type {
  AuditSettings,
  EditionRow,
  FactRows,
  Facts,
  FormatRow,
  ListingRow,
  NumberRow,
} from '../../../src/rules/audit/facts.ts';
import { gatherFacts } from '../../../src/rules/audit/gather.ts';
import { blockNumber } from '../../../src/rules/isbn/index.ts';

// Rows of a catalogue, made and changed by hand for the rules of the audit.

type Mutable = { [K in keyof FactRows]: FactRows[K][number][] };

export interface Catalogue extends Mutable {
  day: string;
  today: string;
  settings: AuditSettings;
}

export const DAY = '2026-11-25';
export const BLOCK = { digits: '9798969999', publicationDigits: 2 };

/** The n-th number of the press's block of a hundred. */
export function isbn(n: number): string {
  return blockNumber(BLOCK, n);
}

export const CHANNEL = { printworks: 1, broadside: 2, lanternshelf: 3, bookshop: 4 };
export const EDITION = { first: 1, second: 2, third: 3, knots: 4, primer: 5, fenLight: 6 };
export const FORMAT = {
  firstPaper: 11,
  firstEbook: 12,
  secondPaper: 21,
  secondHard: 22,
  secondEbook: 23,
  secondPdf: 24,
  thirdPaper: 31,
  knotsPaper: 41,
  primerPaper: 51,
  fenAudio: 61,
};
/** A listing's id is its format's followed by its channel's. */
export const LISTING = {
  firstPrintworks: 111,
  secondPrintworks: 211,
  secondBroadside: 212,
  secondLanternshelf: 233,
  knotsPrintworks: 411,
  knotsBookshop: 414,
};

/** A row by its id, to be changed in place. */
export function row<T extends { id: number }>(rows: T[], id: number): T {
  const found = rows.find((one) => one.id === id);
  if (!found) throw new Error(`The clean catalogue has no row ${id}.`);
  return found;
}

export function numberOf(catalogue: Catalogue, formatId: number): NumberRow {
  const found = catalogue.numbers.find((number) => number.formatId === formatId);
  if (!found) throw new Error(`Format ${formatId} of the clean catalogue has no number.`);
  return found;
}

/** Moves a listing by recorded steps, and its format's standing where one is given. */
export function move(
  catalogue: Catalogue,
  listingId: number,
  steps: readonly [ListingStanding, string][],
  standing?: FormatStanding,
): void {
  const listing = row(catalogue.listings, listingId);
  for (const [toStanding, onDate] of steps) {
    catalogue.steps.push({ listingId, toStanding, onDate });
    listing.standing = toStanding;
    listing.lastStepOn = onDate;
    if (toStanding === 'sent') listing.firstSentOn ??= onDate;
    if (toStanding === 'cleared') listing.firstClearedOn ??= onDate;
  }
  if (standing) row(catalogue.formats, listing.formatId).standing = standing;
}

export function addListing(
  catalogue: Catalogue,
  formatId: number,
  channelId: number,
  steps: readonly [ListingStanding, string][] = [],
  fields: Partial<ListingRow> = {},
): number {
  const id = formatId * 10 + channelId;
  catalogue.listings.push({
    id,
    formatId,
    channelId,
    standing: 'unsent',
    discountBp: 4000,
    printCostMinor: null,
    printCostCurrency: null,
    onSaleDate: null,
    reference: '',
    firstSentOn: null,
    firstClearedOn: null,
    lastStepOn: null,
    ...fields,
  });
  move(catalogue, id, steps);
  return id;
}

export function addEdition(catalogue: Catalogue, fields: Partial<EditionRow> & { id: number }): void {
  catalogue.editions.push({
    workId: 1,
    number: null,
    statement: '',
    title: 'The Salt Almanac',
    language: 'eng',
    imprint: 'Halyard & Fen',
    series: '',
    seriesNumber: '',
    descriptionLength: 640,
    subjects: 3,
    keywords: 7,
    audience: 'general',
    ageFrom: null,
    ageTo: null,
    replacesId: null,
    ...fields,
  });
  catalogue.contributors.push({ editionId: fields.id, role: 'A01', name: 'Maren Oskarsdal' });
}

/** A format with a price and, unless `n` is null, the n-th number of the block. */
export function addFormat(
  catalogue: Catalogue,
  fields: Partial<FormatRow> & Pick<FormatRow, 'id' | 'editionId' | 'form'>,
  n: number | null,
): void {
  const printed = fields.form.startsWith('B');
  catalogue.formats.push({
    formDetail: fields.form === 'ED' ? 'E101' : null,
    caseKind: fields.form === 'BB' ? 'jacket' : null,
    trimWidthUm: printed ? 129_000 : null,
    trimHeightUm: printed ? 198_000 : null,
    pages: printed ? 240 : null,
    durationMinutes: null,
    interiorColour: printed ? 'black' : null,
    largePrint: false,
    publicationDate: null,
    onSaleDate: null,
    plannedOn: '2018-11-01',
    cancelledOn: null,
    standing: 'planned',
    ...fields,
  });
  catalogue.prices.push({
    formatId: fields.id,
    currency: 'EUR',
    amountMinor: fields.form === 'BB' ? 2_995 : 1_995,
  });
  if (n !== null)
    addNumber(catalogue, n, { formatId: fields.id, assignedOn: '2019-01-15', standing: 'assigned' });
}

export function addNumber(catalogue: Catalogue, n: number, fields: Partial<NumberRow>): void {
  catalogue.numbers.push({
    isbn13: isbn(n),
    blockId: 1,
    formatId: null,
    reservedFor: '',
    reservedOn: null,
    assignedOn: null,
    spentOn: null,
    standing: 'reserved',
    ...fields,
  });
}

export function factsOf(catalogue: Catalogue): Facts {
  return gatherFacts(catalogue, catalogue, catalogue.settings);
}

/** What all rules find in the facts. */
export function audit(facts: Facts): readonly Finding[] {
  return new Board(facts).findings;
}
