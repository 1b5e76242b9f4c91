import { z } from 'zod';
import demo from '../../resources/demo.json' with { type: 'json' };
import { addBlock } from '../contract/blocks.ts';
import { channelFields } from '../contract/channels.ts';
import { editionFields, newEditionFields } from '../contract/editions.ts';
import { formatFields } from '../contract/formats.ts';
import { listingFields } from '../contract/listings.ts';
import { isoDate } from '../contract/operation.ts';
import { Refusal } from '../contract/refusal.ts';
import { settings } from '../contract/settings.ts';
import { listingStanding } from '../contract/terms.ts';
import { writeSetting } from '../store/settings.ts';
import { blockCommands } from './blocks.ts';
import { channelCommands } from './channels.ts';
import type { CommandContext, Commands } from './context.ts';
import { addFormat } from './formats.ts';
import { moveListing } from './listing-steps.ts';
import { listingCommands } from './listings.ts';
import { nextEditionCommands } from './next-edition.ts';
import { assignNumber } from './number-allocation.ts';
import { workCommands } from './works.ts';

const partialFormat = formatFields.partial().required({ form: true });
const demoListing = z.object({
  channel: z.string(),
  fields: listingFields.partial(),
  steps: z.array(z.tuple([listingStanding, isoDate])).default([]),
});
const demoFormat = z.object({
  fields: partialFormat,
  numberOn: isoDate.optional(),
  listings: z.array(demoListing),
});
const demoWork = z.object({
  edition: newEditionFields,
  formats: z.array(demoFormat),
  next: z
    .object({
      changes: editionFields.partial(),
      add: z.array(partialFormat),
      addedListings: z.array(demoListing),
    })
    .optional(),
});
/** The demo press is data (resources/demo.json), read like anything else from outside. */
const demoShape = z.object({
  settings: settings.partial(),
  block: addBlock.input,
  channels: z.array(channelFields.partial().required({ name: true })),
  works: z.array(demoWork),
});

type DemoListing = z.infer<typeof demoListing>;
type ChannelIds = ReadonlyMap<string, number>;

/** Lists a format on its channels, then takes every step in the order of its day, as it would have happened. */
function listFormat(
  context: CommandContext,
  formatId: number,
  listings: DemoListing[],
  channels: ChannelIds,
): void {
  const steps = listings.flatMap((listing) => {
    const channelId = channels.get(listing.channel) ?? 0;
    const { listingId: id } = listingCommands['listings.create'](context, {
      ...listing.fields,
      formatId,
      channelId,
    });
    return listing.steps.map(([to, on]) => ({ id, to, on, note: '' }));
  });
  for (const step of steps.sort((a, b) => a.on.localeCompare(b.on))) moveListing(context, step);
}

function addWork(context: CommandContext, work: z.infer<typeof demoWork>, channels: ChannelIds): number {
  const { editionId } = workCommands['works.create'](context, { ...work.edition, workNote: '' });
  const carry: number[] = [];
  for (const format of work.formats) {
    const since = format.numberOn ?? context.today;
    const formatId = addFormat({ ...context, today: since }, editionId, format.fields);
    if (format.numberOn) assignNumber(context.db, since, { formatId });
    listFormat(context, formatId, format.listings, channels);
    carry.push(formatId);
  }
  if (!work.next) return carry.length;
  const next = nextEditionCommands['editions.prepareNext'](context, {
    editionId,
    carry,
    add: work.next.add,
    takeNumbers: true,
    changes: work.next.changes,
    carryListings: true,
  });
  const added = next.formatIds.at(-1) ?? 0;
  listFormat(context, added, work.next.addedListings, channels);
  return carry.length + next.formatIds.length;
}

export const demoCommands = {
  'catalogue.demo': (context) => {
    const { db } = context;
    if (
      db.one('SELECT 1 FROM work') ||
      db.one('SELECT 1 FROM number_block') ||
      db.one('SELECT 1 FROM channel')
    )
      throw new Refusal(
        'ALREADY_EXISTS',
        'This catalogue is not empty; open a new catalogue file for the demo.',
      );
    const data = demoShape.parse(demo);
    for (const [name, value] of Object.entries({ ...data.settings, demo: true }))
      writeSetting(db, name, value);
    blockCommands['blocks.add'](context, data.block);
    const channels = new Map(
      data.channels.map((fields) => [
        fields.name,
        channelCommands['channels.create'](context, fields).channelId,
      ]),
    );
    let formats = 0;
    for (const work of data.works) formats += addWork(context, work, channels);
    return { works: data.works.length, formats };
  },
} satisfies Commands<'catalogue.demo'>;
