import { Refusal } from '../contract/refusal.ts';
import type { ListingStanding } from '../contract/terms.ts';
import type { ReadRow } from '../exchange/sheets/read-row.ts';
import type { StoredListing } from '../store/listings.ts';
import type { CommandContext } from './context.ts';
import { moveListing } from './listing-steps.ts';
import { listingCommands } from './listings.ts';

interface NewListing {
  id: number;
  to: ListingStanding;
  on: string;
}

/** The day on which something of the past is taken to have begun: its publication, where that is past. */
export function sinceOf(row: ReadRow, today: string): string {
  const day = row.format.publicationDate ?? row.format.onSaleDate ?? today;
  return day > today ? today : day;
}

/**
 * Lists a format on the channels a row of a sheet names; answers the names of those that are new. Throws where the
 * format stands otherwise on one of them already.
 */
export function listRow(
  context: CommandContext,
  channels: ReadonlyMap<string, number>,
  formatId: number,
  row: ReadRow,
  listed: readonly StoredListing[],
): string[] {
  const added: NewListing[] = [];
  const names: string[] = [];
  for (const { channel, standing, on } of row.listings) {
    const channelId = channels.get(channel);
    if (channelId === undefined) throw new Refusal('NOT_FOUND', `There is no channel called ${channel}.`);
    const known = listed.find((listing) => listing.channelId === channelId);
    if (known) {
      if (standing === 'unsent' || known.standing === standing) continue;
      throw new Refusal(
        'STEP_REFUSED',
        `This format stands at ${known.standing} on ${channel}, not at ${standing}; move it on the Work screen, where each step has its day.`,
      );
    }
    const { listingId: id } = listingCommands['listings.create'](context, { formatId, channelId });
    added.push({ id, to: standing, on: on ?? sinceOf(row, context.today) });
    names.push(channel);
  }
  move(context, added);
  return names;
}

/** Moves new listings to where they stand: all of them on sale first, since a format that has left takes no step. */
function move(context: CommandContext, listings: readonly NewListing[]): void {
  const left = (to: ListingStanding) => to === 'leaving' || to === 'gone';
  for (const { id, to, on } of listings)
    if (to !== 'unsent') moveListing(context, { id, to: left(to) ? 'selling' : to, on, note: '' });
  for (const { id, to, on } of listings) if (left(to)) moveListing(context, { id, to, on, note: '' });
}
