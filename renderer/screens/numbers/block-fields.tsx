import type { Block } from '../../../src/contract/blocks.ts';
import { useQueryOf } from '../../api.ts';
import { currencyCodes } from '../../lib/money.ts';
import { DateInput, MoneyInput, TextArea, TextInput } from '../../ui/index.ts';

/** What is noted about a block beside its digits; an empty day is no day. */
export type BlockNotes = Pick<Block, 'label' | 'note' | 'cost'> & { boughtOn: string };

export const NO_NOTES: BlockNotes = { label: '', note: '', boughtOn: '', cost: null };

/** The notes as the contract takes them. */
export function notesInput(notes: BlockNotes) {
  return { ...notes, boughtOn: notes.boughtOn === '' ? null : notes.boughtOn };
}

export interface BlockFieldsProps {
  notes: BlockNotes;
  onChange: (notes: BlockNotes) => void;
  errorOf: (field: string) => string | undefined;
}

/** Label, day, cost and note of a block. */
export function BlockFields({ notes, onChange, errorOf }: BlockFieldsProps) {
  const currency = useQueryOf('settings.get', {}).data?.currency;
  return (
    <>
      <TextInput
        label="Label"
        name="label"
        value={notes.label}
        onChange={(label) => onChange({ ...notes, label })}
        error={errorOf('label')}
        help="Your own name for the block, such as First hundred."
      />
      <div className="columns">
        <DateInput
          label="Bought on"
          name="boughtOn"
          value={notes.boughtOn}
          onChange={(boughtOn) => onChange({ ...notes, boughtOn })}
          error={errorOf('boughtOn')}
        />
        <MoneyInput
          key={currency}
          label="Cost of the whole block"
          name="cost"
          value={notes.cost ?? undefined}
          onChange={(cost) => onChange({ ...notes, cost: cost ?? null })}
          currencies={currencyCodes([currency ?? 'EUR'])}
          error={errorOf('cost')}
        />
      </div>
      <TextArea
        label="Note"
        name="note"
        rows={2}
        value={notes.note}
        onChange={(note) => onChange({ ...notes, note })}
        error={errorOf('note')}
      />
    </>
  );
}
