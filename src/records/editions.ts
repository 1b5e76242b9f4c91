import type { Edition, Lock } from '../contract/editions.ts';
import type { Format } from '../contract/formats.ts';
import type { Listing } from '../contract/listings.ts';
import { formName } from '../contract/terms.ts';
import { shownIsbn } from '../rules/isbn/index.ts';
import { editionLabel } from '../rules/labels.ts';
import { EDITION_LOCKS, FORMAT_LOCKS, LOCK_REASONS, type LockFacts, lockedFields } from '../rules/locks.ts';
import { nextSteps } from '../rules/standings.ts';
import type { ReadDb } from '../store/connection.ts';
import type { StoredEdition } from '../store/editions.ts';
import { filesOfFormats, type StoredFile } from '../store/format-files.ts';
import { formatsOfEditions, type StoredFormat } from '../store/formats.ts';
import { LISTED, listed } from '../store/ids.ts';
import { listingsOfFormats, type StoredListing } from '../store/listings.ts';
import { replacementsOf } from './replacements.ts';

/** A stored listing as the contract shows it. */
export function listingFacts(stored: StoredListing, ended: boolean): Listing {
  const { printCostMinor, printCostCurrency, ...rest } = stored;
  return {
    ...rest,
    printCost:
      printCostMinor === null || printCostCurrency === null
        ? null
        : { amountMinor: printCostMinor, currency: printCostCurrency },
    next: ended ? [] : nextSteps(stored.standing),
  };
}

/** The listing through which a lock began: the one sent first. */
function firstSent(listings: StoredListing[]): (StoredListing & { firstSentOn: string }) | undefined {
  const sent = listings.filter((l): l is StoredListing & { firstSentOn: string } => l.firstSentOn !== null);
  return sent.sort((a, b) => a.firstSentOn.localeCompare(b.firstSentOn) || a.id - b.id)[0];
}

const ON_SALE = ['selling', 'leaving', 'gone'];

/** Fields that the channels some listings were submitted to lock beside the identity fields. */
type MoreLocks = Map<number, LockFacts['more'][number][]>;

function moreLocks(db: ReadDb, formatIds: number[]): MoreLocks {
  if (formatIds.length === 0) return new Map();
  const rows = db.all<{ formatId: number; field: LockFacts['more'][number] }>(
    `SELECT format_id AS formatId, field FROM format_locked_more WHERE format_id IN ${LISTED}`,
    listed(formatIds),
  );
  const map: MoreLocks = new Map();
  for (const row of rows) map.set(row.formatId, [...(map.get(row.formatId) ?? []), row.field]);
  return map;
}

function formatFacts(
  stored: StoredFormat,
  listings: StoredListing[],
  around: Pick<LockFacts, 'correcting' | 'more'> & {
    files: StoredFile[];
    replacedBy: Format['replacedBy'];
  },
): Format {
  const { plannedOn: _plannedOn, ...rest } = stored;
  const first = firstSent(listings);
  const ended = stored.standing === 'retired' || stored.standing === 'cancelled';
  const { correcting, more, files, replacedBy } = around;
  const fields = lockedFields(FORMAT_LOCKS, {
    correcting,
    more,
    submitted: first !== undefined,
    onSale: listings.some((listing) => ON_SALE.includes(listing.standing)),
    ended,
  });
  return {
    ...rest,
    name: formName(stored),
    hyphenated: shownIsbn(stored.isbn13),
    replacedBy,
    lock: first
      ? {
          since: first.firstSentOn,
          channelName: first.channelName,
          fields: ['isbn', ...fields],
          reason: `Sent to ${first.channelName} on ${first.firstSentOn}.`,
        }
      : null,
    listings: listings.map((listing) => listingFacts(listing, ended)),
    files: files.map(({ formatId: _formatId, ...file }) => file),
  };
}

