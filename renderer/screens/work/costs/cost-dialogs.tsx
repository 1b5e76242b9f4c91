import { COST_KINDS, type Cost, type CostFields } from '../../../../src/contract/costs.ts';
import type { Edition } from '../../../../src/contract/editions.ts';
import { useCommand } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { currencyCodes } from '../../../lib/money.ts';
import { ConfirmDialog, DateInput, MoneyInput, Select, TextArea, TextInput } from '../../../ui/index.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { type ErrorOf, errorsOf } from '../parts/refusals.ts';
import { type RecordForm, useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';
import { COST_WORDS } from './words.ts';

interface Draft extends Omit<CostFields, 'amount'> {
  amount: CostFields['amount'] | undefined;
  /** 'format 3' or 'listing 7' */
  place: string;
}

/** Formats and listings a cost can belong to. */
function placesOf(edition: Edition) {
  return edition.formats.flatMap((format) => [
    { value: `format ${format.id}`, label: format.name, formatId: format.id, listingId: undefined },
    ...format.listings.map((listing) => ({
      value: `listing ${listing.id}`,
      label: `${format.name} on ${listing.channelName}`,
      formatId: format.id,
      listingId: listing.id,
    })),
  ]);
}

function useSave(form: RecordForm<Draft>, edition: Edition, cost: Cost | undefined) {
  const add = useCommand('costs.add');
  const update = useCommand('costs.update');
  const save = async (): Promise<boolean> => {
    const { place, amount, ...fields } = form.draft;
    if (!amount) return false;
    if (cost) return (await update.run({ id: cost.id, ...fields, amount }, 'The cost is changed.')).ok;
    const of = placesOf(edition).find((one) => one.value === place);
    if (!of) return false;
    const where = {
      formatId: of.formatId,
      ...(of.listingId === undefined ? {} : { listingId: of.listingId }),
    };
    return (await add.run({ ...fields, amount, ...where }, 'The cost is recorded.')).ok;
  };
  const used = cost ? update : add;
  return { save, pending: used.pending, refusal: used.refusal };
}

/** Records a cost, or changes one. */
export function CostDialog(props: { edition: Edition; cost?: Cost; onClose: () => void }) {
  const { edition, cost, onClose } = props;
  const { today } = useWork();
  const form = useRecord<Draft>({
    kind: cost?.kind ?? 'upload',
    amount: cost?.amount,
    voucher: cost?.voucher ?? '',
    on: cost?.on ?? today,
    note: cost?.note ?? '',
    place: placesOf(edition)[0]?.value ?? '',
  });
  const { save, pending, refusal } = useSave(form, edition, cost);
  return (
    <FormDialog
      title={cost ? 'Change a cost' : 'Record a cost'}
      submit={cost ? 'Save the cost' : 'Record the cost'}
      blocked={form.draft.amount ? undefined : 'Write the amount; 0 where a voucher paid it.'}
      onClose={onClose}
      onSubmit={() => void save().then((done) => done && onClose())}
      pending={pending}
      refusal={refusal}
      fields={Object.keys(form.draft)}
      dirty={form.dirty}
    >
      {cost ? null : (
        <Select
          label="For"
          value={form.draft.place}
          onChange={(place) => form.set('place', place)}
          choices={placesOf(edition)}
          name="place"
        />
      )}
      <CostInputs form={form} errorOf={errorsOf(refusal)} />
    </FormDialog>
  );
}

function CostInputs({ form, errorOf }: { form: RecordForm<Draft>; errorOf: ErrorOf }) {
  const { draft, set } = form;
  const { today, settings } = useWork();
  return (
    <>
      <div className="columns">
        <Select
          label="Paid for"
          value={draft.kind}
          onChange={(kind) => set('kind', kind)}
          choices={COST_KINDS.map((kind) => ({ value: kind, label: COST_WORDS[kind] }))}
          name="kind"
        />
        <MoneyInput
          label="Amount"
          required
          value={draft.amount}
          onChange={(amount) => set('amount', amount)}
          currencies={currencyCodes([draft.amount?.currency ?? settings.currency])}
          error={errorOf('amount')}
          name="amount"
        />
        <DateInput
          label="Day"
          value={draft.on}
          max={today}
          onChange={(on) => set('on', on)}
          error={errorOf('on')}
          name="on"
        />
      </div>
      <TextInput
        label="Voucher used"
        value={draft.voucher}
        onChange={(voucher) => set('voucher', voucher)}
        help="Its code, where a voucher paid it; the amount is then 0 or what was left to pay."
        error={errorOf('voucher')}
        name="voucher"
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

/** Removes a cost that was recorded by mistake. */
export function RemoveCost({ cost, onClose }: { cost: Cost; onClose: () => void }) {
  const remove = useCommand('costs.remove');
  return (
    <ConfirmDialog
      open
      onClose={onClose}
      title="Remove this cost?"
      confirm="Remove the cost"
      danger
      pending={remove.pending}
      refusal={remove.refusal}
      onConfirm={() =>
        void remove.run({ id: cost.id }, 'The cost is removed.').then((answer) => answer.ok && onClose())
      }
    >
      {COST_WORDS[cost.kind]} of {formatDay(cost.on)} is then told of in the journal alone.
    </ConfirmDialog>
  );
}
