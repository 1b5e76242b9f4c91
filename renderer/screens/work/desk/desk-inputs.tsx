import type { DeskListing } from '../../../../src/contract/retirement.ts';
import { DateInput, TextArea } from '../../../ui/index.ts';
import type { ErrorOf } from '../parts/refusals.ts';
import { type RecordForm, useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';

export interface DeskDialogProps {
  row: DeskListing;
  /** 'Paperback on Printworks Direct' */
  name: string;
  onClose: () => void;
}

export interface DeskDraft {
  on: string;
  promisedBy: string;
  note: string;
}

/** A step at the desk as it is being typed, today unless another day is chosen. */
export function useDeskDraft(): RecordForm<DeskDraft> {
  const { today } = useWork();
  return useRecord({ on: today, promisedBy: '', note: '' });
}

/** What is sent of the days and the note. */
export function daysOf({ on, promisedBy, note }: DeskDraft) {
  return { note, ...(on === '' ? {} : { on }), ...(promisedBy === '' ? {} : { promisedBy }) };
}

interface DeskInputsProps {
  form: Pick<RecordForm<DeskDraft>, 'draft' | 'set'>;
  errorOf: ErrorOf;
  /** Also asks by when the channel promised to act. */
  promise?: boolean;
  required?: boolean;
  noteLabel?: string;
  noteHelp?: string;
}

/** Day, promise and note of a step at the desk. */
export function DeskInputs({ form, errorOf, promise, required, noteLabel, noteHelp }: DeskInputsProps) {
  const { draft, set } = form;
  const { today } = useWork();
  return (
    <>
      <div className="columns">
        <DateInput
          label="On which day"
          value={draft.on}
          max={today}
          onChange={(on) => set('on', on)}
          error={errorOf('on')}
          name="on"
        />
        {promise ? (
          <DateInput
            label="Promised by"
            value={draft.promisedBy}
            onChange={(day) => set('promisedBy', day)}
            help="The day by which the channel said it would be gone; empty while it has not said."
            error={errorOf('promisedBy')}
            required={required}
            name="promisedBy"
          />
        ) : null}
      </div>
      <TextArea
        label={noteLabel ?? 'Note'}
        rows={2}
        value={draft.note}
        onChange={(note) => set('note', note)}
        help={noteHelp}
        required={noteLabel !== undefined}
        error={errorOf(noteLabel === undefined ? 'note' : 'evidence')}
        name="note"
      />
    </>
  );
}
