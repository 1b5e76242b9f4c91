import type { TextVersion } from '../../../../src/contract/templates.ts';
import { TEXTS } from '../../../../src/contract/text-kinds.ts';
import { useCommand } from '../../../api.ts';
import { TextInput } from '../../../ui/index.ts';
import { FormDialog } from '../../work/parts/form-dialog.tsx';
import { errorsOf } from '../../work/parts/refusals.ts';
import { useRecord } from '../../work/parts/use-record.ts';
import { TextTemplate } from './text-template.tsx';

/** Edits one text; saving makes a new version and keeps the old. */
export function TextDialog({ text, onClose }: { text: TextVersion; onClose: () => void }) {
  const { name, purpose, subject } = TEXTS[text.kind];
  const form = useRecord({ subject: text.subject, body: text.body, note: '' });
  const save = useCommand('templates.saveText');
  const errorOf = errorsOf(save.refusal);
  const send = async () => {
    const answer = await save.run(
      { kind: text.kind, ...form.draft },
      ({ version }) => `The text is saved as version ${version}.`,
    );
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`Edit the text: ${name}`}
      submit="Save as a new version"
      width="wide"
      blocked={form.dirty ? undefined : 'Nothing is changed.'}
      onClose={onClose}
      onSubmit={() => void send()}
      pending={save.pending}
      refusal={save.refusal}
      fields={['subject', 'body', 'note']}
      dirty={form.dirty}
    >
      <p className="soft">{purpose}</p>
      {subject === '' ? null : (
        <TextInput
          label="Subject"
          name="subject"
          required
          value={form.draft.subject}
          onChange={(next) => form.set('subject', next)}
          error={errorOf('subject')}
          help="The line a mail goes out with; the same words in braces can be used."
        />
      )}
      <TextTemplate
        kind={text.kind}
        label="Text"
        name="body"
        required
        value={form.draft.body}
        onChange={(body) => form.set('body', body)}
        error={errorOf('body')}
      />
      <TextInput
        label="What changed"
        name="note"
        value={form.draft.note}
        onChange={(note) => form.set('note', note)}
        error={errorOf('note')}
        help="A few words for the list of versions; may stay empty."
      />
    </FormDialog>
  );
}
