import { useState } from 'react';
import { useCommand } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { DateInput } from '../../ui/index.ts';
import { TaskDialog } from './task-dialog.tsx';
import type { Task } from './words.ts';

/** Gives a task another day. */
export function RedateDialog({ task, onClose }: { task: Task; onClose: () => void }) {
  const redate = useCommand('tasks.redate');
  const [dueOn, setDueOn] = useState(task.dueOn);
  const [asked, setAsked] = useState(false);
  const confirm = async () => {
    setAsked(true);
    if (dueOn === '') return;
    const answer = await redate.run({ id: task.id, dueOn }, `Now due on ${formatDay(dueOn)}: ${task.title}.`);
    if (answer.ok) onClose();
  };
  return (
    <TaskDialog
      title="Give the task another day"
      task={task}
      confirm="Set the day"
      pending={redate.pending}
      refusal={redate.refusal}
      fields={['dueOn']}
      dirty={dueOn !== task.dueOn}
      onClose={onClose}
      onConfirm={() => void confirm()}
    >
      <DateInput
        label="Due on"
        name="dueOn"
        value={dueOn}
        onChange={setDueOn}
        required
        help={
          task.planId === null
            ? undefined
            : 'Tasks that come after this one move along where they would be due before it.'
        }
        error={redate.errorOf('dueOn') ?? (asked && dueOn === '' ? 'Choose a day.' : undefined)}
      />
    </TaskDialog>
  );
}
