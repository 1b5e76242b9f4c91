import { DoneDialog } from './done-dialog.tsx';
import { DropDialog } from './drop-dialog.tsx';
import { NewTaskDialog } from './new-task-dialog.tsx';
import { RedateDialog } from './redate-dialog.tsx';
import { RequestDialog } from './request-dialog.tsx';
import { WaitDialog } from './wait-dialog.tsx';
import { type Asking, blockedBy, type Task } from './words.ts';

/** What the open dialog asks. */
export type Question = { what: Asking; task: Task } | { what: 'new' };

interface AgendaDialogProps {
  question: Question | undefined;
  today: string;
  workId: number | undefined;
  /** Whom tasks wait for already. */
  known: readonly string[];
  readOnly: string | undefined;
  onChange: (question: Question | undefined) => void;
}

/** The dialog of the question that is open, if one is. */
export function AgendaDialog({ question, today, workId, known, readOnly, onChange }: AgendaDialogProps) {
  const onClose = () => onChange(undefined);
  if (question === undefined) return null;
  if (question.what === 'new') return <NewTaskDialog today={today} workId={workId} onClose={onClose} />;
  const { what, task } = question;
  if (what === 'done') return <DoneDialog task={task} today={today} onClose={onClose} />;
  if (what === 'wait') return <WaitDialog task={task} known={known} onClose={onClose} />;
  if (what === 'redate') return <RedateDialog task={task} onClose={onClose} />;
  if (what === 'drop') return <DropDialog task={task} onClose={onClose} />;
  return (
    <RequestDialog
      task={task}
      unsendable={readOnly ?? blockedBy(task)}
      onClose={onClose}
      onSent={() => onChange({ what: 'done', task })}
    />
  );
}
