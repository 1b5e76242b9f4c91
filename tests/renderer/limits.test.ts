import { describe, expect, it } from 'vitest';
import { channelsFor, type Listed, limitsOf } from '../../renderer/screens/work/parts/limits.ts';
import { BLANK_CHANNEL, type Channel } from '../../src/contract/channels.ts';

const channel = (id: number, more: Partial<Channel>): Channel => ({
  ...BLANK_CHANNEL,
  id,
  name: `Channel ${id}`,
  closedOn: null,
  listings: 0,
  selling: 0,
  ...more,
});
const channels = [
  channel(1, { kind: 'print', titleLimit: 80, subjectLimit: 3 }),
  channel(2, { kind: 'e-book', titleLimit: 60, descriptionLimit: 4000 }),
  channel(3, { kind: 'any', titleLimit: 40, closedOn: '2025-01-01', descriptionLimit: 500 }),
];
const edition = (form: string, ...listings: [number, string][]): Listed => ({
  formats: [{ form, listings: listings.map(([channelId, standing]) => ({ channelId, standing })) }],
});
const idsFor = (listed: Listed | undefined) => channelsFor(listed, channels).map(({ id }) => id);

describe('the channels whose limits count', () => {
  it('are the open ones that take a form of the edition, and those on which it is listed', () => {
    expect(idsFor(edition('BC'))).toEqual([1]);
    expect(idsFor(edition('ED'))).toEqual([2]);
    expect(idsFor(edition('BC', [2, 'sent'], [3, 'selling']))).toEqual([1, 2, 3]);
    expect(idsFor(edition('BC', [3, 'gone']))).toEqual([1]);
  });

  it('are all open ones before there is a format', () => {
    expect(idsFor(undefined)).toEqual([1, 2]);
    expect(idsFor({ formats: [] })).toEqual([1, 2]);
  });
});

it('the tightest limit names its channel; none is none', () => {
  expect(limitsOf(channels.slice(0, 2))).toEqual({
    titleLimit: { count: 60, channelName: 'Channel 2' },
    subtitleLimit: undefined,
    descriptionLimit: { count: 4000, channelName: 'Channel 2' },
    keywordLimit: undefined,
    subjectLimit: { count: 3, channelName: 'Channel 1' },
  });
});
