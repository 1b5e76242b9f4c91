import { Fragment } from 'react';
import { Link } from 'wouter';
import type { Channel } from '../../../src/contract/channels.ts';
import { formatDay } from '../../lib/dates.ts';
import { type Column, Sign, Table } from '../../ui/index.ts';
import { ChannelSteps } from './channel-steps.tsx';
import { KIND_WORDS, limitsInWords, listingsInWords, PROOF_WORDS, termsInWords } from './words.ts';

/** An address that may break over lines behind its own signs. */
function Breakable({ text }: { text: string }) {
  const parts = text.split(/(?<=[@./-])/);
  return parts.map((part, index) => (
    <Fragment key={`${String(index)}${part}`}>
      {part}
      <wbr />
    </Fragment>
  ));
}

/** How many listings it has, and that it is closed, by word and sign. */
function Listings({ channel }: { channel: Channel }) {
  return (
    <div>
      <p className="nowrap">
        {channel.listings === 0 ? (
          listingsInWords(channel)
        ) : (
          <Link
            href={`/channels/${channel.id}/listings`}
            aria-label={`Listings on ${channel.name}: ${listingsInWords(channel)}`}
          >
            {listingsInWords(channel)}
          </Link>
        )}
      </p>
      {channel.closedOn === null ? null : (
        <p className="standing standing-quiet">
          <Sign name="close" />
          <span>
            closed <span className="standing-detail nowrap">since {formatDay(channel.closedOn)}</span>
          </span>
        </p>
      )}
    </div>
  );
}

const COLUMNS: Column<Channel>[] = [
  { key: 'name', header: 'Channel', cell: (channel) => channel.name, sortBy: (channel) => channel.name },
  {
    key: 'kind',
    header: 'Takes',
    cell: (channel) => (
      <div>
        <p className="nowrap">{KIND_WORDS[channel.kind]}</p>
        <p className="soft channel-contact">
          <Breakable text={channel.contact} />
        </p>
      </div>
    ),
    sortBy: (channel) => KIND_WORDS[channel.kind],
  },
  {
    key: 'listings',
    header: 'Listings',
    cell: (channel) => <Listings channel={channel} />,
    sortBy: (channel) => channel.listings,
  },
  {
    key: 'days',
    header: 'Days and proof',
    cell: (channel) => (
      <div>
        <p className="nowrap">{channel.leadDays.toLocaleString()} to be on sale</p>
        <p className="nowrap">{channel.removalDays.toLocaleString()} to be taken down</p>
        <p className="nowrap">{PROOF_WORDS[channel.proof]}</p>
      </div>
    ),
    sortBy: (channel) => channel.leadDays,
  },
  { key: 'limits', header: 'Limits', cell: limitsInWords },
  { key: 'terms', header: 'Usual terms', cell: termsInWords },
  {
    key: 'steps',
    header: 'Steps',
    headerHidden: true,
    cell: (channel) => <ChannelSteps channel={channel} />,
  },
];

interface ChannelTableProps {
  channels: readonly Channel[];
  onOpen: (channel: Channel) => void;
}

/** The channels with what each is like; a channel's name opens it. */
export function ChannelTable({ channels, onOpen }: ChannelTableProps) {
  return (
    <div className="channel-table">
      <Table
        caption="Channels"
        columns={COLUMNS}
        rows={channels}
        rowKey={(channel) => channel.id}
        onOpen={onOpen}
        rowTone={(channel) => (channel.closedOn === null ? undefined : 'quiet')}
        initialSort={{ key: 'name', down: false }}
      />
    </div>
  );
}
