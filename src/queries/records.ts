import { EDITION_IDENTITY, type Edition, type Lock } from '../contract/editions.ts';
import { FORMAT_IDENTITY, type Format } from '../contract/formats.ts';
import type { Listing } from '../contract/listings.ts';
import { formName } from '../contract/terms.ts';
import { hyphenate } from '../rules/isbn/index.ts';
import { editionLabel } from '../rules/labels.ts';
import { LOCK_SOURCE } from '../rules/locks.ts';
import { nextSteps } from '../rules/standings.ts';
import type { ReadDb } from '../store/connection.ts';
import type { StoredEdition } from '../store/editions.ts';
import { formatsOfEditions, marks, type StoredFormat } from '../store/formats.ts';
import { listingsOfFormats, type StoredListing } from '../store/listings.ts';

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

function formatFacts(stored: StoredFormat, listings: StoredListing[]): Format {
  const { plannedOn: _plannedOn, ...rest } = stored;
  const first = firstSent(listings);
  const ended = stored.standing === 'retired' || stored.standing === 'cancelled';
  return {
    ...rest,
    name: formName(stored),
    hyphenated: stored.isbn13 === null ? null : (hyphenate(stored.isbn13) ?? stored.isbn13),
    lock: first
      ? {
          since: first.firstSentOn,
          channelName: first.channelName,
          fields: ['isbn', ...FORMAT_IDENTITY],
          reason: `Sent to ${first.channelName} on ${first.firstSentOn}.`,
        }
      : null,
    listings: listings.map((listing) => listingFacts(listing, ended)),
  };
}

function editionLock(formats: StoredFormat[], listings: StoredListing[]): Lock | null {
  const first = firstSent(listings);
  if (!first) return null;
  const format = formats.find((candidate) => candidate.id === first.formatId);
  return {
    since: first.firstSentOn,
    listingId: first.id,
    channelName: first.channelName,
    formatName: format ? formName(format) : '',
    fields: [...EDITION_IDENTITY],
    reason: `Sent to ${first.channelName} on ${first.firstSentOn}.`,
    source: LOCK_SOURCE,
  };
}

interface PlanRow {
  id: number;
  editionId: number;
  kind: 'release' | 'retirement';
  day: string;
  open: number;
  done: number;
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
  const plans = db.all<PlanRow>(
    `SELECT p.id, p.edition_id AS editionId, p.kind, p.day, coalesce(sum(t.standing IN ('open', 'waiting')), 0) AS open,
       coalesce(sum(t.standing = 'done'), 0) AS done
     FROM plan p LEFT JOIN task t ON t.plan_id = p.id
     WHERE p.edition_id IN (${marks(ids)}) AND p.dropped_on IS NULL GROUP BY p.id`,
    ...ids,
  );
  const replacements = new Map(
    db
      .all<{ id: number; old: number }>(
        `SELECT id, replaces_id AS old FROM edition WHERE replaces_id IN (${marks(ids)})`,
        ...ids,
      )
      .map((row) => [row.old, row.id]),
  );
  return editions.map((stored) => {
    const own = formats.filter((format) => format.editionId === stored.id);
    const ownIds = new Set(own.map((format) => format.id));
    const ownListings = listings.filter((listing) => ownIds.has(listing.formatId));
    return {
      ...stored,
      label: editionLabel(stored),
      replacedById: replacements.get(stored.id) ?? null,
      lock: editionLock(own, ownListings),
      formats: own.map((format) =>
        formatFacts(
          format,
          ownListings.filter((listing) => listing.formatId === format.id),
        ),
      ),
      plans: plans
        .filter((plan) => plan.editionId === stored.id)
        .map(({ editionId: _editionId, ...plan }) => plan),
    };
  });
}
