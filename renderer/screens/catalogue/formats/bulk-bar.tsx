import { useState } from 'react';
import type { BulkAction } from '../../../../src/contract/bulk.ts';
import { useReadOnly } from '../../../read-only.ts';
import { Button } from '../../../ui/index.ts';
import { counted } from '../words.ts';
import { BulkDialog } from './bulk-dialog.tsx';
import { BULK_NAMES } from './bulk-names.ts';

const WHATS = Object.keys(BULK_NAMES) as BulkAction['what'][];

/** What can be done to the chosen formats. */
export function BulkBar({ chosen, onDone }: { chosen: ReadonlySet<number>; onDone: () => void }) {
  const readOnly = useReadOnly();
  const [what, setWhat] = useState<BulkAction['what']>();
  const none = chosen.size === 0;
  return (
    <section className="bulk-bar" aria-label="Change the chosen formats">
      <p role="status">{none ? 'No format chosen' : `${counted(chosen.size, 'format')} chosen`}</p>
      {none
        ? null
        : WHATS.map((one) => (
            <Button
              key={one}
              onClick={() => setWhat(one)}
              disabled={readOnly !== undefined}
              reason={readOnly}
            >
              {BULK_NAMES[one]}…
            </Button>
          ))}
      {what === undefined || none ? null : (
        <BulkDialog
          what={what}
          formatIds={[...chosen]}
          onClose={() => setWhat(undefined)}
          onDone={() => {
            setWhat(undefined);
            onDone();
          }}
        />
      )}
    </section>
  );
}
