import type { Edition } from '../../../../src/contract/editions.ts';
import type { InputOf } from '../../../../src/contract/index.ts';
import { useCommand } from '../../../api.ts';
import { Checkbox, TextInput } from '../../../ui/index.ts';
import type { FurtherForm } from '../advice/draft.ts';
import { fullName } from '../parts/edition-names.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { closeAndGoTo } from '../parts/go-to.ts';
import { type ErrorOf, errorsOf, errorWithin } from '../parts/refusals.ts';
import { type RecordForm, useRecord } from '../parts/use-record.ts';
import { ContributorsInput } from './contributors-input.tsx';
import { formatCount, type NextDraft, nextInput, proposeNext } from './next-edition-draft.ts';
import { AddedFormats, CarriedFormats } from './next-formats.tsx';
import { NextNumbers } from './next-numbers.tsx';
import { NextSummary } from './next-summary.tsx';

interface NextInputsProps {
  edition: Edition;
  form: RecordForm<NextDraft>;
  errorOf: ErrorOf;
}

function ChangeInputs({ edition, form, errorOf }: NextInputsProps) {
  const { draft, set } = form;
  return (
    <>
      <TextInput
        label="Title"
        required
        value={draft.title}
        onChange={(title) => set('title', title)}
        error={errorOf('title')}
        name="title"
      />
      <TextInput
        label="Subtitle"
        value={draft.subtitle}
        onChange={(subtitle) => set('subtitle', subtitle)}
        error={errorOf('subtitle')}
        name="subtitle"
      />
      <TextInput
        label="Edition statement"
        value={draft.statement}
        onChange={(statement) => set('statement', statement)}
        help={`Left empty, it follows from the number, which is ${(edition.number ?? 1) + 1}.`}
        error={errorOf('statement')}
        name="statement"
      />
      <TextInput
        label="Imprint"
        value={draft.imprint}
        onChange={(imprint) => set('imprint', imprint)}
        error={errorOf('imprint')}
        name="imprint"
      />
      <ContributorsInput
        value={draft.contributors}
        onChange={(contributors) => set('contributors', contributors)}
        errorOf={errorOf}
      />
    </>
  );
}

export interface NextEditionDialogProps {
  edition: Edition;
  onClose: () => void;
  /** What was stated of the change that leads here; kept with the new edition. */
  stated?: InputOf<'editions.prepareNext'>['stated'];
  /** Forms that are to come out beside the carried ones. */
  added?: readonly FurtherForm[] | undefined;
}

/** Makes the edition that replaces this one. */
export function NextEditionDialog({ edition, onClose, stated, added = [] }: NextEditionDialogProps) {
  const form = useRecord(proposeNext(edition, added));
  const { draft, set } = form;
  const prepare = useCommand('editions.prepareNext');
  const send = async () => {
    const answer = await prepare.run(
      { ...nextInput(edition, draft), ...(stated ? { stated } : {}) },
      'The next edition is prepared.',
    );
    if (answer.ok) closeAndGoTo(onClose, 'edition', answer.value.editionId);
  };
  return (
    <FormDialog
      title={`Prepare the edition that follows ${fullName(edition)}`}
      submit="Prepare the next edition"
      blocked={formatCount(draft) === 0 ? 'Choose at least one format.' : undefined}
      width="wide"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={prepare.pending}
      refusal={prepare.refusal}
      fields={['carry', 'add', 'changes', 'blockId']}
      dirty={form.dirty}
    >
      <div className="columns">
        <CarriedFormats edition={edition} form={form} error={errorWithin(prepare.refusal, 'carry')} />
        <AddedFormats form={form} error={errorWithin(prepare.refusal, 'add')} />
      </div>
      <Checkbox
        label="List the carried formats on the same channels"
        checked={draft.carryListings}
        onChange={(on) => set('carryListings', on)}
        help="With discount, returns and print cost; each listing starts unsent."
        name="carryListings"
      />
      <NextNumbers form={form} error={errorWithin(prepare.refusal, 'blockId')} />
      <ChangeInputs edition={edition} form={form} errorOf={errorsOf(prepare.refusal, 'changes.')} />
      <NextSummary edition={edition} draft={draft} />
    </FormDialog>
  );
}
