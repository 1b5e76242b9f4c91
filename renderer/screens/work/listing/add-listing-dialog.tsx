import { useState } from 'react';
import { Link } from 'wouter';
import type { Channel } from '../../../../src/contract/channels.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import type { ListingFields } from '../../../../src/contract/listings.ts';
import { madeOf } from '../../../../src/contract/terms.ts';
import { useCommand, useQueryOf } from '../../../api.ts';
import { Button, Dialog, Notice, Select } from '../../../ui/index.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { closeAndGoTo } from '../parts/go-to.ts';
import { useErrors } from '../parts/use-inline-errors.ts';
import { useRecord } from '../parts/use-record.ts';
import { TermsInputs } from './terms-inputs.tsx';

interface AddListingProps {
  format: Format;
  onClose: () => void;
}

/** Open channels that do not list the format yet. */
function channelsFor(channels: readonly Channel[], format: Format): Channel[] {
  const used = new Set(format.listings.map((listing) => listing.channelId));
  return channels.filter((channel) => channel.closedOn === null && !used.has(channel.id));
}

function suits(channel: Channel, format: Format): boolean {
  return channel.kind === 'any' || channel.kind === madeOf(format.form);
}

function usualTerms(channel: Channel | undefined, format: Format): ListingFields {
  return {
    discountBp: channel?.defaultDiscountBp ?? null,
    returns: channel?.defaultReturns ?? null,
    printCost: null,
    onSaleDate: format.onSaleDate,
    reference: '',
    note: '',
  };
}

/** Lists a format on one more channel. */
export function AddListingDialog({ format, onClose }: AddListingProps) {
  const channels = useQueryOf('channels.list', {}).data?.channels;
  if (channels === undefined) return null;
  const free = channelsFor(channels, format);
  if (free.length > 0) return <ChooseChannel format={format} onClose={onClose} channels={free} />;
  return (
    <Dialog
      open
      onClose={onClose}
      title={`List ${format.name} on a channel`}
      width="narrow"
      footer={<Button onClick={onClose}>Keep as it is</Button>}
    >
      <Notice title="No channel is left.">
        {channels.length === 0
          ? 'Record the places where you sell on the '
          : 'This format is listed on every open channel. Record a further one on the '}
        <Link href="/channels">Channels screen</Link>.
      </Notice>
    </Dialog>
  );
}

function choicesOf(channels: readonly Channel[], format: Format) {
  const made = madeOf(format.form);
  const grouped = channels.map((channel) => ({
    value: String(channel.id),
    label: channel.name,
    group: suits(channel, format) ? `For ${made}` : 'For other forms',
  }));
  return grouped.sort((a, b) => Number(a.group.startsWith('For o')) - Number(b.group.startsWith('For o')));
}

function ChooseChannel({ format, onClose, channels }: AddListingProps & { channels: readonly Channel[] }) {
  const first = channels.find((channel) => suits(channel, format));
  const [channelId, setChannelId] = useState(first?.id);
  const form = useRecord(usualTerms(first, format));
  const create = useCommand('listings.create');
  const typed = { formatId: format.id, channelId, ...form.changes() };
  const errorOf = useErrors('listings.create', typed, create.refusal);
  const channel = channels.find((one) => one.id === channelId);
  const choose = (value: string) => {
    const next = channels.find((one) => String(one.id) === value);
    setChannelId(next?.id);
    const { discountBp, returns } = usualTerms(next, format);
    form.merge({ discountBp, returns });
  };
  const send = async () => {
    if (!channel) return;
    const input = { ...form.draft, formatId: format.id, channelId: channel.id };
    const answer = await create.run(input, `${format.name} is listed on ${channel.name}, not sent yet.`);
    if (answer.ok) closeAndGoTo(onClose, 'listing', answer.value.listingId);
  };
  return (
    <FormDialog
      title={`List ${format.name} on a channel`}
      submit="Add the listing"
      blocked={channel ? undefined : 'Choose a channel.'}
      onClose={onClose}
      onSubmit={() => void send()}
      pending={create.pending}
      refusal={create.refusal}
      fields={['channelId', ...Object.keys(form.draft)]}
      dirty={form.dirty}
    >
      <Select
        label="Channel"
        placeholder="Choose a channel"
        value={channelId === undefined ? '' : String(channelId)}
        onChange={choose}
        choices={choicesOf(channels, format)}
        help={
          channel && !suits(channel, format)
            ? `${channel.name} is recorded as a channel for ${channel.kind}.`
            : 'Discount and returns start as this channel usually has them.'
        }
        error={errorOf('channelId')}
        required
        name="channelId"
      />
      <TermsInputs key={channelId} form={form} errorOf={errorOf} printed={madeOf(format.form) === 'print'} />
    </FormDialog>
  );
}
