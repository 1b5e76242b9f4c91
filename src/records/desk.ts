import { Refusal } from '../contract/refusal.ts';
import type { Desk, DeskListing } from '../contract/retirement.ts';
import { formName, madeOf } from '../contract/terms.ts';
import { shownIsbn } from '../rules/isbn/index.ts';
import { editionLabel } from '../rules/labels.ts';
import { deskStep } from '../rules/retirement-desk.ts';
import type { ReadDb } from '../store/connection.ts';
import { editionOfPlan, planInForce, replacingEdition } from '../store/plans.ts';
import {
  checklistOf,
  type DeskRow,
  deskFormats,
  deskRows,
  newestCounts,
  replacingListings,
} from '../store/retirement.ts';
import { replacementsOf } from './replacements.ts';

const nameOf = <
  T extends { largePrint: number; form: string; formDetail: string | null; caseKind: string | null },
>(
  row: T,
) => formName({ ...row, largePrint: row.largePrint === 1 });
interface Successor {
  editionId: number;
  label: string;
  /** Channels on which it is listed, and on which it sells. */
  listedOn: Set<number>;
  sellsOn: Set<number>;
}

function successorOf(db: ReadDb, editionId: number): Successor | null {
  const edition = replacingEdition(db, editionId);
  if (!edition) return null;
  const listings = replacingListings(db, editionId);
  return {
    editionId: edition.id,
    label: editionLabel(edition),
    listedOn: new Set(listings.map((row) => row.channelId)),
    sellsOn: new Set(listings.filter((row) => row.standing === 'selling').map((row) => row.channelId)),
  };
}

/** Whether the successor sells on a channel, or on any where it is not listed on this one. */
export function successorSells(
  db: ReadDb,
  editionId: number,
  channelId: number,
): { label: string; sells: boolean } | null {
  const next = successorOf(db, editionId);
  return next && { label: next.label, sells: sellsFor(next, channelId) };
}

function sellsFor(next: Successor, channelId: number): boolean {
  return next.listedOn.has(channelId) ? next.sellsOn.has(channelId) : next.sellsOn.size > 0;
}

function deskListing(
  row: DeskRow,
  next: Successor | null,
  replaced: ReturnType<typeof replacementsOf>,
  today: string,
): DeskListing {
  const leaves = row.standing === 'leaving' || row.standing === 'gone';
  const step = deskStep({
    ...row,
    today,
    replacement: next?.label ?? null,
    replacementSells: next !== null && sellsFor(next, row.channelId),
  });
  return {
    listingId: row.listingId,
    formatId: row.formatId,
    formatName: nameOf(row),
    hyphenated: shownIsbn(row.isbn13),
    replacement: replaced.get(row.formatId)?.hyphenated ?? null,
    channelName: row.channelName,
    contact: row.contact,
    standing: row.standing,
    askedOn: row.askedOn,
    promisedBy: leaves ? row.promisedBy : null,
    chasedOn: leaves ? row.chasedOn : null,
    chases: row.chases,
    goneOn: row.goneOn,
    evidence: row.evidence ?? '',
    returnable: row.returns !== null && row.returns !== 'N',
    returnsUntil: row.returnsUntil,
    returnsNote: row.returnsNote ?? '',
    returnsOpen: row.returnsUntil !== null && row.returnsUntil >= today,
    ...step,
  };
}

/** The retirement desk of an edition on a day; throws NOT_FOUND. */
export function deskOf(db: ReadDb, editionId: number, day: string): Desk {
  const edition = editionOfPlan(db, editionId);
  if (!edition) throw new Refusal('NOT_FOUND', `There is no edition ${editionId}.`, 'editionId');
  const rows = deskRows(db, editionId, day);
  const formats = deskFormats(db, editionId, day);
  const replaced = replacementsOf(db, [...new Set(rows.map((row) => row.formatId))]);
  const next = successorOf(db, editionId);
  const names = new Map([...formats, ...rows].map((row) => [row.formatId, nameOf(row)]));
  return {
    editionId,
    workId: edition.workId,
    label: editionLabel(edition),
    replacement: next && { editionId: next.editionId, label: next.label, sells: next.sellsOn.size > 0 },
    planned: planInForce(db, editionId, 'retirement') !== undefined,
    listings: rows.map((row) => deskListing(row, next, replaced, day)),
    stock: newestCounts(db, editionId, day).map((count) => ({
      ...count,
      formatName: names.get(count.formatId) ?? '',
    })),
    numbers: formats.map((row) => ({
      formatId: row.formatId,
      formatName: nameOf(row),
      hyphenated: shownIsbn(row.isbn13),
      printed: madeOf(row.form) === 'print' || row.form === 'AC',
      outOfPrintOn: row.outOfPrintOn,
      note: row.note ?? '',
    })),
    checklist: checklistOf(db, editionId).map(({ kind: _kind, ...task }) => task),
  };
}
