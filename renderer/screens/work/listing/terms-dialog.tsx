import type { Format } from '../../../../src/contract/formats.ts';
import type { Listing, ListingFields } from '../../../../src/contract/listings.ts';
import { madeOf } from '../../../../src/contract/terms.ts';
import { useCommand } from '../../../api.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { useErrors } from '../parts/use-inline-errors.ts';
import { useRecord } from '../parts/use-record.ts';
import { TermsInputs } from './terms-inputs.tsx';

const ON_SALE: readonly string[] = ['selling', 'leaving', 'gone'];

/** The terms alone, without what else a listing carries. */
function termsOf(listing: Listing): ListingFields {
  const { discountBp, returns, printCost, onSaleDate, reference, note } = listing;
  return { discountBp, returns, printCost, onSaleDate, reference, note };
}

/** Changes the terms of a listing. */
export function TermsDialog({
  format,
  listing,
  onClose,
}: {
  format: Format;
  listing: Listing;
  onClose: () => void;
}) {
  const form = useRecord(termsOf(listing));
  const update = useCommand('listings.update');
  const errorOf = useErrors('listings.update', { id: listing.id, ...form.changes() }, update.refusal);
  const reached = ON_SALE.includes(listing.standing) ? 'It went on sale; the day is history now.' : undefined;
  const send = async () => {
    const changes = form.changes();
    if (Object.keys(changes).length === 0) return onClose();
    const said = `The terms on ${listing.channelName} are changed.`;
    const answer = await update.run({ id: listing.id, ...changes }, said);
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`Terms of ${format.name} on ${listing.channelName}`}
      submit="Save the terms"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={update.pending}
      refusal={update.refusal}
      fields={reached ? ['discountBp', 'returns', 'printCost', 'reference', 'note'] : Object.keys(form.draft)}
      dirty={form.dirty}
    >
      <TermsInputs
        form={form}
        errorOf={errorOf}
        printed={madeOf(format.form) === 'print'}
        dateLocked={reached}
      />
    </FormDialog>
  );
}
