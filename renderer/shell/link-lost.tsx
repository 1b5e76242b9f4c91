import { useSyncExternalStore } from 'react';
import { linkStore } from '../transport.ts';
import { Button, Dialog } from '../ui/index.ts';

const SENTENCES = {
  'key ended': 'This window’s key is no longer valid; start Edition Ledger again.',
  unreachable: 'Edition Ledger does not answer this window; start it again.',
} as const;

/** Stops the work when the host has gone or no longer knows this window. */
export function LinkLost() {
  const link = useSyncExternalStore(linkStore.watch, linkStore.read);
  if (link === 'open') return null;
  const again = () => window.location.reload();
  return (
    <Dialog
      open
      onClose={again}
      title="Edition Ledger is not reached"
      width="narrow"
      footer={
        <Button kind="primary" onClick={again}>
          Try again
        </Button>
      }
    >
      <p>{SENTENCES[link]}</p>
      <p>Everything that was saved is in the catalogue file.</p>
    </Dialog>
  );
}
