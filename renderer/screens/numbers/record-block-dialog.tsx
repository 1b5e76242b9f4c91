import { useState } from 'react';
import { addBlock, type Block } from '../../../src/contract/blocks.ts';
import type { BlockResult } from '../../../src/rules/isbn/index.ts';
import { Button, Dialog, Notice, Refused, TextInput } from '../../ui/index.ts';
import { useGuardedClose } from '../../ui/use-guarded-close.tsx';
import { useCheckedCommand } from '../settings/parts/use-checked-command.ts';
import { useInlineErrors } from '../work/parts/use-inline-errors.ts';
import { BlockFields, NO_NOTES, notesInput } from './block-fields.tsx';
import { useBlockPreview } from './block-preview.ts';

/** What will be recorded, or what is wrong with the prefix as far as it is typed. */
function Preview({
  result,
  onRepair,
}: {
  result: BlockResult | undefined;
  onRepair: (text: string) => void;
}) {
  if (!result) return null;
  if (result.ok) {
    const { block } = result;
    return (
      <Notice title={`${block.hyphenatedPrefix} is a block of ${block.capacity.toLocaleString()} numbers.`}>
        Agency: {block.agency}. Its numbers are <span className="mono nowrap">{block.first}</span> to{' '}
        <span className="mono nowrap">{block.last}</span>.
      </Notice>
    );
  }
  const { message, hint, repair } = result.problem;
  return (
    <Notice
      tone="care"
      title="Not a block yet."
      action={repair === null ? undefined : <Button onClick={() => onRepair(repair)}>Use {repair}</Button>}
    >
      {message} {hint}
    </Notice>
  );
}

function RecordBlock({ onClose, onDone }: { onClose: () => void; onDone: (block: Block) => void }) {
  const [prefix, setPrefix] = useState('');
  const [notes, setNotes] = useState(NO_NOTES);
  const command = useCheckedCommand('blocks.add', addBlock.input);
  const inline = useInlineErrors('blocks.add', { prefix, ...notesInput(notes) });
  const preview = useBlockPreview(prefix);
  const guard = useGuardedClose(prefix !== '' || notes !== NO_NOTES, onClose);
  const save = async () => {
    const answer = await command.send(
      { prefix, ...notesInput(notes) },
      (block) =>
        `The block ${block.hyphenatedPrefix} with ${block.capacity.toLocaleString()} numbers is recorded.`,
    );
    if (answer?.ok) onDone(answer.value);
  };
  return (
    <>
      <Dialog open onClose={guard.close} title="Record a block">
        <form
          className="stack"
          ref={command.form}
          onSubmit={(event) => {
            event.preventDefault();
            void save();
          }}
        >
          <TextInput
            label="Prefix, or any one number of the block"
            required
            mono
            name="prefix"
            width="medium"
            value={prefix}
            onChange={setPrefix}
            error={command.errorOf('prefix')}
            help="As the ISBN agency’s letter gives it, such as 979-8-969999. How many numbers the block holds follows from it."
          />
          <Preview result={preview} onRepair={setPrefix} />
          <BlockFields
            notes={notes}
            onChange={setNotes}
            errorOf={(field) => command.errorOf(field) ?? inline(field)}
          />
          <Refused refusal={command.refusal} fields={['prefix', 'label', 'note', 'boughtOn', 'cost']} />
          <div className="row">
            <Button type="submit" kind="primary" pending={command.pending}>
              Record the block
            </Button>
            <Button onClick={guard.close}>Cancel</Button>
          </div>
        </form>
      </Dialog>
      {guard.question}
    </>
  );
}

/** Records a block the press owns, from its prefix or one of its numbers. */
export function RecordBlockDialog(props: {
  open: boolean;
  onClose: () => void;
  onDone: (block: Block) => void;
}) {
  return props.open ? <RecordBlock {...props} /> : null;
}
