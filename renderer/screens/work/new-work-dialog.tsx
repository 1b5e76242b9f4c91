import type { Settings } from '../../../src/contract/settings.ts';
import { EDITION_IDENTITY } from '../../../src/contract/terms.ts';
import { useCommand, useQueryOf } from '../../api.ts';
import { TextArea } from '../../ui/index.ts';
import { namedContributors } from './edition/contributors-input.tsx';
import { IdentityInputs } from './edition/identity-inputs.tsx';
import { blankEdition } from './parts/blanks.ts';
import { FormDialog } from './parts/form-dialog.tsx';
import { useErrors } from './parts/use-inline-errors.ts';
import { useRecord } from './parts/use-record.ts';
import './forms.css';

export interface NewWorkDialogProps {
  open: boolean;
  onClose: () => void;
  /** Called once the work is recorded, with its id. */
  onCreated: (workId: number) => void;
}

/** Asks for a new work and its first edition; formats are added on the work's own screen. */
export function NewWorkDialog(props: NewWorkDialogProps) {
  const settings = useQueryOf('settings.get', {}, { enabled: props.open }).data;
  return props.open && settings ? <OpenNewWork {...props} settings={settings} /> : null;
}

const FIELDS = [...EDITION_IDENTITY, 'workNote'];

function OpenNewWork({ onClose, onCreated, settings }: NewWorkDialogProps & { settings: Settings }) {
  const form = useRecord(blankEdition({ title: '', language: settings.language, imprint: settings.imprint }));
  const note = useRecord({ workNote: '' });
  const create = useCommand('works.create');
  const errorOf = useErrors('works.create', { ...form.changes(), ...note.changes() }, create.refusal);
  const send = async () => {
    const { draft } = form;
    const contributors = namedContributors(draft.contributors);
    const answer = await create.run(
      { ...draft, contributors, workNote: note.draft.workNote },
      `${draft.title} is recorded.`,
    );
    if (!answer.ok) return;
    onClose();
    onCreated(answer.value.workId);
  };
  return (
    <FormDialog
      title="Record a work"
      submit="Record the work"
      width="wide"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={create.pending}
      refusal={create.refusal}
      fields={FIELDS}
      dirty={form.dirty || note.dirty}
    >
      <p className="soft">
        A work is recorded with its first edition. Paperback, e-book and other formats come next; each takes a
        number of its own then. Everything here may still be changed until the first format is sent.
      </p>
      <IdentityInputs form={form} errorOf={errorOf} />
      <TextArea
        label="Note on the work"
        rows={2}
        value={note.draft.workNote}
        onChange={(workNote) => note.set('workNote', workNote)}
        help="For yourselves; it is never sent anywhere."
        error={errorOf('workNote')}
        name="workNote"
      />
    </FormDialog>
  );
}
