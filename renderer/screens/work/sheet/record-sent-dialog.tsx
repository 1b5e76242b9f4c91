import type { Sheet } from '../../../../src/contract/submissions.ts';
import { useCommand } from '../../../api.ts';
import { DateInput, TextArea } from '../../../ui/index.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { errorsOf } from '../parts/refusals.ts';
import { useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';

/** Records that the channel was sent what stands in the sheet now. */
export function RecordSentDialog({ sheet, onClose }: { sheet: Sheet; onClose: () => void }) {
  const { today } = useWork();
  const form = useRecord({ on: today, note: '' });
  const { draft, set } = form;
  const record = useCommand('submissions.record');
  const errorOf = errorsOf(record.refusal);
  const send = async () => {
    const said = `The sheet is kept as what ${sheet.channelName} was sent.`;
    const answer = await record.run({ listingId: sheet.listingId, on: draft.on, note: draft.note }, said);
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`Record what ${sheet.channelName} was sent`}
      submit="Record as sent"
      width="narrow"
      blocked={draft.on === '' ? 'Choose the day.' : undefined}
      onClose={onClose}
      onSubmit={() => void send()}
      pending={record.pending}
      refusal={record.refusal}
      fields={['on', 'note']}
      dirty={form.dirty}
    >
      <p>The sheet as it stands now is kept; later changes are compared with it.</p>
      <DateInput
        label="On which day"
        value={draft.on}
        max={today}
        onChange={(on) => set('on', on)}
        error={errorOf('on')}
        name="on"
      />
      <TextArea
        label="Note"
        rows={2}
        value={draft.note}
        onChange={(note) => set('note', note)}
        error={errorOf('note')}
        name="note"
      />
    </FormDialog>
  );
}
