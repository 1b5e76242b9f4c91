import { useState } from 'react';
import { useLocation } from 'wouter';
import { useCommand } from '../../api.ts';
import { Button, ConfirmDialog, TextArea, TextInput } from '../../ui/index.ts';
import { NewEditionDialog } from './edition/edition-dialog.tsx';
import { FormDialog } from './parts/form-dialog.tsx';
import { useErrors } from './parts/use-inline-errors.ts';
import { useRecord } from './parts/use-record.ts';
import { useWork } from './parts/work-context.tsx';

/** What can be done with the work as a whole. */
export function WorkActions() {
  const { work } = useWork();
  const [doing, setDoing] = useState<'edit' | 'add' | 'delete'>();
  const close = () => setDoing(undefined);
  const empty = work.editions.every((edition) => edition.formats.length === 0);
  return (
    <>
      <Button onClick={() => setDoing('edit')}>Edit work</Button>
      <Button onClick={() => setDoing('add')}>Add an edition</Button>
      {empty ? (
        <Button kind="danger" onClick={() => setDoing('delete')}>
          Delete work
        </Button>
      ) : null}
      {doing === 'edit' ? <EditWork onClose={close} /> : null}
      {doing === 'add' ? <NewEditionDialog onClose={close} /> : null}
      {doing === 'delete' ? <DeleteWork onClose={close} /> : null}
    </>
  );
}

function EditWork({ onClose }: { onClose: () => void }) {
  const { work } = useWork();
  const form = useRecord({ title: work.title, note: work.note });
  const { draft, set } = form;
  const update = useCommand('works.update');
  const errorOf = useErrors('works.update', { id: work.id, ...form.changes() }, update.refusal);
  const send = async () => {
    const answer = await update.run({ id: work.id, ...form.changes() }, 'The work is changed.');
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title="Edit work"
      submit="Save the work"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={update.pending}
      refusal={update.refusal}
      fields={['title', 'note']}
      dirty={form.dirty}
    >
      <TextInput
        label="Name of the work"
        required
        value={draft.title}
        onChange={(title) => set('title', title)}
        help="The name it is kept under here. The titles of its editions are not touched."
        error={errorOf('title')}
        name="title"
      />
      <TextArea
        label="Note"
        rows={4}
        value={draft.note}
        onChange={(note) => set('note', note)}
        help="For yourselves; it is never sent anywhere."
        error={errorOf('note')}
        name="note"
      />
    </FormDialog>
  );
}

function DeleteWork({ onClose }: { onClose: () => void }) {
  const { work } = useWork();
  const [, navigate] = useLocation();
  const remove = useCommand('works.remove');
  const send = async () => {
    const answer = await remove.run({ id: work.id }, `${work.title} is deleted.`);
    if (answer.ok) navigate('/catalogue');
  };
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title={`Delete ${work.title}?`}
      confirm="Delete the work"
      danger
      pending={remove.pending}
      refusal={remove.refusal}
      onConfirm={() => void send()}
    >
      It has no format, so no number and no listing is touched. Only the journal will tell of it.
    </ConfirmDialog>
  );
}
