import { Link } from 'wouter';
import type { Block } from '../../../../src/contract/blocks.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import type { NumberRow } from '../../../../src/contract/numbers.ts';
import { useCommand, useQueryOf } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { DateInput, Notice, Select } from '../../../ui/index.ts';
import { FormDialog } from '../parts/form-dialog.tsx';
import { closeAt } from '../parts/go-to.ts';
import { counted, inSentence } from '../parts/names.ts';
import { RadioGroup } from '../parts/radio-group.tsx';
import { errorsOf } from '../parts/refusals.ts';
import { useRecord } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';
import {
  assignInput,
  blockedReason,
  blockOfChoice,
  FIRST_CHOICE,
  type NumberChoice,
  type NumberWay,
} from './number-choice.ts';
import { TypedNumber } from './typed-number.tsx';

const ANY_BLOCK = 'any';

function NextFree({
  blocks,
  choice,
  set,
}: {
  blocks: readonly Block[];
  choice: NumberChoice;
  set: (part: Partial<NumberChoice>) => void;
}) {
  const block = blockOfChoice(blocks, choice.blockId);
  const choices = blocks.map((one) => ({
    value: String(one.id),
    label: `${one.label || one.hyphenatedPrefix}: ${counted(one.counts.free, 'free number')}`,
  }));
  return (
    <div className="stack">
      {blocks.length > 1 ? (
        <Select
          label="Block"
          value={choice.blockId === undefined ? ANY_BLOCK : String(choice.blockId)}
          onChange={(value) => set({ blockId: value === ANY_BLOCK ? undefined : Number(value) })}
          choices={[{ value: ANY_BLOCK, label: 'the oldest block that has a free number' }, ...choices]}
        />
      ) : null}
      {block?.nextFree ? (
        <p>
          Next free: <strong className="mono">{block.nextFree}</strong>{' '}
          <span className="soft">({counted(block.counts.free, 'number')} free in this block)</span>
        </p>
      ) : (
        <Notice tone="care" title="No free number here.">
          Record a block of numbers on the <Link href="/numbers">Numbers screen</Link> first.
        </Notice>
      )}
    </div>
  );
}

function ReservedNumbers({
  rows,
  choice,
  set,
  error,
}: {
  rows: readonly NumberRow[];
  choice: NumberChoice;
  set: (part: Partial<NumberChoice>) => void;
  error: string | undefined;
}) {
  return (
    <Select
      label="Reserved number"
      placeholder="Choose a number"
      value={choice.reserved}
      onChange={(reserved) => set({ reserved })}
      choices={rows.map((row) => ({ value: row.isbn13, label: `${row.hyphenated}, for ${row.usedFor}` }))}
      error={error}
    />
  );
}

function waysFor(reserved: readonly NumberRow[]): { value: NumberWay; label: string }[] {
  return [
    { value: 'next', label: 'The next free number' },
    ...(reserved.length > 0
      ? [{ value: 'reserved' as const, label: `One of the reserved numbers (${reserved.length})` }]
      : []),
    { value: 'typed', label: 'A number I pick myself' },
  ];
}

/** Gives a format its number for ever. */
export function NumberDialog({ format, onClose }: { format: Format; onClose: () => void }) {
  const { today } = useWork();
  const form = useRecord<NumberChoice>(FIRST_CHOICE);
  const { draft: choice, merge } = form;
  const blocks = useQueryOf('blocks.list', {}).data?.blocks ?? [];
  const reserved = useQueryOf('numbers.list', { standing: 'reserved', count: 1000 }).data?.rows ?? [];
  const assign = useCommand('numbers.assign');
  const error = errorsOf(assign.refusal)('isbn');
  const send = async () => {
    const said = (row: NumberRow) => `${row.hyphenated} now belongs to this ${inSentence(format.name)}.`;
    const answer = await assign.run(assignInput(format.id, choice), said);
    if (answer.ok) closeAt(onClose, 'format', format.id);
  };
  return (
    <FormDialog
      title={`Take a number for ${format.name}`}
      submit="Take this number for ever"
      blocked={blockedReason(choice, blocks)}
      onClose={onClose}
      onSubmit={() => void send()}
      pending={assign.pending}
      refusal={assign.refusal}
      fields={choice.way === 'next' ? ['on'] : ['isbn', 'on']}
      dirty={choice.text !== ''}
    >
      <Notice>
        A number is for ever: it stays with this format, is never given to another, and cannot be taken back.
        If the format is cancelled, the number is spent.
      </Notice>
      <RadioGroup
        label="Which number"
        value={choice.way}
        onChange={(way) => merge({ way })}
        choices={waysFor(reserved)}
      />
      {choice.way === 'next' ? <NextFree blocks={blocks} choice={choice} set={merge} /> : null}
      {choice.way === 'reserved' ? (
        <ReservedNumbers rows={reserved} choice={choice} set={merge} error={error} />
      ) : null}
      {choice.way === 'typed' ? <TypedNumber choice={choice} set={merge} error={error} /> : null}
      <DateInput
        label="Taken on"
        value={choice.on}
        max={today}
        onChange={(on) => merge({ on })}
        help={`Left empty: today, ${formatDay(today)}.`}
        error={errorsOf(assign.refusal)('on')}
        name="on"
      />
    </FormDialog>
  );
}
