import { useState } from 'react';
import { useCommand, useQueryOf } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { DateInput, TextArea } from '../../ui/index.ts';
import { FormDialog } from '../work/parts/form-dialog.tsx';
import { errorsOf } from '../work/parts/refusals.ts';
import { type Finding, halfAYearAfter } from './words.ts';

/** Accepts a finding with a reason, until a day on which it is looked at again. */
export function AcceptDialog({ finding, onClose }: { finding: Finding; onClose: () => void }) {
  const today = useQueryOf('catalogue.info', {}).data?.today;
  const accept = useCommand('audit.accept');
  const [reason, setReason] = useState('');
  const [chosen, setChosen] = useState<string>();
  const reviewOn = chosen ?? (today === undefined ? '' : halfAYearAfter(today));
  const errorOf = errorsOf(accept.refusal);
  const { fingerprint } = finding;
  const send = async () => {
    const answer = await accept.run(
      { fingerprint, reason, reviewOn },
      `Accepted until ${formatDay(reviewOn)}. It comes back sooner if its facts change.`,
    );
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title="Accept this finding"
      submit="Accept it"
      width="narrow"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={accept.pending}
      refusal={accept.refusal}
      fields={['reason', 'reviewOn']}
      dirty={reason !== ''}
    >
      <p>{finding.message}</p>
      <p className="soft">
        It then stands apart from what is to be mended. It comes back on the day you choose here, or as soon
        as what it says changes.
      </p>
      <TextArea
        label="Why it may stay as it is"
        required
        rows={3}
        value={reason}
        onChange={setReason}
        help="Kept with the finding and in the journal."
        error={errorOf('reason')}
        name="reason"
      />
      <DateInput
        label="Look at it again on"
        required
        value={reviewOn}
        onChange={setChosen}
        error={errorOf('reviewOn')}
      />
    </FormDialog>
  );
}
