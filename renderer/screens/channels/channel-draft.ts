import { BLANK_CHANNEL, type Channel, type ChannelFields } from '../../../src/contract/channels.ts';
import type { FieldErrors } from '../settings/parts/input-check.ts';

/** A channel as it is being typed: days may be empty for a while. */
export type ChannelDraft = Omit<ChannelFields, 'leadDays' | 'removalDays'> & {
  leadDays: number | undefined;
  removalDays: number | undefined;
};

export const NEW_CHANNEL: ChannelDraft = { name: '', ...BLANK_CHANNEL };

/** What of a channel is typed in; its counts and its closing are not. */
export function draftOf(channel: Channel): ChannelDraft {
  const { id: _id, closedOn: _closedOn, listings: _listings, selling: _selling, ...fields } = channel;
  return fields;
}

/** What was typed over the channel as it was. */
export function changesFrom(before: ChannelDraft, draft: ChannelDraft): Partial<ChannelDraft> {
  const changed = Object.entries(draft).filter(
    ([field, value]) => JSON.stringify(value) !== JSON.stringify(before[field as keyof ChannelDraft]),
  );
  return Object.fromEntries(changed);
}

const DAYS = 'Write a number of days from 0 to 365.';

/** What the form itself finds missing before the contract is asked. */
export function missingDays(draft: ChannelDraft): FieldErrors {
  return {
    ...(draft.leadDays === undefined ? { leadDays: DAYS } : {}),
    ...(draft.removalDays === undefined ? { removalDays: DAYS } : {}),
  };
}

/** What each part of the fields takes. */
export interface ChannelFieldsProps {
  draft: ChannelDraft;
  onChange: (change: Partial<ChannelDraft>) => void;
  errorOf: (field: string) => string | undefined;
}
