import type { KeptLine } from '../../../../src/contract/proof-checks/checks.ts';
import { useCommand } from '../../../api.ts';
import { TextArea } from '../../../ui/index.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { errorsOf } from '../parts/refusals.ts';
import { useRecord } from '../parts/use-record.ts';

/** Asks why it is right that the file differs from the record. */
export function ReasonDialog({ line, onClose }: { line: KeptLine; onClose: () => void }) {
  const give = useCommand('proofChecks.reason');
  const form = useRecord({ reason: line.earlierReason ?? '' });
  const send = async () => {
    const answer = await give.run(
      { lineId: line.id, reason: form.draft.reason },
      `The reason for ${line.label} is kept.`,
    );
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`Why is this right: ${line.label}?`}
      submit="Keep the reason"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={give.pending}
      refusal={give.refusal}
      fields={['reason']}
      dirty={form.dirty}
    >
      <p>
        On record: <strong>{line.expected || '—'}</strong>. In the file: <strong>{line.found || '—'}</strong>.
      </p>
      <TextArea
        label="Reason"
        required
        rows={3}
        value={form.draft.reason}
        onChange={(reason) => form.set('reason', reason)}
        help="It is kept with this check for ever and shown wherever the check is."
        error={errorsOf(give.refusal)('reason')}
        name="reason"
      />
      {line.earlierReason === null ? null : (
        <p className="soft">This reason was given for the same difference at an earlier check.</p>
      )}
    </FormDialog>
  );
}
