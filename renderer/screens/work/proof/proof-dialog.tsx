import { useState } from 'react';
import type { OutputOf } from '../../../../src/contract/index.ts';
import { NEW_FILES, PROOF_OUTCOMES, type ProofOutcome } from '../../../../src/contract/proofs.ts';
import { madeOf } from '../../../../src/contract/terms.ts';
import { useCommand } from '../../../api.ts';
import { DateInput, Select, TextArea } from '../../../ui/index.ts';
import type { ListingItemProps } from '../listing/listing-props.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { RadioGroup } from '../parts/radio-group.tsx';
import type { ErrorOf } from '../parts/refusals.ts';
import { useErrors } from '../parts/use-inline-errors.ts';
import { type RecordForm, useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';
import { LateDialog } from './late-dialog.tsx';
import { ProofDetails, type ProofDraft } from './proof-details.tsx';
import { OUTCOME_WORDS } from './words.ts';

type Late = NonNullable<OutputOf<'proofs.record'>['late']>;

/** What is sent of the draft: only the answers that belong to the outcome. */
function inputOf(listingId: number, draft: ProofDraft) {
  const { outcome, proof, on, note, saleDay, answerBy, files, kind, amount, voucher } = draft;
  const paid = amount ?? (voucher.trim() === '' ? undefined : { amountMinor: 0, currency: draft.currency });
  return {
    listingId,
    outcome,
    proof,
    note,
    ...(on === '' ? {} : { on }),
    ...(outcome === 'clear for own orders' && saleDay !== '' ? { saleDay } : {}),
    ...(outcome === 'channel error' && answerBy !== '' ? { answerBy } : {}),
    ...(outcome === 'new file needed' ? { files } : {}),
    ...(paid ? { costs: [{ kind, amount: paid, voucher }] } : {}),
  };
}

function useProofDraft({ format, listing }: ListingItemProps) {
  const { today, settings } = useWork();
  const made = madeOf(format.form);
  const files = NEW_FILES.filter((file) =>
    made === 'print' ? file === 'interior' || file === 'cover' : file === made,
  );
  const form = useRecord<ProofDraft>({
    outcome: 'clear for sale',
    proof: 'electronic',
    on: today,
    note: '',
    saleDay: listing.onSaleDate !== null && listing.onSaleDate > today ? listing.onSaleDate : '',
    answerBy: '',
    files: [...files],
    kind: 'proof copy',
    amount: undefined,
    voucher: '',
    currency: settings.currency,
  });
  return { form, files };
}

/** Records how a proof round ended, and what it cost. */
export function ProofDialog(props: ListingItemProps & { onClose: () => void }) {
  const { format, listing, onClose } = props;
  const { form, files } = useProofDraft(props);
  const { draft, merge } = form;
  const [late, setLate] = useState<Late>();
  const record = useCommand('proofs.record');
  const errorOf = useErrors('proofs.record', inputOf(listing.id, draft), record.refusal);
  const send = async () => {
    const answer = await record.run(inputOf(listing.id, draft), ({ standing, tasks }) =>
      tasks === 0 ? `It stands at ${standing} now.` : `It stands at ${standing} now; ${tasks} new tasks.`,
    );
    if (!answer.ok) return;
    if (answer.value.late) setLate(answer.value.late);
    else onClose();
  };
  if (late) return <LateDialog late={late} onClose={onClose} />;
  const outcomes = PROOF_OUTCOMES.filter(
    (outcome) => listing.standing !== 'cleared' || outcome !== 'clear for own orders',
  );
  return (
    <FormDialog
      title={`Proof of ${format.name} from ${listing.channelName}`}
      submit="Record the proof round"
      blocked={
        draft.outcome === 'clear for own orders' && draft.saleDay === ''
          ? 'Choose the day of sale.'
          : undefined
      }
      onClose={onClose}
      onSubmit={() => void send()}
      pending={record.pending}
      refusal={record.refusal}
      fields={Object.keys(draft)}
      dirty={form.dirty}
    >
      <RadioGroup<ProofOutcome>
        label="How it turned out"
        value={draft.outcome}
        onChange={(outcome) =>
          merge({ outcome, kind: outcome === 'new file needed' ? 'revised file' : 'proof copy' })
        }
        choices={outcomes.map((outcome) => ({ value: outcome, ...OUTCOME_WORDS[outcome] }))}
      />
      <ProofDetails form={form} files={files} errorOf={errorOf} />
      <WhenAndHow form={form} since={listing.lastStepOn} errorOf={errorOf} />
    </FormDialog>
  );
}

interface WhenAndHowProps {
  form: RecordForm<ProofDraft>;
  /** The day of the listing's last step. */
  since: string | null;
  errorOf: ErrorOf;
}

/** Which proof it was, when, and what was seen. */
function WhenAndHow({ form, since, errorOf }: WhenAndHowProps) {
  const { draft, set } = form;
  const { today } = useWork();
  return (
    <>
      <div className="columns">
        <Select
          label="Which proof it was"
          value={draft.proof}
          onChange={(proof) => set('proof', proof)}
          choices={[
            { value: 'electronic', label: 'On the screen' },
            { value: 'physical', label: 'A printed copy' },
          ]}
          name="proof"
        />
        <DateInput
          label="On which day"
          value={draft.on}
          max={today}
          min={since ?? undefined}
          onChange={(on) => set('on', on)}
          error={errorOf('on')}
          name="on"
        />
      </div>
      <TextArea
        label="Note"
        rows={2}
        value={draft.note}
        onChange={(note) => set('note', note)}
        help="What you saw, or a ticket number."
        error={errorOf('note')}
        name="note"
      />
    </>
  );
}
