import type { OnixHouse, OnixRecord } from '../exchange/onix/product.ts';
import { relationsOf, waysOn } from '../rules/onix/relations.ts';
import { CONFIRMED_DAYS } from '../rules/onix/standings.ts';
import { dayPlus } from '../rules/working-days.ts';
import type { ReadDb } from '../store/connection.ts';
import {
  type FormatRow,
  formatRows,
  type KinRow,
  kinOfEditions,
  listsOfEditions,
  type OnixScope,
  termsOfFormats,
  worksChangedSince,
} from '../store/onix.ts';
import { partsOfFormats } from '../store/onix-parts.ts';
import { isDemo, readSettings } from '../store/settings.ts';

/** What every record says alike. */
export function houseOf(db: ReadDb, today: string): OnixHouse {
  const settings = readSettings(db);
  return {
    publisher: settings.publisher,
    sender: settings.publisher || settings.catalogueName,
    lengthUnit: settings.lengthUnit,
    country: settings.countryOfPublication,
    rights: settings.salesRights,
    today,
    demo: isDemo(db),
  };
}

/** The formats to tell of. */
export function scopeOf(
  db: ReadDb,
  workId: number | undefined,
  since: string | undefined,
  today: string,
): OnixScope {
  if (workId !== undefined) return { kind: 'work', workId };
  if (since === undefined) return { kind: 'all' };
  const early = { since: dayPlus(since, CONFIRMED_DAYS), today: dayPlus(today, CONFIRMED_DAYS) };
  return { kind: 'since', works: worksChangedSince(db, since, today, early) };
}

const NONE: never[] = [];
const ON_THE_WAY = new Set(['unsent', 'sent', 'proof', 'cleared', 'selling']);

/** The returns terms of a format: what its listings agree on, those on sale or on the way first. */
function agreedReturns(listings: readonly { returns: string | null; standing: string }[]): string | null {
  const alive = listings.filter((listing) => ON_THE_WAY.has(listing.standing));
  const first = (alive[0] ?? listings[0])?.returns ?? null;
  const asked = alive.length > 0 ? alive : listings;
  return asked.every((listing) => listing.returns === first) ? first : null;
}

function lastDay(listings: readonly { lastStepOn: string | null }[]): string | null {
  let last: string | null = null;
  for (const { lastStepOn } of listings)
    if (lastStepOn !== null && (last === null || lastStepOn > last)) last = lastStepOn;
  return last;
}

type Around = ReturnType<typeof around>;

function around(db: ReadDb, rows: readonly FormatRow[]) {
  const editionIds = [...new Set(rows.map((row) => row.editionId))];
  const formatIds = rows.map((row) => row.id);
  return {
    lists: listsOfEditions(db, editionIds),
    terms: termsOfFormats(db, formatIds),
    kin: kinOfEditions(db, editionIds),
    parts: partsOfFormats(db, formatIds),
  };
}

function recordOf(row: FormatRow, { lists, terms, kin, parts }: Around): OnixRecord | null {
  const siblings = kin.byEdition.get(row.editionId) ?? NONE;
  const own = siblings.find((sibling: KinRow) => sibling.id === row.id);
  if (own === undefined || own.isbn13 === null) return null;
  const successorId = kin.successors.get(row.editionId);
  const replacing = successorId === undefined ? NONE : (kin.byEdition.get(successorId) ?? NONE);
  const replaced = row.replacesId === null ? NONE : (kin.byEdition.get(row.replacesId) ?? NONE);
  const listings = terms.listings.get(row.id) ?? NONE;
  return {
    isbn13: own.isbn13,
    workId: row.workId,
    edition: {
      title: row.title,
      subtitle: row.subtitle,
      number: row.number,
      statement: row.statement,
      contributors: lists.contributors.get(row.editionId) ?? NONE,
      language: row.language,
      imprint: row.imprint,
      series: row.series,
      seriesNumber: row.seriesNumber,
      description: row.description,
      keywords: (lists.keywords.get(row.editionId) ?? NONE).map((entry) => entry.keyword),
      subjects: lists.subjects.get(row.editionId) ?? NONE,
      audience: row.audience,
      ageFrom: row.ageFrom,
      ageTo: row.ageTo,
    },
    format: { ...row, insideCoverPrint: false, prices: terms.prices.get(row.id) ?? NONE },
    standing: own.standing,
    endedOn: own.standing === 'retired' ? lastDay(listings) : null,
    returns: agreedReturns(listings),
    related: relationsOf(own, { siblings, replaced, replacing }),
    ...waysOn(own, siblings, replacing),
    kept: parts.get(row.id) ?? NONE,
  };
}

/** The product records of some formats, and how many have no number and so no record. */
export function recordsOf(
  db: ReadDb,
  ids: readonly number[],
): { records: OnixRecord[]; withoutNumber: number } {
  const rows = formatRows(db, ids);
  const facts = around(db, rows);
  const records = rows.map((row) => recordOf(row, facts)).filter((record) => record !== null);
  return { records, withoutNumber: rows.length - records.length };
}
