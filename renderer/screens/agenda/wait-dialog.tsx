import { useState } from 'react';
import { useCommand } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { Button, DateInput, TextInput } from '../../ui/index.ts';
import { TaskDialog } from './task-dialog.tsx';
import type { Task } from './words.ts';

interface WaitDialogProps {
  task: Task;
  /** Names that were waited for before, offered while typing. */
  known: readonly string[];
  onClose: () => void;
}

/** Notes who or what a task waits for and when to look at it again; or opens it again. */
export function WaitDialog({ task, known, onClose }: WaitDialogProps) {
  const wait = useCommand('tasks.wait');
  const [waitingFor, setWaitingFor] = useState(task.waitingFor);
  const [dueOn, setDueOn] = useState(task.dueOn);
  const [asked, setAsked] = useState(false);
  const missing = waitingFor.trim() === '' ? 'Say who or what it waits for.' : undefined;
  const noDay = dueOn === '' ? 'Choose the day to look at it again.' : undefined;
  const send = async (text: string, said: string) => {
    const answer = await wait.run({ id: task.id, waitingFor: text, dueOn }, said);
    if (answer.ok) onClose();
  };
  const confirm = () => {
    setAsked(true);
    if (missing !== undefined || noDay !== undefined) return;
    void send(waitingFor, `Waiting for ${waitingFor.trim()} until ${formatDay(dueOn)}: ${task.title}.`);
  };
  return (
    <TaskDialog
      title="Wait for somebody"
      task={task}
      confirm="Wait"
      pending={wait.pending}
      refusal={wait.refusal}
      fields={['waitingFor', 'dueOn']}
      dirty={waitingFor !== task.waitingFor || dueOn !== task.dueOn}
      onClose={onClose}
      onConfirm={confirm}
    >
      <TextInput
        label="Who or what it waits for"
        name="waitingFor"
        value={waitingFor}
        onChange={setWaitingFor}
        suggestions={known}
        required
        error={wait.errorOf('waitingFor') ?? (asked ? missing : undefined)}
      />
      <DateInput
        label="Look at it again on"
        name="dueOn"
        value={dueOn}
        onChange={setDueOn}
        required
        help="On that day it is back among the tasks to do."
        error={wait.errorOf('dueOn') ?? (asked ? noDay : undefined)}
      />
      {task.standing === 'waiting' ? (
        <p>
          <Button onClick={() => void send('', `To do again: ${task.title}.`)}>Wait no longer</Button>
        </p>
      ) : null}
    </TaskDialog>
  );
}
