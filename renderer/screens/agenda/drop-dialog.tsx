import { useCommand } from '../../api.ts';
import { ConfirmDialog } from '../../ui/index.ts';
import type { Task } from './words.ts';

/** Drops a task with a reason; what came after it no longer waits for it. */
export function DropDialog({ task, onClose }: { task: Task; onClose: () => void }) {
  const drop = useCommand('tasks.drop');
  const confirm = async (reason: string) => {
    const answer = await drop.run({ id: task.id, reason }, `Dropped: ${task.title}.`);
    if (answer.ok) onClose();
  };
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title="Drop the task"
      confirm="Drop the task"
      danger
      reason="required"
      reasonHelp="Kept with the task and in the journal."
      pending={drop.pending}
      refusal={drop.refusal}
      onConfirm={(reason) => void confirm(reason)}
    >
      <p className="task-title">{task.title}</p>
      <p className="soft">{task.about}</p>
      <p>It will not be done, and no listing moves. Tasks that come after it no longer wait for it.</p>
    </ConfirmDialog>
  );
}
