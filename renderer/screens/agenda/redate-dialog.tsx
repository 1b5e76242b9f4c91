import { useState } from 'react';
import { useCommand, useQueryOf } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { DateInput, Refused } from '../../ui/index.ts';
import { type Slip, SlipPreview } from './slip-preview.tsx';
import { TaskDialog } from './task-dialog.tsx';
import type { Task } from './words.ts';

/** The preview of a slip, for an open task of a release whose day is typed anew. */
function useSlip(
  task: Task,
  dueOn: string,
): { slip: Slip | undefined; error: ReturnType<typeof useQueryOf>['error'] } {
  const slips = task.planKind === 'release' && task.kind !== 'on-sale';
  const enabled = slips && dueOn !== '' && dueOn !== task.dueOn;
  const query = useQueryOf('plans.previewSlip', { taskId: task.id, dueOn: dueOn || task.dueOn }, { enabled });
  return { slip: enabled ? query.data : undefined, error: enabled ? query.error : null };
}

/** Gives a task another day; for one of a release with a look at what moves first. */
export function RedateDialog({ task, onClose }: { task: Task; onClose: () => void }) {
  const redate = useCommand('tasks.redate');
  const letSlip = useCommand('plans.slip');
  const [dueOn, setDueOn] = useState(task.dueOn);
  const [move, setMove] = useState(false);
  const [asked, setAsked] = useState(false);
  const { slip, error } = useSlip(task, dueOn);
  const moveTo = slip && slip.shortBy > 0 && move ? { moveTo: slip.earliest } : {};
  const confirm = async () => {
    setAsked(true);
    if (dueOn === '') return;
    const said = `Now due on ${formatDay(dueOn)}: ${task.title}.`;
    const answer = slip
      ? await letSlip.run({ taskId: task.id, dueOn, ...moveTo }, said)
      : await redate.run({ id: task.id, dueOn }, said);
    if (answer.ok) onClose();
  };
  return (
    <TaskDialog
      title="Give the task another day"
      task={task}
      confirm="Set the day"
      pending={redate.pending || letSlip.pending}
      refusal={redate.refusal ?? letSlip.refusal}
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
        error={
          redate.errorOf('dueOn') ??
          letSlip.errorOf('dueOn') ??
          (asked && dueOn === '' ? 'Choose a day.' : undefined)
        }
      />
      <Refused refusal={error} />
      {slip ? <SlipPreview slip={slip} taskId={task.id} move={move} onMove={setMove} /> : null}
    </TaskDialog>
  );
}
