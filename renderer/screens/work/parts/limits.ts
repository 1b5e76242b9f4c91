import type { Channel } from '../../../../src/contract/channels.ts';
import type { Edition } from '../../../../src/contract/editions.ts';
import { madeOf } from '../../../../src/contract/terms.ts';
import { useQueryOf } from '../../../api.ts';

const LIMITS = ['titleLimit', 'subtitleLimit', 'descriptionLimit', 'keywordLimit', 'subjectLimit'] as const;
type LimitName = (typeof LIMITS)[number];
export type Limits = Record<LimitName, Limit | undefined>;

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

/** The formats of an edition, as far as they tell on which channels it is or may be listed. */
export interface Listed {
  formats: readonly {
    form: string;
    listings: readonly { channelId: number; standing: string }[];
  }[];
}

/**
 * The channels whose limits count for an edition: those on which one of its formats is listed and not gone, and the
 * open ones that take one of its forms. An edition without formats may come to every open channel.
 */
export function channelsFor(edition: Listed | undefined, channels: readonly Channel[]): Channel[] {
  const formats = edition?.formats ?? [];
  const listings = formats.flatMap((format) => format.listings);
  const listed = new Set(
    listings.filter(({ standing }) => standing !== 'gone').map(({ channelId }) => channelId),
  );
  const kinds = new Set<string>(formats.map(({ form }) => madeOf(form)));
  const takes = ({ kind }: Channel) => kind === 'any' || kinds.size === 0 || kinds.has(kind);
  return channels.filter(
    (channel) => listed.has(channel.id) || (channel.closedOn === null && takes(channel)),
  );
}

/** The tightest limit of each kind. */
export function limitsOf(channels: readonly Channel[]): Limits {
  return Object.fromEntries(LIMITS.map((name) => [name, tightest(channels, name)])) as Limits;
}

/** What the channels on which an edition is or may be listed take: characters of its texts, keywords, subjects. */
export function useLimits(edition: Edition | undefined): Limits {
  const channels = useQueryOf('channels.list', {}).data?.channels ?? [];
  return limitsOf(channelsFor(edition, channels));
}

/** 'Lanternshelf takes 7; there are 9.' */
export function limitText(limit: Limit | undefined, count: number): string {
  if (!limit) return '';
  const over = count > limit.count ? `; there are ${count}, so the last are left out there` : '';
  return `${limit.channelName} takes ${limit.count}${over}.`;
}