function editionLock(
  formats: StoredFormat[],
  listings: StoredListing[],
  facts: Pick<LockFacts, 'correcting' | 'more'>,
): Lock | null {
  const first = firstSent(listings);
  if (!first) return null;
  const ended =
    formats.some((format) => format.standing === 'retired') &&
    formats.every((format) => format.standing === 'retired' || format.standing === 'cancelled');
  const fields = lockedFields(EDITION_LOCKS, { ...facts, submitted: true, onSale: false, ended });
  if (fields.length === 0) return null;
  const format = formats.find((candidate) => candidate.id === first.formatId);
  return {
    since: first.firstSentOn,
    listingId: first.id,
    channelName: first.channelName,
    formatName: format ? formName(format) : '',
    fields,
    ...(ended ? LOCK_REASONS.end : LOCK_REASONS.submission),
    correctable:
      !facts.correcting && listings.every((l) => l.standing === 'unsent' && l.firstClearedOn === null),
  };
}

interface PlanRow {
  id: number;
  editionId: number;
  kind: 'release' | 'retirement';
  day: string;
  open: number;
  done: number;
  ended: number;
}

/** What surrounds some editions: plans in force with their task counts, the editions that replace them, open corrections. */
function aroundEditions(db: ReadDb, ids: number[]) {
  const list = listed(ids);
  const plans = db.all<PlanRow>(
    `SELECT p.id, p.edition_id AS editionId, p.kind, p.day, coalesce(sum(t.standing IN ('open', 'waiting')), 0) AS open,
       coalesce(sum(t.standing = 'done'), 0) AS done, p.ended_on IS NOT NULL AS ended
     FROM plan p LEFT JOIN task t ON t.plan_id = p.id
     WHERE p.edition_id IN ${LISTED} AND p.dropped_on IS NULL GROUP BY p.id ORDER BY p.id`,
    list,
  );
  const replacements = new Map(
    db
      .all<{ id: number; old: number }>(
        `SELECT id, replaces_id AS old FROM edition WHERE replaces_id IN ${LISTED}`,
        list,
      )
      .map((row) => [row.old, row.id]),
  );
  const corrections = new Map(
    db
      .all<{ editionId: number; madeOn: string; reason: string }>(
        `SELECT edition_id AS editionId, made_on AS madeOn, reason FROM correction
         WHERE closed_on IS NULL AND edition_id IN ${LISTED}`,
        list,
      )
      .map(({ editionId, ...correction }) => [editionId, correction]),
  );
  return { plans: Map.groupBy(plans, (plan) => plan.editionId), replacements, corrections };
}

/** What surrounds some formats: their files, what took their place, and what channels lock beside the identity. */
function aroundFormats(db: ReadDb, formats: StoredFormat[]) {
  const ids = formats.map((stored) => stored.id);
  return {
    files: Map.groupBy(filesOfFormats(db, ids), (file) => file.formatId),
    replaced: replacementsOf(db, ids),
    more: moreLocks(db, ids),
  };
}

/** Stored editions with their formats, listings, locks and plans, in a constant number of queries. */
export function editionFacts(db: ReadDb, editions: StoredEdition[]): Edition[] {
  const ids = editions.map((stored) => stored.id);
  if (ids.length === 0) return [];
  const formats = formatsOfEditions(db, ids);
  const listings = listingsOfFormats(
    db,
    formats.map((stored) => stored.id),
  );
  const { plans, replacements, corrections } = aroundEditions(db, ids);
  const { files, replaced, more } = aroundFormats(db, formats);
  const ofEdition = Map.groupBy(formats, (format) => format.editionId);
  const ofFormat = Map.groupBy(listings, (listing) => listing.formatId);
  return editions.map((stored) => {
    const own = ofEdition.get(stored.id) ?? [];
    const ownListings = own.flatMap((format) => ofFormat.get(format.id) ?? []);
    const correction = corrections.get(stored.id) ?? null;
    const correcting = correction !== null;
    return {
      ...stored,
      label: editionLabel(stored),
      replacedById: replacements.get(stored.id) ?? null,
      lock: editionLock(own, ownListings, {
        correcting,
        more: own.flatMap((format) => more.get(format.id) ?? []),
      }),
      correction,
      formats: own.map((format) =>
        formatFacts(format, ofFormat.get(format.id) ?? [], {
          correcting,
          more: more.get(format.id) ?? [],
          files: files.get(format.id) ?? [],
          replacedBy: replaced.get(format.id) ?? null,
        }),
      ),
      plans: (plans.get(stored.id) ?? []).map(({ editionId: _editionId, ...plan }) => ({
        ...plan,
        ended: plan.ended === 1,
      })),
    };
  });
}
