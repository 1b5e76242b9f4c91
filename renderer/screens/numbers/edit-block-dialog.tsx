import { useState } from 'react';
import { type Block, updateBlock } from '../../../src/contract/blocks.ts';
import { Button, Dialog, Refused } from '../../ui/index.ts';
import { useGuardedClose } from '../../ui/use-guarded-close.tsx';
import { useCheckedCommand } from '../settings/parts/use-checked-command.ts';
import { useInlineErrors } from '../work/parts/use-inline-errors.ts';
import { BlockFields, notesInput } from './block-fields.tsx';

/** Changes what is noted about a block; its digits follow from the agency's letter and stay. */
export function EditBlockDialog({ block, onClose }: { block: Block; onClose: () => void }) {
  const [before] = useState(() => ({
    label: block.label,
    note: block.note,
    boughtOn: block.boughtOn ?? '',
    cost: block.cost,
  }));
  const [notes, setNotes] = useState(before);
  const command = useCheckedCommand('blocks.update', updateBlock.input);
  const inline = useInlineErrors('blocks.update', { id: block.id, ...notesInput(notes) });
  const guard = useGuardedClose(JSON.stringify(notes) !== JSON.stringify(before), onClose);
  const save = async () => {
    const answer = await command.send(
      { id: block.id, ...notesInput(notes) },
      `The notes of ${block.hyphenatedPrefix} are saved.`,
    );
    if (answer?.ok) onClose();
  };
  return (
    <>
      <Dialog open onClose={guard.close} title={`Notes of block ${block.hyphenatedPrefix}`}>
        <form
          className="stack"
          ref={command.form}
          onSubmit={(event) => {
            event.preventDefault();
            void save();
          }}
        >
          <BlockFields
            notes={notes}
            onChange={setNotes}
            errorOf={(field) => command.errorOf(field) ?? inline(field)}
          />
          <Refused refusal={command.refusal} fields={['label', 'note', 'boughtOn', 'cost']} />
          <div className="row">
            <Button type="submit" kind="primary" pending={command.pending}>
              Save
            </Button>
            <Button onClick={guard.close}>Cancel</Button>
          </div>
        </form>
      </Dialog>
      {guard.question}
    </>
  );
}
