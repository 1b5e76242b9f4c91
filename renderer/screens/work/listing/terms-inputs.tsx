import type { ListingFields } from '../../../../src/contract/listings.ts';
import { RETURNS } from '../../../../src/contract/terms.ts';
import { currencyCodes } from '../../../lib/money.ts';
import { DateInput, MoneyInput, Select, TextArea, TextInput } from '../../../ui/index.ts';
import { LockedField } from '../parts/locked-field.tsx';
import type { ErrorOf } from '../parts/refusals.ts';
import type { RecordForm } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';
import { PercentInput } from './percent-input.tsx';

const NOT_SET = 'none';
const RETURN_CHOICES = [
  { value: NOT_SET, label: 'not recorded' },
  ...RETURNS.map(({ code, name }) => ({ value: code, label: name })),
];

export interface TermsInputsProps {
  form: RecordForm<ListingFields>;
  errorOf: ErrorOf;
  /** Print cost makes sense for printed formats alone. */
  printed: boolean;
  /** Why the on-sale date may no longer change. */
  dateLocked?: string | undefined;
}

function DateAndReference({ form, errorOf, dateLocked }: TermsInputsProps) {
  const { draft, set } = form;
  return (
    <div className="columns">
      {dateLocked === undefined ? (
        <DateInput
          label="On-sale date given to this channel"
          value={draft.onSaleDate ?? ''}
          onChange={(day) => set('onSaleDate', day === '' ? null : day)}
          error={errorOf('onSaleDate')}
          name="onSaleDate"
        />
      ) : (
        <LockedField label="On-sale date" value={draft.onSaleDate} reason={dateLocked} />
      )}
      <TextInput
        label="The channel’s reference"
        value={draft.reference}
        onChange={(reference) => set('reference', reference)}
        help="The number or name under which the channel keeps it."
        error={errorOf('reference')}
        name="reference"
      />
    </div>
  );
}

/** The terms of a format on a channel. */
export function TermsInputs(props: TermsInputsProps) {
  const { form, errorOf, printed } = props;
  const { draft, set } = form;
  const { settings } = useWork();
  return (
    <>
      <div className="columns">
        <PercentInput
          label="Trade discount"
          value={draft.discountBp}
          onChange={(discountBp) => set('discountBp', discountBp)}
          error={errorOf('discountBp')}
          name="discountBp"
        />
        <Select
          label="Returns"
          value={draft.returns ?? NOT_SET}
          onChange={(code) => set('returns', RETURNS.find((entry) => entry.code === code)?.code ?? null)}
          choices={RETURN_CHOICES}
          error={errorOf('returns')}
          name="returns"
        />
        {printed ? (
          <MoneyInput
            label="Print cost of a copy"
            value={draft.printCost ?? undefined}
            onChange={(cost) => set('printCost', cost ?? null)}
            currencies={currencyCodes([settings.currency, 'EUR', 'GBP', 'USD'])}
            error={errorOf('printCost')}
            name="printCost"
          />
        ) : null}
      </div>
      <DateAndReference {...props} />
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
