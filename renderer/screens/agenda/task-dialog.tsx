import type { ReactNode } from 'react';
import type { CallRefused } from '../../api.ts';
import { FormDialog } from '../work/parts/form-dialog.tsx';
import type { Task } from './words.ts';

interface TaskDialogProps {
  title: string;
  task: Task;
  confirm: string;
  pending: boolean;
  refusal: CallRefused | undefined;
  /** Input fields that show their own refusal. */
  fields: readonly string[];
  /** Something was typed: leaving asks first. */
  dirty: boolean;
  onClose: () => void;
  onConfirm: () => void;
  children: ReactNode;
}

/** A small form about one task, which it names first; Enter confirms, Esc leaves everything as it is. */
export function TaskDialog({ task, confirm, onConfirm, children, ...rest }: TaskDialogProps) {
  return (
    <FormDialog {...rest} submit={confirm} onSubmit={onConfirm} width="narrow">
      <div>
        <p className="task-title">{task.title}</p>
        <p className="soft">{task.about}</p>
      </div>
      {children}
    </FormDialog>
  );
}
