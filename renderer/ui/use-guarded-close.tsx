import { type ReactNode, useState } from 'react';
import { ConfirmDialog } from './confirm-dialog.tsx';

/** Asks before a dialog with typed work in it is closed. Give `close` to the dialog and show `question` beside it. */
export function useGuardedClose(
  dirty: boolean,
  onClose: () => void,
): { close: () => void; question: ReactNode } {
  const [asking, setAsking] = useState(false);
  return {
    close: () => (dirty ? setAsking(true) : onClose()),
    question: (
      <ConfirmDialog
        open={asking}
        onClose={() => setAsking(false)}
        title="Close without saving?"
        confirm="Close without saving"
        danger
        onConfirm={onClose}
      >
        What you typed here is then lost.
      </ConfirmDialog>
    ),
  };
}
