import { useEffect, useRef, useState } from 'react';
import type { Block } from '../../../src/contract/blocks.ts';
import { type NumberRow, reserveNumbers } from '../../../src/contract/numbers.ts';
import {
  Button,
  Checkbox,
  CopyButton,
  Dialog,
  Notice,
  NumberInput,
  Refused,
  TextArea,
  TextInput,
} from '../../ui/index.ts';
import { useGuardedClose } from '../../ui/use-guarded-close.tsx';
import type { FieldErrors } from '../settings/parts/input-check.ts';
import { useCheckedCommand } from '../settings/parts/use-checked-command.ts';
import { PAGE } from './words.ts';

/** The numbers that are now kept, ready to be copied into a letter. */
function Reserved({ rows, onClose }: { rows: readonly NumberRow[]; onClose: () => void }) {
  const text = rows.map((row) => row.hyphenated).join('\n');
  const done = useRef<HTMLButtonElement>(null);
  // The button that had the focus went with the form.
  useEffect(() => done.current?.focus(), []);
  return (
    <div className="stack">
      <Notice
        tone="done"
        live
        title={rows.length === 1 ? 'One number is reserved.' : `${rows.length} numbers are reserved.`}
      >
        For {rows[0]?.usedFor}.
      </Notice>
      <TextArea
        label="Reserved numbers"
        mono
        readOnly
        rows={Math.min(rows.length, 12)}
        value={text}
        onChange={() => undefined}
      />
      <div className="row">
        <CopyButton text={text} what="The list of numbers" label="Copy the numbers" />
        <Button kind="primary" buttonRef={done} onClick={onClose}>
          Done
        </Button>
      </div>
    </div>
  );
}

function wrongCount(count: number | undefined): FieldErrors {
  return count === undefined ? { count: `Write how many, from 1 to ${PAGE.toLocaleString()}.` } : {};
}

interface ReserveFormProps {
  block: Block;
  onDone: (rows: NumberRow[]) => void;
  onDirty: () => void;
  onCancel: () => void;
}

function ReserveForm({ block, onDone, onDirty, onCancel }: ReserveFormProps) {
  const [count, setCount] = useState<number | undefined>(1);
  const [purpose, setPurpose] = useState('');
  const [adjacent, setAdjacent] = useState(false);
  const command = useCheckedCommand('numbers.reserve', reserveNumbers.input);
  const save = async () => {
    const answer = await command.send(
      { blockId: block.id, count, reservedFor: purpose, adjacent },
      undefined,
      wrongCount(count),
    );
    if (answer?.ok) onDone(answer.value.rows);
  };
  return (
    <form
      className="stack"
      ref={command.form}
      onChange={onDirty}
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <NumberInput
        label="How many"
        name="count"
        required
        min={1}
        max={PAGE}
        value={count}
        onChange={setCount}
        unit={`of ${block.counts.free.toLocaleString()} free`}
        error={command.errorOf('count')}
        help="The next free numbers of the block, in order."
      />
      <TextInput
        label="For what"
        name="reservedFor"
        required
        value={purpose}
        onChange={setPurpose}
        error={command.errorOf('reservedFor')}
        help="In your own words, such as Spring list. Nothing else takes these numbers until they are released."
      />
      <Checkbox
        label="Side by side"
        checked={adjacent}
        onChange={setAdjacent}
        help="All in one run, as for a series, even where single numbers before it stay free."
      />
      <Refused refusal={command.refusal} fields={['count', 'reservedFor']} />
      <div className="row">
        <Button type="submit" kind="primary" pending={command.pending}>
          Reserve
        </Button>
        <Button onClick={onCancel}>Cancel</Button>
      </div>
    </form>
  );
}

/** Keeps the next free numbers of a block for a purpose and shows which they are. */
export function ReserveDialog({ block, onClose }: { block: Block; onClose: () => void }) {
  const [rows, setRows] = useState<NumberRow[]>();
  const [dirty, setDirty] = useState(false);
  const guard = useGuardedClose(dirty && rows === undefined, onClose);
  return (
    <>
      <Dialog
        open
        onClose={guard.close}
        title={`Reserve numbers of ${block.hyphenatedPrefix}`}
        width="narrow"
      >
        {rows ? (
          <Reserved rows={rows} onClose={onClose} />
        ) : (
          <ReserveForm block={block} onDone={setRows} onDirty={() => setDirty(true)} onCancel={guard.close} />
        )}
      </Dialog>
      {guard.question}
    </>
  );
}
