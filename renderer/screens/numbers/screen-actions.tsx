import { Button } from '../../ui/index.ts';

interface ScreenActionsProps {
  /** Without a block the screen itself says what to do first. */
  hasBlocks: boolean;
  readOnly: string | undefined;
  onCheck: () => void;
  onRecord: () => void;
  onImport: () => void;
}

/** The buttons at the head of the Numbers screen. */
export function ScreenActions({ hasBlocks, readOnly, onCheck, onRecord, onImport }: ScreenActionsProps) {
  const still = { disabled: readOnly !== undefined, reason: readOnly };
  return (
    <>
      <Button onClick={onCheck}>Check ISBNs</Button>
      {hasBlocks ? (
        <>
          <Button {...still} onClick={onImport}>
            Import the agency’s list…
          </Button>
          <Button kind="primary" {...still} onClick={onRecord}>
            Record a block…
          </Button>
        </>
      ) : null}
    </>
  );
}
