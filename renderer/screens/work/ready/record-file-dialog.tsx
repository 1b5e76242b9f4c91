import { useState } from 'react';
import type { Format } from '../../../../src/contract/formats.ts';
import { type FileKind, fileKindName, fileKindsOf, madeOf } from '../../../../src/contract/terms.ts';
import { useCommand } from '../../../api.ts';
import { DateInput, Field, Select, TextArea, TextInput } from '../../../ui/index.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { closeAt } from '../parts/go-to.ts';
import type { ErrorOf } from '../parts/refusals.ts';
import { useErrors } from '../parts/use-inline-errors.ts';
import { type RecordForm, useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';

/** Larger files are not read for their digest: the window would hold them whole. */
const MOST_BYTES = 400_000_000;

/** SHA-256 of a file as 64 small hexadecimal digits; null where the window cannot work it out. */
async function digestOf(file: File): Promise<string | null> {
  if (file.size > MOST_BYTES || !globalThis.crypto?.subtle) return null;
  const digest = await crypto.subtle.digest('SHA-256', await file.arrayBuffer());
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

interface ChosenFile {
  fileName: string;
  sha256: string;
}

/** Takes name and digest of a file of the person's own; the file itself stays where it is. */
function ChooseFile({ onChosen }: { onChosen: (file: ChosenFile) => void }) {
  const [trouble, setTrouble] = useState<string>();
  const read = async (file: File | undefined) => {
    if (!file) return;
    setTrouble(undefined);
    try {
      onChosen({ fileName: file.name, sha256: (await digestOf(file)) ?? '' });
    } catch {
      setTrouble(`${file.name} cannot be read; see that it is still there and choose it again.`);
    }
  };
  return (
    <Field
      label="Choose the file"
      error={trouble}
      help="Only its name and its digest are taken, so that it can be known again; the file stays where it is."
    >
      {(ids) => <input {...ids} type="file" onChange={(event) => void read(event.target.files?.[0])} />}
    </Field>
  );
}

interface FileDraft extends ChosenFile {
  kind: FileKind;
  finalOn: string;
  note: string;
}

interface FileInputsProps {
  form: RecordForm<FileDraft>;
  errorOf: ErrorOf;
  kinds: readonly FileKind[];
  /** Name of the file whose place it takes. */
  before: string | undefined;
  today: string;
}

function FileInputs({ form, errorOf, kinds, before, today }: FileInputsProps) {
  const { draft, set, merge } = form;
  return (
    <>
      <Select
        label="Which file"
        value={draft.kind}
        onChange={(value) => set('kind', kinds.find((one) => one === value) ?? draft.kind)}
        choices={kinds.map((value) => ({ value, label: fileKindName(value) }))}
        help={before ? `Takes the place of ${before}, which is kept as replaced.` : undefined}
        error={errorOf('kind')}
        name="kind"
      />
      <ChooseFile onChosen={merge} />
      <TextInput
        label="File name"
        required
        value={draft.fileName}
        onChange={(fileName) => set('fileName', fileName)}
        error={errorOf('fileName')}
        name="fileName"
      />
      <DateInput
        label="Final on"
        value={draft.finalOn}
        max={today}
        onChange={(finalOn) => set('finalOn', finalOn)}
        error={errorOf('finalOn')}
        name="finalOn"
      />
      <TextInput
        label="Digest (SHA-256)"
        value={draft.sha256}
        onChange={(sha256) => set('sha256', sha256)}
        help="May stay empty."
        error={errorOf('sha256')}
        name="sha256"
      />
      <TextArea
        label="Note"
        rows={2}
        value={draft.note}
        onChange={(note) => set('note', note)}
        error={errorOf('note')}
        name="note"
      />
    </>
  );
}

export interface RecordFileDialogProps {
  format: Format;
  /** The kind that is missing; left open where any may be recorded. */
  kind?: FileKind | undefined;
  onClose: () => void;
}

/** Records a final file of a format; the one of its kind in force is kept as replaced. */
export function RecordFileDialog({ format, kind, onClose }: RecordFileDialogProps) {
  const { today } = useWork();
  const kinds = fileKindsOf(madeOf(format.form));
  const form = useRecord<FileDraft>({
    kind: kind ?? kinds[0] ?? 'cover',
    fileName: '',
    finalOn: today,
    sha256: '',
    note: '',
  });
  const { draft } = form;
  const record = useCommand('formats.recordFile');
  const errorOf = useErrors('formats.recordFile', { formatId: format.id, ...form.changes() }, record.refusal);
  const before = format.files.find((file) => file.kind === draft.kind && file.ended === null);
  const send = async () => {
    const { sha256, finalOn, ...rest } = draft;
    const answer = await record.run(
      {
        ...rest,
        formatId: format.id,
        sha256: sha256.trim() === '' ? null : sha256.trim(),
        ...(finalOn === '' ? {} : { finalOn }),
      },
      `The ${fileKindName(draft.kind)} of ${format.name} is recorded.`,
    );
    if (answer.ok) closeAt(onClose, 'format', format.id);
  };
  return (
    <FormDialog
      title={`Record a final file of ${format.name}`}
      submit="Record the file"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={record.pending}
      refusal={record.refusal}
      fields={['kind', 'fileName', 'finalOn', 'sha256', 'note']}
      dirty={form.dirty}
    >
      <FileInputs form={form} errorOf={errorOf} kinds={kinds} before={before?.fileName} today={today} />
    </FormDialog>
  );
}
