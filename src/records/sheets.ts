import type { Edition } from '../contract/editions.ts';
import { Refusal } from '../contract/refusal.ts';
import type { Sheet } from '../contract/submissions.ts';
import type { SheetFacts } from '../rules/sheets/facts.ts';
import { differencesFrom, isCompared, sheetItems, sheetText } from '../rules/sheets/sheet.ts';
import type { ReadDb } from '../store/connection.ts';
import { editionsByIds } from '../store/editions.ts';
import { channel } from '../store/schema.ts';
import { readSettings } from '../store/settings.ts';
import { newestSubmissions, placeOfListing, submissionsOf } from '../store/submissions.ts';
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

/** Listings, of all works or of the named ones, whose record differs from what was last sent, in a fixed number of queries. */
export function listingsThatDiffer(
  db: ReadDb,
  day: string,
  works?: readonly number[],
): { listingId: number; sentOn: string; labels: string[] }[] {
  const newest = newestSubmissions(db, day, ['sent', 'proof', 'cleared', 'selling'], works);
  if (newest.length === 0) return [];
  const ids = [...new Set(newest.map((row) => row.editionId))];
  const editions = new Map(editionFacts(db, editionsByIds(db, ids)).map((row) => [row.id, row]));
  const channels = channelsOf(db);
  return newest.flatMap(({ listingId, editionId, onDate, sheet }) => {
    const facts = factsIn(editions.get(editionId), listingId, channels, '');
    const labels = facts ? differencesFrom(sheet, facts).map((difference) => difference.label) : [];
    return labels.length > 0 ? [{ listingId, sentOn: onDate, labels }] : [];
  });
}
