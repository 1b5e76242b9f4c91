import type { Edition } from '../../../../src/contract/editions.ts';
import { useCommand } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { ConfirmDialog, Notice } from '../../../ui/index.ts';
import { fullName } from '../parts/edition-names.ts';
import { closeAt } from '../parts/go-to.ts';

/** Tells that identity fields are open once more. */
export function CorrectionNotice({ correction }: { correction: NonNullable<Edition['correction']> }) {
  return (
    <Notice tone="care" title={`A correction is open since ${formatDay(correction.madeOn)}.`}>
      What was locked may be changed until something of this edition is sent again; then it locks anew. Noted
      as: “{correction.reason}”
    </Notice>
  );
}

/** Opens the identity fields again, where everything was taken back and nothing was ever cleared. */
export function CorrectDialog({ edition, onClose }: { edition: Edition; onClose: () => void }) {
  const correct = useCommand('editions.correct');
  const send = async (reason: string) => {
    const answer = await correct.run({ id: edition.id, reason }, 'The correction is recorded.');
    if (answer.ok) closeAt(onClose, 'edition', edition.id);
  };
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title={`Correct ${fullName(edition)}?`}
      confirm="Record the correction"
      reason="required"
      reasonLabel="What has to be corrected"
      pending={correct.pending}
      refusal={correct.refusal}
      onConfirm={(reason) => void send(reason)}
    >
      Every listing was taken back and none was ever cleared, so the identity fields can be opened once more.
      They lock again when anything of this edition is sent.
    </ConfirmDialog>
  );
}
