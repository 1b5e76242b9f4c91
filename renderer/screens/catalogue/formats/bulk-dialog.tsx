import { useState } from 'react';
import type { BulkAction } from '../../../../src/contract/bulk.ts';
import type { OutputOf } from '../../../../src/contract/index.ts';
import { useCommand } from '../../../api.ts';
import { Button, Dialog, Notice, Refused } from '../../../ui/index.ts';
import { useGuardedClose } from '../../../ui/use-guarded-close.tsx';
import { counted } from '../words.ts';
import { BulkFields } from './bulk-fields.tsx';
import { BULK_NAMES } from './bulk-names.ts';

type Result = OutputOf<'formats.bulk'>;

/** What would happen, before anything does. */
function Preview({ result }: { result: Result }) {
  const { done, unchanged, refused, locks, refusals } = result;
  return (
    <div className="stack" role="status">
      <p>
        {counted(done, 'format')} would change
        {unchanged > 0 ? `, ${counted(unchanged, 'is', 'are')} so already` : ''}
        {refused > 0 ? `, ${refused.toLocaleString()} refused` : ', none refused'}.
      </p>
      {locks > 0 ? (
        <Notice tone="care" title={`This locks the identity of ${counted(locks, 'format')}.`}>
          Title, people, number and form can then no longer be changed by mistake. The channel’s own terms say
          what it still lets you correct.
        </Notice>
      ) : null}
      {refused > 0 ? (
        <section aria-label="Refused">
          <h3>Why {refused.toLocaleString()} cannot take it</h3>
          <ul className="bulk-refusals">
            {refusals.map((one) => (
              <li key={one.formatId}>
                <b>{one.name}</b>: {one.sentence}
              </li>
            ))}
          </ul>
          {refused > refusals.length ? <p className="soft">The first hundred are shown.</p> : null}
        </section>
      ) : null}
    </div>
  );
}

interface BulkDialogProps {
  what: BulkAction['what'];
  formatIds: number[];
  onClose: () => void;
  onDone: () => void;
}

/** One thing done to many formats: filled in, looked at first, then done for all or for those that can take it. */
export function BulkDialog({ what, formatIds, onClose, onDone }: BulkDialogProps) {
  const [action, setAction] = useState<BulkAction>();
  const [preview, setPreview] = useState<Result>();
  const bulk = useCommand('formats.bulk');
  const run = async (mode: 'preview' | 'all' | 'good ones') => {
    if (!action) return;
    const said = (value: Result) => `${counted(value.done, 'format')} changed.`;
    const answer = await bulk.run({ formatIds, action, mode }, mode === 'preview' ? undefined : said);
    if (answer.ok && mode === 'preview') setPreview(answer.value);
    else if (answer.ok) onDone();
  };
  const guard = useGuardedClose(action !== undefined, onClose);
  const nothing = preview?.done === 0;
  const go = preview ? (
    <Button
      kind="primary"
      pending={bulk.pending}
      disabled={nothing}
      reason="There is nothing to change."
      onClick={() => void run(preview.refused > 0 ? 'good ones' : 'all')}
    >
      {preview.refused > 0
        ? `Do it for the ${preview.done.toLocaleString()} that can take it`
        : 'Do it for all'}
    </Button>
  ) : (
    <Button
      kind="primary"
      pending={bulk.pending}
      disabled={action === undefined}
      reason="Fill in what is required first."
      onClick={() => void run('preview')}
    >
      Look at what would happen
    </Button>
  );
  return (
    <>
      <Dialog
        open
        onClose={guard.close}
        title={`${BULK_NAMES[what]}: ${counted(formatIds.length, 'format')}`}
        footer={
          <>
            {go}
            <Button onClick={guard.close}>Keep as it is</Button>
          </>
        }
      >
        <form
          className="stack"
          onSubmit={(event) => {
            event.preventDefault();
            void run('preview');
          }}
        >
          <BulkFields
            what={what}
            onChange={(next) => {
              setAction(next);
              setPreview(undefined);
              bulk.clear();
            }}
          />
          <Refused refusal={bulk.refusal} />
          {preview ? <Preview result={preview} /> : null}
          <button type="submit" hidden tabIndex={-1} />
        </form>
      </Dialog>
      {guard.question}
    </>
  );
}
