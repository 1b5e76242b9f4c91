import { useState } from 'react';
import { Link } from 'wouter';
import type { Channel } from '../../../src/contract/channels.ts';
import { useCommand, useQueryOf } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { useReadOnly } from '../../read-only.ts';
import { Button, ConfirmDialog, DateInput } from '../../ui/index.ts';

interface QuestionProps {
  channel: Channel;
  onClose: () => void;
}

function CloseQuestion({ channel, onClose }: QuestionProps) {
  const today = useQueryOf('catalogue.info', {}).data?.today ?? '';
  const [day, setDay] = useState<string>();
  const command = useCommand('channels.update');
  const closedOn = day ?? today;
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title={`Close ${channel.name}?`}
      confirm="Close the channel"
      pending={command.pending}
      refusal={command.refusal}
      onConfirm={() => {
        if (closedOn === '') return;
        void command
          .run({ id: channel.id, closedOn }, `${channel.name} is closed since ${formatDay(closedOn)}.`)
          .then((answer) => answer.ok && onClose());
      }}
    >
      <div className="stack">
        <p>
          A closed channel takes no new listing. What is listed there stays on record, and you can open the
          channel again.
        </p>
        <DateInput
          label="Closed since"
          required
          value={closedOn}
          onChange={setDay}
          error={closedOn === '' ? 'Choose the day.' : undefined}
        />
      </div>
    </ConfirmDialog>
  );
}

function RemoveQuestion({ channel, onClose }: QuestionProps) {
  const command = useCommand('channels.remove');
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title={`Remove ${channel.name}?`}
      confirm="Remove the channel"
      danger
      pending={command.pending}
      refusal={command.refusal}
      onConfirm={() => {
        void command
          .run({ id: channel.id }, `${channel.name} is removed.`)
          .then((answer) => answer.ok && onClose());
      }}
    >
      It has no listing, so nothing else is lost. The journal keeps what it was.
    </ConfirmDialog>
  );
}

/** Close, open again, and remove while unused: the buttons at the end of a channel's row. */
export function ChannelSteps({ channel }: { channel: Channel }) {
  const readOnly = useReadOnly();
  const reopen = useCommand('channels.update');
  const [asking, setAsking] = useState<'close' | 'remove'>();
  const end = () => setAsking(undefined);
  const still = { disabled: readOnly !== undefined, reason: readOnly };
  const { name } = channel;
  return (
    <div className="channel-steps">
      <Link
        href={`/channels/${channel.id}/reports`}
        className="button button-quiet"
        aria-label={`Reports… of ${name}`}
      >
        Reports…
      </Link>
      {channel.closedOn === null ? (
        <Button kind="quiet" {...still} label={`Close ${name}`} onClick={() => setAsking('close')}>
          Close…
        </Button>
      ) : (
        <Button
          kind="quiet"
          {...still}
          label={`Open again: ${name}`}
          pending={reopen.pending}
          onClick={() => void reopen.run({ id: channel.id, closedOn: null }, `${name} is open again.`)}
        >
          Open again
        </Button>
      )}
      {channel.listings === 0 ? (
        <Button kind="quiet" {...still} label={`Remove ${name}`} onClick={() => setAsking('remove')}>
          Remove…
        </Button>
      ) : null}
      {asking === 'close' ? <CloseQuestion channel={channel} onClose={end} /> : null}
      {asking === 'remove' ? <RemoveQuestion channel={channel} onClose={end} /> : null}
    </div>
  );
}
