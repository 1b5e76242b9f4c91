import type { Edition } from '../contract/editions.ts';
import { Refusal } from '../contract/refusal.ts';
import type { Sheet } from '../contract/submissions.ts';
import type { SheetFacts } from '../rules/sheets/facts.ts';
import {
  COMPARED,
  differencesFrom,
  isCompared,
  Recorded,
  sheetItems,
  sheetText,
  surelySame,
} from '../rules/sheets/sheet.ts';
import type { ReadDb } from '../store/connection.ts';
import { editionsByIds } from '../store/editions.ts';
import { sheetFormats } from '../store/formats.ts';
import { channel } from '../store/schema.ts';
import { readSettings } from '../store/settings.ts';
import { newestSubmissions, placeOfListing, sheetIn, submissionsOf } from '../store/submissions.ts';
import { editionFacts } from './editions.ts';

type Channels = Map<number, typeof channel.$inferSelect>;

function channelsOf(db: ReadDb): Channels {
  return new Map(
    db.orm
      .select()
      .from(channel)
      .all()
      .map((row) => [row.id, row]),
  );
}

function factsIn(
  edition: Edition | undefined,
  listingId: number,
  channels: Channels,
  publisher: string,
): SheetFacts | undefined {
  for (const format of edition?.formats ?? [])
    for (const listing of format.listings) {
      const of = channels.get(listing.channelId);
      if (edition && of && listing.id === listingId)
        return { edition, format, listing, channel: of, publisher };
    }
  return undefined;
}

/** A listing with all that its sheet is made of; throws NOT_FOUND. */
export function sheetFacts(db: ReadDb, listingId: number): SheetFacts {
  const place = placeOfListing(db, listingId);
  const [edition] = place ? editionFacts(db, editionsByIds(db, [place.editionId])) : [];
  const { publisher, imprint } = readSettings(db);
  const facts = factsIn(edition, listingId, channelsOf(db), publisher || imprint);
  if (!facts) throw new Refusal('NOT_FOUND', `There is no listing ${listingId}.`, 'listingId');
  return facts;
}

/** The sheet of a listing with what was sent up to a day, and what differs from it. */
export function sheetOf(db: ReadDb, listingId: number, day: string): Sheet {
  const facts = sheetFacts(db, listingId);
  const { edition, format, listing, channel: of } = facts;
  const items = sheetItems(facts);
  const submissions = submissionsOf(db, listingId, day);
  const newest = submissions[0];
  const head = [`${edition.label} · ${format.name}`, `For ${of.name}`];
  return {
    listingId,
    workId: edition.workId,
    editionId: edition.id,
    formatId: format.id,
    editionLabel: edition.label,
    formatName: format.name,
    channelName: of.name,
    contact: of.contact,
    standing: listing.standing,
    items,
    text: sheetText(head, items),
    submissions: submissions.map(({ id, onDate, takenOn, stepId, note, sheet }) => ({
      id,
      on: onDate,
      takenOn,
      kind: stepId === null ? 'update' : 'sent',
      note,
      items: sheet.items,
    })),
    differences: newest && isCompared(listing.standing) ? differencesFrom(newest.sheet, facts) : [],
  };
}

/** Works looked at together: enough that few queries are made, few enough that their sheets stand in memory. */
const WORKS_AT_ONCE = 500;

/** Listings of some works whose record differs from what was last sent, in a fixed number of queries. */
function differing(
  db: ReadDb,
  day: string,
  works: readonly number[],
  channels: Channels,
): ListingThatDiffers[] {
  const newest = newestSubmissions(db, day, COMPARED, works);
  if (newest.length === 0) return [];
  const ids = [...new Set(newest.map((row) => row.editionId))];
  const editions = new Map(editionsByIds(db, ids).map((row) => [row.id, row]));
  const formats = sheetFormats(db, [...new Set(newest.map((row) => row.formatId))]);
  const recorded = new Map<number, Recorded>();
  return newest.flatMap((listing) => {
    const edition = editions.get(listing.editionId);
    const stored = formats.get(listing.formatId);
    const of = channels.get(listing.channelId);
    if (!edition || !stored || !of) return [];
    const format = { ...stored, hyphenated: '' };
    const known = recorded.get(format.id) ?? new Recorded({ edition, format });
    recorded.set(format.id, known);
    if (surelySame(JSON.parse(listing.sheet), known, { format, listing })) return [];
    const facts = { edition, format, listing, channel: of, publisher: '' };
    const differences = differencesFrom(sheetIn(listing.sheet), facts);
    if (differences.length === 0) return [];
    const labels = differences.map((difference) => difference.label);
    return [{ listingId: listing.listingId, sentOn: listing.onDate, labels }];
  });
}

interface ListingThatDiffers {
  listingId: number;
  sentOn: string;
  labels: string[];
}

/** Listings, of all works or of the named ones, whose record differs from what was last sent. */
export function listingsThatDiffer(
  db: ReadDb,
  day: string,
  works: readonly number[] = db.all<{ id: number }>('SELECT id FROM work ORDER BY id').map(({ id }) => id),
): ListingThatDiffers[] {
  const channels = channelsOf(db);
  const found: ListingThatDiffers[] = [];
  for (let at = 0; at < works.length; at += WORKS_AT_ONCE)
    found.push(...differing(db, day, works.slice(at, at + WORKS_AT_ONCE), channels));
  return found.sort((a, b) => a.listingId - b.listingId);
}
