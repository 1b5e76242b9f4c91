import { useState } from 'react';
import { useCommand } from '../../../api.ts';
import { Checkbox } from '../../../ui/index.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { errorsOf } from '../parts/refusals.ts';
import { type DeskDialogProps, DeskInputs, daysOf, useDeskDraft } from './desk-inputs.tsx';
import { RequestPart } from './request-part.tsx';

/** Asks a channel to stop selling: the text, and the record that it was asked. */
export function AskDialog({
  row,
  name,
  onClose,
  replacement,
}: DeskDialogProps & { replacement: string | null }) {
  const form = useDeskDraft();
  const { draft } = form;
  const [anyway, setAnyway] = useState(false);
  const ask = useCommand('retirement.ask');
  const waits = row.next === 'wait for sale';
  const send = async () => {
    const answer = await ask.run(
      { listingId: row.listingId, ...daysOf(draft), beforeReplacement: anyway },
      `${row.channelName} was asked to stop selling ${row.formatName}.`,
    );
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`Ask ${row.channelName} to stop selling`}
      submit="Record that it was asked"
      width="wide"
      blocked={
        waits && !anyway ? `${replacement} is not on sale there yet; tick the box to ask anyway.` : undefined
      }
      onClose={onClose}
      onSubmit={() => void send()}
      pending={ask.pending}
      refusal={ask.refusal}
      fields={['on', 'promisedBy', 'note', 'beforeReplacement']}
      dirty={draft.note !== ''}
    >
      <RequestPart listingId={row.listingId} kind="removal request" />
      {waits ? (
        <Checkbox
          label={`Ask although ${replacement} is not on sale there yet`}
          checked={anyway}
          onChange={setAnyway}
          help={`Readers will find neither of the two in place of ${name} for a while.`}
          error={errorsOf(ask.refusal)('beforeReplacement')}
        />
      ) : null}
      <DeskInputs form={form} errorOf={errorsOf(ask.refusal)} promise />
    </FormDialog>
  );
}
