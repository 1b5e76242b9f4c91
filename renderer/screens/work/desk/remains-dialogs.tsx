import { type Desk, STOCK_FATES } from '../../../../src/contract/retirement.ts';
import { useCommand } from '../../../api.ts';
import { DateInput, NumberInput, Select, TextArea, TextInput } from '../../../ui/index.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { type ErrorOf, errorsOf } from '../parts/refusals.ts';
import { type RecordForm, useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';
import { DeskInputs, useDeskDraft } from './desk-inputs.tsx';
import { FATE_WORDS } from './words.ts';

/** Records that the agency's record was set to out of print. */
export function AgencyDialog({ desk, onClose }: { desk: Desk; onClose: () => void }) {
  const form = useDeskDraft();
  const record = useCommand('retirement.outOfPrint');
  const { on, note } = form.draft;
  const send = async () => {
    const answer = await record.run(
      { editionId: desk.editionId, note, ...(on === '' ? {} : { on }) },
      'Recorded as out of print.',
    );
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title={`${desk.label} is out of print`}
      submit="Record as out of print"
      width="narrow"
      onClose={onClose}
      onSubmit={() => void send()}
      pending={record.pending}
      refusal={record.refusal}
      fields={['on', 'note']}
      dirty={form.dirty}
    >
      <p>
        Set the record of each number to out of print where your ISBN agency keeps it, then record the day
        here. What the agency asks for prevails.
      </p>
      <DeskInputs form={form} errorOf={errorsOf(record.refusal)} />
    </FormDialog>
  );
}

interface Draft {
  formatId: string;
  place: string;
  copies: number | undefined;
  countedOn: string;
  fate: (typeof STOCK_FATES)[number];
  note: string;
}

/** Records how many copies are left at a place. */
export function CountDialog({ desk, onClose }: { desk: Desk; onClose: () => void }) {
  const { today } = useWork();
  const printed = desk.numbers.filter((row) => row.printed);
  const form = useRecord<Draft>({
    formatId: String(printed[0]?.formatId ?? ''),
    place: '',
    copies: undefined,
    countedOn: today,
    fate: 'undecided',
    note: '',
  });
  const count = useCommand('retirement.count');
  const { formatId, copies, ...rest } = form.draft;
  const send = async () => {
    if (copies === undefined) return;
    const said = `${copies.toLocaleString()} copies are counted at ${rest.place}.`;
    const answer = await count.run({ ...rest, copies, formatId: Number(formatId) }, said);
    if (answer.ok) onClose();
  };
  return (
    <FormDialog
      title="Count copies"
      submit="Record the count"
      blocked={
        copies === undefined || rest.place.trim() === '' ? 'Say where they are and how many.' : undefined
      }
      onClose={onClose}
      onSubmit={() => void send()}
      pending={count.pending}
      refusal={count.refusal}
      fields={Object.keys(form.draft)}
      dirty={form.dirty}
    >
      <CountInputs
        form={form}
        formats={printed.map((row) => ({ value: String(row.formatId), label: row.formatName }))}
        errorOf={errorsOf(count.refusal)}
      />
    </FormDialog>
  );
}

interface CountInputsProps {
  form: RecordForm<Draft>;
  formats: { value: string; label: string }[];
  errorOf: ErrorOf;
}

function CountInputs({ form, formats, errorOf }: CountInputsProps) {
  const { draft, set } = form;
  const { today } = useWork();
  return (
    <>
      <div className="columns">
        <Select
          label="Format"
          value={draft.formatId}
          onChange={(id) => set('formatId', id)}
          choices={formats}
          error={errorOf('formatId')}
          name="formatId"
        />
        <TextInput
          label="Where they are"
          required
          value={draft.place}
          onChange={(place) => set('place', place)}
          help="A channel, a warehouse, your own shelf."
          error={errorOf('place')}
          name="place"
        />
        <NumberInput
          label="Copies"
          required
          min={0}
          value={draft.copies}
          onChange={(copies) => set('copies', copies)}
          error={errorOf('copies')}
          name="copies"
        />
        <DateInput
          label="Counted on"
          value={draft.countedOn}
          max={today}
          onChange={(day) => set('countedOn', day)}
          error={errorOf('countedOn')}
          name="countedOn"
        />
        <Select
          label="What becomes of them"
          value={draft.fate}
          onChange={(fate) => set('fate', fate)}
          choices={STOCK_FATES.map((fate) => ({ value: fate, label: FATE_WORDS[fate] }))}
          name="fate"
        />
      </div>
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
