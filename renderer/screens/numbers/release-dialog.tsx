import type { NumberRow } from '../../../src/contract/numbers.ts';
import { useCommand } from '../../api.ts';
import { ConfirmDialog } from '../../ui/index.ts';

/** Asks before a reserved number is given back. */
export function ReleaseDialog({ row, onClose }: { row: NumberRow; onClose: () => void }) {
  const command = useCommand('numbers.release');
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title={`Release ${row.hyphenated}?`}
      confirm="Release the number"
      pending={command.pending}
      refusal={command.refusal}
      onConfirm={() => {
        void command
          .run({ isbn: row.isbn13 }, `${row.hyphenated} is free again.`)
          .then((answer) => answer.ok && onClose());
      }}
    >
      It is reserved for {row.usedFor}. Released, it is free, and any format may take it.
    </ConfirmDialog>
  );
}
