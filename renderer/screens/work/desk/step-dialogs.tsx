import { useCommand } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { DateInput, TextArea } from '../../../ui/index.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { errorsOf } from '../parts/refusals.ts';
import { useRecord } from '../parts/use-record.ts';
import { type DeskDialogProps, DeskInputs, daysOf, useDeskDraft } from './desk-inputs.tsx';
import { RequestPart } from './request-part.tsx';

/** Notes by when a channel promised to stop selling. */
export function PromiseDialog({ row, name, onClose }: DeskDialogProps) {
  const form = useDeskDraft();
  const promise = useCommand('retirement.promise');
  const { promisedBy, ...rest } = daysOf(form.draft);
  const send = async () => {
    if (promisedBy === undefined) return;
    const said = `${row.channelName} promised it by ${promisedBy}.`;
    const answer = await promise.run({ listingId: row.listingId, ...rest, promisedBy }, said);
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`What ${row.channelName} promised`}
      submit="Note the promise"
      width="narrow"
      blocked={promisedBy === undefined ? 'Choose the promised day.' : undefined}
      onClose={onClose}
      onSubmit={() => void send()}
      pending={promise.pending}
      refusal={promise.refusal}
      fields={['on', 'promisedBy', 'note']}
      dirty={form.dirty}
    >
      <p>{name} is to be gone by then; the reminder is dated the day after.</p>
      <DeskInputs form={form} errorOf={errorsOf(promise.refusal)} promise required />
    </FormDialog>
  );
}

/** Asks a channel again: the reminder's text, and the record of it. */
export function ChaseDialog({ row, name, onClose }: DeskDialogProps) {
  const form = useDeskDraft();
  const chase = useCommand('retirement.chase');
  const send = async () => {
    const said = `${row.channelName} was asked again about ${name}.`;
    const answer = await chase.run({ listingId: row.listingId, ...daysOf(form.draft) }, said);
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`Ask ${row.channelName} again`}
      submit="Record that it was asked again"
      width="wide"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={chase.pending}
      refusal={chase.refusal}
      fields={['on', 'promisedBy', 'note']}
      dirty={form.draft.note !== ''}
    >
      <RequestPart listingId={row.listingId} kind="chase" />
      <DeskInputs form={form} errorOf={errorsOf(chase.refusal)} promise />
    </FormDialog>
  );
}

/** Confirms that a listing no longer shows, with what was seen. */
export function GoneDialog({ row, name, onClose }: DeskDialogProps) {
  const form = useDeskDraft();
  const gone = useCommand('retirement.gone');
  const { note, on } = form.draft;
  const send = async () => {
    const input = { listingId: row.listingId, evidence: note, ...(on === '' ? {} : { on }) };
    const answer = await gone.run(input, `${name} is gone.`);
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`${name} is gone`}
      submit="Confirm that it is gone"
      blocked={note.trim() === '' ? 'Note what you saw.' : undefined}
      onClose={onClose}
      onSubmit={() => void send()}
      pending={gone.pending}
      refusal={gone.refusal}
      fields={['on', 'evidence']}
      dirty={form.dirty}
    >
      <p>Once every listing is gone, the format is retired: it can be read for ever and changed never.</p>
      <DeskInputs
        form={form}
        errorOf={errorsOf(gone.refusal)}
        noteLabel="Evidence"
        noteHelp="What you saw, such as the page that is no longer there, or the channel’s answer. Copies that others sell second-hand do not count."
      />
    </FormDialog>
  );
}

/** Sets or moves the last date for returns. */
export function ReturnsDialog({ row, name, onClose }: DeskDialogProps) {
  const form = useRecord({ until: row.returnsUntil ?? '', note: row.returnsNote });
  const returns = useCommand('retirement.returns');
  const errorOf = errorsOf(returns.refusal);
  const { until, note } = form.draft;
  const send = async () => {
    const said = `Copies may come back until ${formatDay(until)}.`;
    const answer = await returns.run({ listingId: row.listingId, until, note }, said);
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`Returns of ${name}`}
      submit="Save the date"
      width="narrow"
      blocked={until === '' ? 'Choose the last day.' : undefined}
      onClose={onClose}
      onSubmit={() => void send()}
      pending={returns.pending}
      refusal={returns.refusal}
      fields={['until', 'note']}
      dirty={form.dirty}
    >
      <DateInput
        label="Last date for returns"
        required
        value={until}
        onChange={(day) => form.set('until', day)}
        help="As agreed with the channel; a task stands on that day. It stays open after the listing is gone."
        error={errorOf('until')}
        name="until"
      />
      <TextArea
        label="Note"
        rows={2}
        value={note}
        onChange={(text) => form.set('note', text)}
        error={errorOf('note')}
        name="note"
      />
    </FormDialog>
  );
}

/** Takes back what was sent and never sold. */
export function TakeBackDialog({ row, name, onClose }: DeskDialogProps) {
  const form = useDeskDraft();
  const move = useCommand('listings.move');
  const { on, note } = form.draft;
  const send = async () => {
    const input = { id: row.listingId, to: 'unsent' as const, note, ...(on === '' ? {} : { on }) };
    const answer = await move.run(input, `${name} is taken back.`);
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`Take ${name} back`}
      submit="Record that it was taken back"
      width="narrow"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={move.pending}
      refusal={move.refusal}
      fields={['on', 'note']}
      dirty={form.dirty}
    >
      <p>It was sent but never on sale there, so nothing is asked off.</p>
      <DeskInputs form={form} errorOf={errorsOf(move.refusal)} />
    </FormDialog>
  );
}
