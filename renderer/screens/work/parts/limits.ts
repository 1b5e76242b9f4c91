import type { Channel } from '../../../../src/contract/channels.ts';
import type { Edition } from '../../../../src/contract/editions.ts';
import { useQueryOf } from '../../../api.ts';

type LimitName = 'descriptionLimit' | 'keywordLimit' | 'subjectLimit';

/** The tightest limit among channels, and the channel that sets it. */
export interface Limit {
  count: number;
  channelName: string;
}

function tightest(channels: readonly Channel[], name: LimitName): Limit | undefined {
  let found: Limit | undefined;
  for (const channel of channels) {
    const count = channel[name];
    if (count !== null && (!found || count < found.count)) found = { count, channelName: channel.name };
  }
  return found;
}

/** What the channels on which an edition is listed take: characters of description, keywords, subjects. */
export function useLimits(edition: Edition | undefined): Record<LimitName, Limit | undefined> {
  const channels = useQueryOf('channels.list', {}, { enabled: edition !== undefined }).data?.channels ?? [];
  const used = new Set(
    edition?.formats.flatMap((format) => format.listings.map((listing) => listing.channelId)),
  );
  const own = channels.filter((channel) => used.has(channel.id));
  return {
    descriptionLimit: tightest(own, 'descriptionLimit'),
    keywordLimit: tightest(own, 'keywordLimit'),
    subjectLimit: tightest(own, 'subjectLimit'),
  };
}

/** 'Lanternshelf takes 7; there are 9.' */
export function limitText(limit: Limit | undefined, count: number): string {
  if (!limit) return '';
  const over = count > limit.count ? `; there are ${count}, so the last are left out there` : '';
  return `${limit.channelName} takes ${limit.count}${over}.`;
}
