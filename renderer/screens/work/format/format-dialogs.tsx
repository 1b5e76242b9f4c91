import type { Edition } from '../../../../src/contract/editions.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import { useCommand } from '../../../api.ts';
import { blankFormat } from '../parts/blanks.ts';
import { fullName } from '../parts/edition-names.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { closeAndGoTo } from '../parts/go-to.ts';
import { useErrors } from '../parts/use-inline-errors.ts';
import { useRecord } from '../parts/use-record.ts';
import { draftOf, type FormatForm, filledPrices } from './draft.ts';
import { FormInputs } from './form-inputs.tsx';
import { FormatInputs } from './format-inputs.tsx';

const FIELDS = Object.keys(blankFormat(''));

/** What was typed, as the commands take it. */
function changesOf(form: FormatForm) {
  const { prices, ...changes } = form.changes();
  return { ...changes, ...(prices ? { prices: filledPrices(prices) } : {}) };
}

/** Adds a format to an edition. */
export function AddFormatDialog({ edition, onClose }: { edition: Edition; onClose: () => void }) {
  const form = useRecord(draftOf(blankFormat('')));
  const create = useCommand('formats.create');
  const errorOf = useErrors('formats.create', { editionId: edition.id, ...changesOf(form) }, create.refusal);
  const send = async () => {
    const { draft } = form;
    const answer = await create.run(
      { ...draft, prices: filledPrices(draft.prices), editionId: edition.id },
      'The format is added; it has no number yet.',
    );
    if (!answer.ok) return;
    closeAndGoTo(onClose, 'format', answer.value.formatId);
  };
  return (
    <FormDialog
      title={`Add a format to ${fullName(edition)}`}
      submit="Add the format"
      width="wide"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={create.pending}
      refusal={create.refusal}
      fields={FIELDS}
      dirty={form.dirty}
    >
      <FormatInputs form={form} errorOf={errorOf} />
    </FormDialog>
  );
}

/** Changes a format; what is locked is shown so. */
export function EditFormatDialog({ format, onClose }: { format: Format; onClose: () => void }) {
  const form = useRecord(draftOf(format));
  const update = useCommand('formats.update');
  const errorOf = useErrors('formats.update', { id: format.id, ...changesOf(form) }, update.refusal);
  const held = format.lock?.fields ?? [];
  const send = async () => {
    const all = changesOf(form);
    if (Object.keys(all).length === 0) return onClose();
    const answer = await update.run({ id: format.id, ...all }, `${format.name} is changed.`);
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`Edit ${format.name}`}
      submit="Save the format"
      width="wide"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={update.pending}
      refusal={update.refusal}
      fields={FIELDS.filter((field) => !held.includes(field))}
      dirty={form.dirty}
    >
      <FormatInputs form={form} errorOf={errorOf} format={format} />
    </FormDialog>
  );
}

/** Makes another format of the same edition from this one. */
export function CopyFormatDialog({ format, onClose }: { format: Format; onClose: () => void }) {
  const form = useRecord(draftOf(blankFormat('')));
  const copy = useCommand('formats.copy');
  const errorOf = useErrors('formats.copy', { fromFormatId: format.id, ...form.changes() }, copy.refusal);
  const send = async () => {
    const { form: code, formDetail, caseKind, largePrint } = form.draft;
    const answer = await copy.run(
      { fromFormatId: format.id, form: code, formDetail, caseKind, largePrint },
      'The format is added; it has no number yet.',
    );
    if (!answer.ok) return;
    closeAndGoTo(onClose, 'format', answer.value.formatId);
  };
  return (
    <FormDialog
      title={`Make another format from ${format.name}`}
      submit="Make the format"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={copy.pending}
      refusal={copy.refusal}
      fields={FIELDS}
      dirty={form.dirty}
    >
      <p className="soft">
        Dates and reading direction carry over, and between two printed forms trim size, pages, paper and
        colour too. The number, the prices and the channels do not: each format has its own.
      </p>
      <FormInputs form={form} errorOf={errorOf} />
    </FormDialog>
  );
}
