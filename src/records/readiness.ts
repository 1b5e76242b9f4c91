import { BLANK_CHANNEL } from '../contract/channels.ts';
import type { Edition } from '../contract/editions.ts';
import type { Format } from '../contract/formats.ts';
import type { FormatReadiness } from '../contract/readiness.ts';
import { Refusal } from '../contract/refusal.ts';
import { type ReadyListing, readinessOf } from '../rules/readiness.ts';
import type { ReadDb } from '../store/connection.ts';
import { editionById } from '../store/editions.ts';
import { fileStandingsOf } from '../store/proof-checks.ts';
import { channel } from '../store/schema.ts';
import { readSettings } from '../store/settings.ts';
import { editionFacts } from './editions.ts';

const ENDED: readonly string[] = ['retired', 'cancelled'];

/** Stands in for the channel of a format that is listed nowhere. */
const ANYWHERE = { ...BLANK_CHANNEL, name: 'every channel' };
const NO_LISTING = {
  id: 1,
  discountBp: null,
  returns: null,
  printCost: null,
  onSaleDate: null,
  reference: '',
  note: '',
  formatId: 1,
  channelId: 1,
  channelName: '',
  standing: 'unsent' as const,
  firstSentOn: null,
  firstClearedOn: null,
  lastStepOn: null,
  steps: [],
  next: [],
};

/** An edition with all that hangs on it; throws NOT_FOUND. */
export function wholeEdition(db: ReadDb, editionId: number): Edition {
  const stored = editionById(db, editionId);
  const [edition] = stored ? editionFacts(db, [stored]) : [];
  if (!edition) throw new Refusal('NOT_FOUND', `There is no edition ${editionId}.`, 'editionId');
  return edition;
}

/** What each running format of an edition needs before it is sent. */
export function editionReadiness(db: ReadDb, editionId: number): FormatReadiness[] {
  const edition = wholeEdition(db, editionId);
  const channels = new Map(
    db.orm
      .select()
      .from(channel)
      .all()
      .map((row) => [row.id, row]),
  );
  const settings = readSettings(db);
  const publisher = settings.publisher || settings.imprint;
  const listed = (format: Format): ReadyListing[] =>
    format.listings.flatMap((listing) => {
      const of = channels.get(listing.channelId);
      if (!of) return [];
      return [
        {
          facts: { edition, format, listing, channel: of, publisher },
          proof: of.proof,
          closedOn: of.closedOn,
        },
      ];
    });
  const files = Map.groupBy(fileStandingsOf(db, [edition.workId]), (file) => file.formatId);
  return edition.formats
    .filter((format) => !ENDED.includes(format.standing))
    .map((format) => {
      const alone = { edition, format, listing: NO_LISTING, channel: ANYWHERE, publisher };
      return readinessOf(format, listed(format), alone, files.get(format.id) ?? []);
    });
}
