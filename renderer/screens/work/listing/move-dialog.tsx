import type { ListingStanding } from '../../../../src/contract/terms.ts';
import { useCommand } from '../../../api.ts';
import { DateInput, Select, TextArea } from '../../../ui/index.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { closeAt } from '../parts/go-to.ts';
import { listed } from '../parts/names.ts';
import type { ErrorOf } from '../parts/refusals.ts';
import { useErrors } from '../parts/use-inline-errors.ts';
import { type RecordForm, useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';
import { SendWarning } from '../ready/send-warning.tsx';
import { GapWarning } from './gap-warning.tsx';
import type { ListingItemProps } from './listing-props.ts';
import { LockPreview } from './lock-preview.tsx';
import { locksOf, reachable, wayOf } from './reach.ts';

export interface MoveDialogProps extends ListingItemProps {
  /** The standing that was pressed; left open where any may be chosen. */
  to: ListingStanding | undefined;
  onClose: () => void;
}

function labelOf({ listing }: ListingItemProps, to: ListingStanding): string {
  const label = listing.next.find((step) => step.to === to)?.label;
  return label === undefined ? `${to}: several steps at once` : `${to}: ${label.toLowerCase()}`;
}

interface Move {
  to: ListingStanding;
  on: string;
  note: string;
}

interface MoveInputsProps extends ListingItemProps {
  form: RecordForm<Move>;
  /** The standings passed through. */
  way: readonly ListingStanding[];
  errorOf: ErrorOf;
}

function MoveInputs(props: MoveInputsProps) {
  const { listing, form, way, errorOf } = props;
  const { draft, set } = form;
  const { today } = useWork();
  return (
    <>
      <Select
        label="It moves to"
        value={draft.to}
        onChange={(to) => set('to', to)}
        choices={reachable(listing).map((to) => ({ value: to, label: labelOf(props, to) }))}
        help={
          way.length > 1
            ? `Recorded one after the other on the same day: ${listed(way)}.`
            : `It stands at ${listing.standing} now.`
        }
        error={errorOf('to')}
        name="to"
      />
      <DateInput
        label="On which day"
        value={draft.on}
        min={listing.lastStepOn ?? undefined}
        max={today}
        onChange={(on) => set('on', on)}
        help="The day it happened, today or earlier."
        error={errorOf('on')}
        name="on"
      />
      <TextArea
        label="Note"
        rows={2}
        value={draft.note}
        onChange={(note) => set('note', note)}
        help="Kept with the step, such as a ticket number or the reason given."
        error={errorOf('note')}
        name="note"
      />
    </>
  );
}

/** Records one step of a listing, or several on the same day. */
export function MoveDialog(props: MoveDialogProps) {
  const { edition, format, listing, onClose } = props;
  const { today } = useWork();
  const first = props.to ?? reachable(listing)[0] ?? listing.standing;
  const form = useRecord<Move>({ to: first, on: today, note: '' });
  const { draft } = form;
  const move = useCommand('listings.move');
  const errorOf = useErrors('listings.move', { id: listing.id, ...form.changes() }, move.refusal);
  const way = wayOf(listing, draft.to);
  const locks = way.includes('sent') ? locksOf(edition, format) : [];
  const send = async () => {
    const { to, on, note } = draft;
    const answer = await move.run(
      { id: listing.id, to, note, ...(on === '' ? {} : { on }) },
      `${format.name} on ${listing.channelName} is now ${to}.`,
    );
    if (answer.ok) closeAt(onClose, 'listing', listing.id);
  };
  return (
    <FormDialog
      title={`${format.name} on ${listing.channelName}`}
      submit={locks.length > 0 ? `Record ${draft.to} and lock these fields` : `Record ${draft.to}`}
      onClose={onClose}
      onSubmit={() => void send()}
      pending={move.pending}
      refusal={move.refusal}
      fields={['to', 'on', 'note']}
      dirty={draft.note !== ''}
    >
      <MoveInputs {...props} form={form} way={way} errorOf={errorOf} />
      {draft.to === 'leaving' ? <GapWarning edition={edition} channelId={listing.channelId} /> : null}
      {way.includes('sent') ? <SendWarning format={format} listing={listing} /> : null}
      {locks.length > 0 ? <LockPreview edition={edition} format={format} /> : null}
    </FormDialog>
  );
}
