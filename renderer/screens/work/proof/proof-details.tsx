import { COST_KINDS } from '../../../../src/contract/costs.ts';
import type { Money } from '../../../../src/contract/operation.ts';
import type { NewFile, ProofOutcome } from '../../../../src/contract/proofs.ts';
import { currencyCodes } from '../../../lib/money.ts';
import { Checkbox, DateInput, Field, MoneyInput, Select, TextInput } from '../../../ui/index.ts';
import { COST_WORDS } from '../costs/words.ts';
import type { ErrorOf } from '../parts/refusals.ts';
import type { RecordForm } from '../parts/use-record.ts';
import { FILE_WORDS } from './words.ts';

/** A proof round as it is being typed. */
export interface ProofDraft {
  outcome: ProofOutcome;
  proof: 'electronic' | 'physical';
  on: string;
  note: string;
  saleDay: string;
  answerBy: string;
  files: NewFile[];
  kind: (typeof COST_KINDS)[number];
  amount: Money | undefined;
  voucher: string;
  currency: string;
}

interface DetailsProps {
  form: RecordForm<ProofDraft>;
  /** The files that this format is made of. */
  files: readonly NewFile[];
  errorOf: ErrorOf;
}

function NewFiles({ form, files, errorOf }: DetailsProps) {
  const { draft, set } = form;
  return (
    <Field
      as="group"
      label="To be made anew"
      error={errorOf('files')}
      help="Nothing ticked means every file."
    >
      {() => (
        <div className="columns">
          {files.map((file) => (
            <Checkbox
              key={file}
              label={FILE_WORDS[file]}
              checked={draft.files.includes(file)}
              onChange={(ticked) =>
                set(
                  'files',
                  files.filter((one) => (one === file ? ticked : draft.files.includes(one))),
                )
              }
            />
          ))}
        </div>
      )}
    </Field>
  );
}

/** What only some outcomes ask, and what the round cost. */
export function ProofDetails(props: DetailsProps) {
  const { form, errorOf } = props;
  const { draft, set } = form;
  return (
    <>
      {draft.outcome === 'clear for own orders' ? (
        <DateInput
          label="On sale from"
          required
          value={draft.saleDay}
          onChange={(day) => set('saleDay', day)}
          help="The later day; its task is dated by it."
          error={errorOf('saleDay')}
          name="saleDay"
        />
      ) : null}
      {draft.outcome === 'new file needed' ? <NewFiles {...props} /> : null}
      {draft.outcome === 'channel error' ? (
        <DateInput
          label="Promised by"
          value={draft.answerBy}
          onChange={(day) => set('answerBy', day)}
          help="When the channel is to have mended it. Left empty, its usual days are taken."
          error={errorOf('answerBy')}
          name="answerBy"
        />
      ) : null}
      <div className="columns">
        <Select
          label="Paid for"
          value={draft.kind}
          onChange={(kind) => set('kind', kind)}
          choices={COST_KINDS.map((kind) => ({ value: kind, label: COST_WORDS[kind] }))}
          name="kind"
        />
        <MoneyInput
          label="What it cost"
          value={draft.amount}
          onChange={(amount) => set('amount', amount)}
          currencies={currencyCodes([draft.currency])}
          help="Left empty where it cost nothing."
          name="amount"
        />
        <TextInput
          label="Voucher used"
          value={draft.voucher}
          onChange={(voucher) => set('voucher', voucher)}
          help="Its code, where a free upload was used up."
          name="voucher"
        />
      </div>
    </>
  );
}
