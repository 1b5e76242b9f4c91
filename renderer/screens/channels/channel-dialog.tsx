import { useState } from 'react';
import { type Channel, createChannel, updateChannel } from '../../../src/contract/channels.ts';
import { useReadOnly } from '../../read-only.ts';
import { Button, Dialog, Notice, Refused } from '../../ui/index.ts';
import { useGuardedClose } from '../../ui/use-guarded-close.tsx';
import { type CheckedCommand, useCheckedCommand } from '../settings/parts/use-checked-command.ts';
import { useInlineErrors } from '../work/parts/use-inline-errors.ts';
import { type ChannelDraft, changesFrom, draftOf, missingDays, NEW_CHANNEL } from './channel-draft.ts';
import {
  LimitsItHas,
  LocksBesides,
  RequestText,
  TimeItTakes,
  UsualTerms,
  WhatItIs,
} from './channel-fields.tsx';
import { FormItems } from './form-items.tsx';

const PARTS = [
  { title: 'What it is', fields: WhatItIs },
  { title: 'How long it takes', fields: TimeItTakes },
  { title: 'What it accepts', fields: LimitsItHas },
  { title: 'Its form', fields: FormItems },
  { title: 'Usual terms', fields: UsualTerms },
  { title: 'Locks', fields: LocksBesides },
  { title: 'Request text', fields: RequestText },
] as const;

const SHOWN = Object.keys(NEW_CHANNEL);

interface FormProps {
  title: string;
  before: ChannelDraft;
  confirm: string;
  command: Pick<CheckedCommand<'channels.create'>, 'form' | 'errorOf' | 'pending' | 'refusal'>;
  /** What the contract finds wrong with what is typed. */
  operation: 'channels.create' | 'channels.update';
  id?: number | undefined;
  save: (draft: ChannelDraft) => void;
  onClose: () => void;
}

function ChannelForm(props: FormProps) {
  const { title, before, confirm, command, save, onClose } = props;
  const [draft, setDraft] = useState(before);
  const readOnly = useReadOnly();
  const inline = useInlineErrors(props.operation, { id: props.id, ...changesFrom(before, draft) });
  const guard = useGuardedClose(JSON.stringify(draft) !== JSON.stringify(before), onClose);
  return (
    <>
      <Dialog open onClose={guard.close} title={title} width="wide">
        <form
          className="stack"
          ref={command.form}
          onSubmit={(event) => {
            event.preventDefault();
            save(draft);
          }}
        >
          {readOnly === undefined ? null : <Notice>{readOnly}</Notice>}
          {PARTS.map((part) => (
            <fieldset key={part.title} className="form-part" disabled={readOnly !== undefined}>
              <legend>{part.title}</legend>
              <div className="stack">
                <part.fields
                  draft={draft}
                  onChange={(change) => setDraft((now) => ({ ...now, ...change }))}
                  errorOf={(field) => command.errorOf(field) ?? inline(field)}
                />
              </div>
            </fieldset>
          ))}
          <Refused refusal={command.refusal} fields={SHOWN} />
          <div className="row form-end">
            <Button
              type="submit"
              kind="primary"
              pending={command.pending}
              disabled={readOnly !== undefined}
              reason={readOnly}
            >
              {confirm}
            </Button>
            <Button onClick={guard.close}>Cancel</Button>
          </div>
        </form>
      </Dialog>
      {guard.question}
    </>
  );
}

/** Makes a channel of the user's own. */
export function AddChannelDialog({ onClose }: { onClose: () => void }) {
  const command = useCheckedCommand('channels.create', createChannel.input);
  const save = async (draft: ChannelDraft) => {
    const answer = await command.send(draft, `${draft.name.trim()} is added.`, missingDays(draft));
    if (answer?.ok) onClose();
  };
  return (
    <ChannelForm
      title="Add a channel"
      confirm="Add the channel"
      operation="channels.create"
      before={NEW_CHANNEL}
      command={command}
      save={(draft) => void save(draft)}
      onClose={onClose}
    />
  );
}

/** Changes a channel. */
export function EditChannelDialog({ channel, onClose }: { channel: Channel; onClose: () => void }) {
  const command = useCheckedCommand('channels.update', updateChannel.input);
  const [before] = useState(() => draftOf(channel));
  const save = async (draft: ChannelDraft) => {
    const input = { ...draft, id: channel.id };
    const answer = await command.send(input, `${draft.name.trim()} is saved.`, missingDays(draft));
    if (answer?.ok) onClose();
  };
  return (
    <ChannelForm
      title={channel.name}
      confirm="Save"
      operation="channels.update"
      id={channel.id}
      before={before}
      command={command}
      save={(draft) => void save(draft)}
      onClose={onClose}
    />
  );
}
