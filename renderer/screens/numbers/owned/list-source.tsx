import { readOwnedList } from '../../../../src/contract/blocks.ts';
import { Button, FileInput, TextArea } from '../../../ui/index.ts';
import { checkInput } from '../../settings/parts/input-check.ts';

/** As much text as the contract takes. */
const MAX_BYTES = 7_000_000;

interface ListSourceProps {
  pasted: string;
  onPaste: (text: string) => void;
  onRead: (text: string, fileName: string | undefined) => void;
  pending: boolean;
}

/** Where the list comes from: a file, or what is pasted. */
export function ListSource({ pasted, onPaste, onRead, pending }: ListSourceProps) {
  const empty = pasted.trim() === '' ? 'Paste the list first.' : undefined;
  const wrong = pasted === '' ? undefined : checkInput(readOwnedList.input, { text: pasted }).text;
  const reason = wrong ?? empty;
  return (
    <>
      <p>
        Many agencies let you save the numbers you own as a table. Nothing is recorded before you have seen
        what is in it.
      </p>
      <FileInput
        label="CSV file"
        accept=".csv,.tsv,.txt,text/csv,text/plain"
        maxBytes={MAX_BYTES}
        onText={onRead}
        help="One number a line. Columns headed status, date and title are understood too."
      />
      <TextArea
        label="Or paste the list"
        name="text"
        mono
        rows={4}
        value={pasted}
        onChange={onPaste}
        error={wrong}
      />
      <div>
        <Button
          pending={pending}
          disabled={reason !== undefined}
          reason={reason}
          onClick={() => onRead(pasted, undefined)}
        >
          Read the list
        </Button>
      </div>
    </>
  );
}
