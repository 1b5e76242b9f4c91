import { useEffect, useRef } from 'react';
import { useCommand } from '../../api.ts';
import { ConfirmDialog } from '../../ui/index.ts';
import type { CommandGroup } from './changes.ts';
import { sentenceOf } from './sentences.ts';

interface UndoDialogProps {
  /** The newest change, while it is asked about. */
  group: CommandGroup | undefined;
  onClose: () => void;
}

/** Asks before the newest change is taken back, as a new entry of the journal. */
export function UndoDialog({ group, onClose }: UndoDialogProps) {
  const undo = useCommand('journal.undo');
  const wasOpen = useRef(false);
  useEffect(() => {
    // The button that opened the dialog goes with the change it stood at; the heading stays.
    const lost = wasOpen.current && group === undefined && document.activeElement === document.body;
    if (lost) document.querySelector('h1')?.focus();
    wasOpen.current = group !== undefined;
  }, [group]);
  if (group === undefined) return null;
  const sentence = sentenceOf(group.operation);
  const close = () => {
    undo.clear();
    onClose();
  };
  const confirm = async () => {
    const answer = await undo.run({ commandSeq: group.commandSeq }, `Undone: ${sentence}.`);
    if (answer.ok) close();
  };
  return (
    <ConfirmDialog
      open
      onClose={close}
      title="Undo the last change"
      confirm="Undo the change"
      pending={undo.pending}
      refusal={undo.refusal}
      onConfirm={() => void confirm()}
    >
      <p>
        {sentence}: {group.about}
      </p>
      <p>
        Everything this change wrote is put back as it stood before. Both the change and its undoing stay in
        the journal. A number once assigned and a step once taken cannot be undone.
      </p>
    </ConfirmDialog>
  );
}
