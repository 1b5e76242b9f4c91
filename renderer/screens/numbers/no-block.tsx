import { Link } from 'wouter';
import { Button, EmptyState } from '../../ui/index.ts';

interface NoBlockProps {
  readOnly: string | undefined;
  onRecord: () => void;
  onImport: () => void;
}

/** What to do first: record a block, or take over the agency’s list. */
export function NoBlock({ readOnly, onRecord, onImport }: NoBlockProps) {
  return (
    <EmptyState
      title="No number block yet"
      action={
        <>
          <Button kind="primary" disabled={readOnly !== undefined} reason={readOnly} onClick={onRecord}>
            Record your first block
          </Button>
          <Button disabled={readOnly !== undefined} reason={readOnly} onClick={onImport}>
            Import the agency’s list…
          </Button>
        </>
      }
    >
      <p>
        An ISBN agency gives numbers out in blocks of 10, 100, 1,000 or more. All numbers of a block begin
        with the same prefix, and that prefix belongs to your press alone. Record yours once: type its prefix,
        or any one of its numbers. Every format you make then takes its number from it.
      </p>
      <p>
        To look around first, load the demo press on the <Link href="/catalogue">Catalogue</Link> screen.
      </p>
    </EmptyState>
  );
}
