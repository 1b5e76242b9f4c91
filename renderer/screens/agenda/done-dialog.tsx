import { useState } from 'react';
import { useCommand } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { DateInput, TextArea } from '../../ui/index.ts';
import { LockNotice, useComingLocks } from './lock-notice.tsx';
import { TaskDialog } from './task-dialog.tsx';
import { moveInWords, type Task } from './words.ts';

interface DoneDialogProps {
  task: Task;
  today: string;
  onClose: () => void;
}

/** Marks a task done on a day, after saying what this moves and what it locks. */
export function DoneDialog({ task, today, onClose }: DoneDialogProps) {
  const finish = useCommand('tasks.finish');
  const locks = useComingLocks(task);
  const [on, setOn] = useState(today);
  const [note, setNote] = useState('');
  const [asked, setAsked] = useState(false);
  const wrongDay =
    on === '' || on > today
      ? `Choose the day on which it was done, up to today, ${formatDay(today)}.`
      : undefined;
  const moves = moveInWords(task);
  const confirm = async () => {
    setAsked(true);
    if (wrongDay !== undefined) return;
    const answer = await finish.run({ id: task.id, on, note }, (value) => {
      const moved = value.moved[0];
      return `Done: ${task.title}.${moved ? ` The listing now stands at ${moved.standing}.` : ''}`;
    });
    if (answer.ok) onClose();
  };
  return (
    <TaskDialog
      title="Mark the task done"
      task={task}
      confirm={locks.length > 0 ? 'Mark done and lock' : 'Mark done'}
      pending={finish.pending}
      refusal={finish.refusal}
      fields={['on', 'note']}
      dirty={note !== ''}
      onClose={onClose}
      onConfirm={() => void confirm()}
    >
      {locks.length > 0 ? <LockNotice locks={locks} /> : null}
      <DateInput
        label="Done on"
        name="on"
        value={on}
        onChange={setOn}
        required
        help={moves ? `From that day, ${moves}.` : undefined}
        error={finish.errorOf('on') ?? (asked ? wrongDay : undefined)}
      />
      <TextArea
        label="Note"
        name="note"
        value={note}
        onChange={setNote}
        rows={2}
        help="Kept with the task, such as a reference the channel gave."
        error={finish.errorOf('note')}
      />
    </TaskDialog>
  );
}
