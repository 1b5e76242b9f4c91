import { useState } from 'react';
import type { NumberRow } from '../../../src/contract/numbers.ts';
import { reserveNumbers } from '../../../src/contract/numbers.ts';
import { useReadOnly } from '../../read-only.ts';
import { Button, Refused, TextInput } from '../../ui/index.ts';
import { useCheckedCommand } from '../settings/parts/use-checked-command.ts';

/** Keeps a free number for a purpose. */
function ReserveForm({ row, reason }: { row: NumberRow; reason: string | undefined }) {
  const [purpose, setPurpose] = useState('');
  const command = useCheckedCommand('numbers.reserve', reserveNumbers.input);
  return (
    <form
      className="stack"
      ref={command.form}
      onSubmit={(event) => {
        event.preventDefault();
        void command.send(
          { isbn: row.isbn13, reservedFor: purpose },
          `${row.hyphenated} is reserved for ${purpose.trim()}.`,
        );
      }}
    >
      <TextInput
        label="Reserve it for"
        required
        name="reservedFor"
        value={purpose}
        onChange={setPurpose}
        disabled={reason !== undefined}
        error={command.errorOf('reservedFor')}
        help="In your own words. A reserved number can be given back; nothing takes it meanwhile."
      />
      <Refused refusal={command.refusal} fields={['reservedFor']} />
      <div className="row">
        <Button
          type="submit"
          kind="primary"
          pending={command.pending}
          disabled={reason !== undefined}
          reason={reason}
        >
          Reserve this number
        </Button>
      </div>
    </form>
  );
}

/** What needs an answer before it is done. */
export type Question = 'release' | 'spend';

interface NumberStepsProps {
  row: NumberRow;
  onAsk: (question: Question) => void;
}

/** What can be done with a number where it stands; a spent one stays as it is. */
export function NumberSteps({ row, onAsk }: NumberStepsProps) {
  const readOnly = useReadOnly();
  if (row.standing === 'spent')
    return <p className="soft">A spent number is never used again, so nothing more can be done with it.</p>;
  return (
    <>
      {row.standing === 'free' ? <ReserveForm row={row} reason={readOnly} /> : null}
      <div className="row">
        {row.standing === 'reserved' ? (
          <Button disabled={readOnly !== undefined} reason={readOnly} onClick={() => onAsk('release')}>
            Release…
          </Button>
        ) : null}
        <Button
          kind="danger"
          disabled={readOnly !== undefined}
          reason={readOnly}
          onClick={() => onAsk('spend')}
        >
          Record a misprint or mistake…
        </Button>
      </div>
    </>
  );
}
