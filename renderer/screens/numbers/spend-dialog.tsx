import { useState } from 'react';
import type { NumberRow } from '../../../src/contract/numbers.ts';
import { useCommand, useQueryOf } from '../../api.ts';
import { ConfirmDialog, DateInput } from '../../ui/index.ts';

/** What spending a number means, by where it stands. */
function consequence(row: NumberRow): string {
  if (row.standing === 'assigned') return `${row.usedFor} loses this number and needs another one.`;
  if (row.standing === 'reserved') return `It is then no longer there for ${row.usedFor}.`;
  return 'No format will ever take it.';
}

/** Records that a number went wrong: asks for the reason and the day, and says that it is for ever. */
export function SpendDialog({ row, onClose }: { row: NumberRow; onClose: () => void }) {
  const today = useQueryOf('catalogue.info', {}).data?.today;
  const [day, setDay] = useState<string>();
  const command = useCommand('numbers.spend');
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title={`Record ${row.hyphenated} as spent?`}
      confirm="Spend the number for ever"
      danger
      reason="required"
      reasonLabel="What went wrong"
      reasonHelp="For example: printed on the wrong cover; given to a printer by mistake."
      pending={command.pending}
      refusal={command.refusal}
      onConfirm={(reason) => {
        void command
          .run(
            { isbn: row.isbn13, reason, on: day || undefined },
            `${row.hyphenated} is spent and will never be used again.`,
          )
          .then((answer) => answer.ok && onClose());
      }}
    >
      <div className="stack">
        <p>
          <strong>This is for ever.</strong> A number that was printed, published or given out by mistake is
          never used again, not even for the same book. {consequence(row)}
        </p>
        <DateInput label="On which day" value={day ?? today ?? ''} onChange={setDay} max={today} />
      </div>
    </ConfirmDialog>
  );
}
