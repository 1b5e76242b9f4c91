import { useState } from 'react';
import { useCommand } from '../../api.ts';
import { DateInput, Select, TextArea, TextInput } from '../../ui/index.ts';
import { useWorkChoices } from '../catalogue/work-choices.ts';
import { FormDialog } from '../work/parts/form-dialog.tsx';
import { useErrors } from '../work/parts/use-inline-errors.ts';
import { type RecordForm, useRecord } from '../work/parts/use-record.ts';

const NO_WORK = 'none';

interface NewTask {
  title: string;
  dueOn: string;
  work: string;
  note: string;
}

/** What is missing, by input. */
function missing({ title, dueOn }: NewTask): { title?: string; dueOn?: string } {
  return {
    ...(title.trim() === '' ? { title: 'Say what is to be done.' } : {}),
    ...(dueOn === '' ? { dueOn: 'Choose a day.' } : {}),
  };
}

interface InputsProps {
  form: RecordForm<NewTask>;
  errorOf: (field: keyof NewTask | 'workId') => string | undefined;
}

function Inputs({ form: { draft, set }, errorOf }: InputsProps) {
  const works = useWorkChoices(draft.work === NO_WORK ? undefined : Number(draft.work));
  return (
    <>
      <TextInput
        label="What is to be done"
        name="title"
        value={draft.title}
        onChange={(title) => set('title', title)}
        required
        error={errorOf('title')}
      />
      <DateInput
        label="Due on"
        name="dueOn"
        value={draft.dueOn}
        onChange={(dueOn) => set('dueOn', dueOn)}
        required
        error={errorOf('dueOn')}
      />
      <Select
        label="About"
        name="workId"
        value={draft.work}
        onChange={(work) => set('work', work)}
        choices={[{ value: NO_WORK, label: 'No work in particular' }, ...works]}
        error={errorOf('workId')}
      />
      <TextArea
        label="Note"
        name="note"
        rows={2}
        value={draft.note}
        onChange={(note) => set('note', note)}
        error={errorOf('note')}
      />
    </>
  );
}

interface NewTaskDialogProps {
  today: string;
  /** The work that the agenda is filtered by, chosen first. */
  workId: number | undefined;
  onClose: () => void;
}

/** Adds a task of one's own, about a work or about nothing in particular. */
export function NewTaskDialog({ today, workId, onClose }: NewTaskDialogProps) {
  const create = useCommand('tasks.create');
  const work = workId === undefined ? NO_WORK : String(workId);
  const form = useRecord<NewTask>({ title: '', dueOn: today, work, note: '' });
  const [asked, setAsked] = useState(false);
  const { title, dueOn, note } = form.changes();
  const refused = useErrors('tasks.create', { title, dueOn, note }, create.refusal);
  const lacks: Partial<Record<string, string>> = missing(form.draft);
  const send = async () => {
    setAsked(true);
    if (Object.keys(lacks).length > 0) return;
    const { title, dueOn, note } = form.draft;
    const about = form.draft.work === NO_WORK ? {} : { workId: Number(form.draft.work) };
    const answer = await create.run({ title, dueOn, note, ...about }, `Added: ${title.trim()}.`);
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title="New task"
      submit="Add the task"
      width="narrow"
      pending={create.pending}
      refusal={create.refusal}
      fields={['title', 'dueOn', 'workId', 'note']}
      dirty={form.dirty}
      onClose={onClose}
      onSubmit={() => void send()}
    >
      <Inputs form={form} errorOf={(field) => refused(field) ?? (asked ? lacks[field] : undefined)} />
    </FormDialog>
  );
}
