import { useEffect, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { NumberRow } from '../../../src/contract/numbers.ts';
import { useQueryOf } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { Button, Dialog, Isbn, KeyValue, type KeyValueItem, Refused, Standing } from '../../ui/index.ts';
import { NumberBarcode } from './number-barcode.tsx';
import { NumberSteps, type Question } from './number-steps.tsx';
import { ReleaseDialog } from './release-dialog.tsx';
import { SpendDialog } from './spend-dialog.tsx';
import { WrittenForms } from './written-forms.tsx';

/** The number as it stands now: asked alone, since the list it was opened from may no longer show it. */
function useNumberNow(opened: NumberRow, asOf: string | undefined): NumberRow {
  const { blockId, index } = opened;
  const alone = useQueryOf(
    'numbers.list',
    { blockId: blockId ?? undefined, from: index ?? 0, count: 1, asOf },
    { enabled: blockId !== null && index !== null },
  );
  const row = alone.data?.rows[0];
  return row?.isbn13 === opened.isbn13 ? row : opened;
}

function facts(row: NumberRow): KeyValueItem[] {
  const used = row.workId === null ? row.usedFor : <Link href={`/work/${row.workId}`}>{row.usedFor}</Link>;
  return [
    {
      label: 'Standing',
      value: (
        <Standing
          of="number"
          value={row.standing}
          detail={row.since ? `since ${formatDay(row.since)}` : undefined}
        />
      ),
    },
    ...(row.usedFor === ''
      ? []
      : [{ label: row.formatId === null ? 'Reserved for' : 'Given to', value: used }]),
    ...(row.replacedBy === null
      ? []
      : [
          {
            label: 'Replaced by',
            value: (
              <>
                <Link href={`/work/${row.replacedBy.workId}?format=${row.replacedBy.formatId}`}>
                  {row.replacedBy.label}
                </Link>{' '}
                <Isbn value={row.replacedBy.hyphenated} />
              </>
            ),
          },
        ]),
    ...(row.spentReason === null ? [] : [{ label: 'Why spent', value: row.spentReason }]),
    ...(row.blockId === null ? [{ label: 'Block', value: 'outside every recorded block' }] : []),
  ];
}

export interface NumberDialogProps {
  opened: NumberRow;
  asOf: string | undefined;
  onClose: () => void;
}

/** One number: where it stands, how it is written, and what can be done with it. */
export function NumberDialog({ opened, asOf, onClose }: NumberDialogProps) {
  const row = useNumberNow(opened, asOf);
  const [asking, setAsking] = useState<Question | 'bar code'>();
  const end = () => setAsking(undefined);
  const box = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a step takes its own button away, and the focus with it.
  useEffect(() => {
    if (document.activeElement === document.body)
      box.current?.closest('dialog')?.querySelector('button')?.focus();
  }, [asking, row.standing]);
  const checked = useQueryOf('isbns.check', { texts: [row.isbn13] });
  const check = checked.data?.checks[0];
  return (
    <>
      <Dialog open onClose={onClose} title={`Number ${row.hyphenated}`}>
        <div className="stack" ref={box}>
          <KeyValue items={facts(row)} />
          <Refused refusal={checked.error} />
          {check ? <WrittenForms check={check} /> : null}
          {asOf === undefined && row.standing === 'assigned' ? (
            <div>
              <Button onClick={() => setAsking('bar code')}>Bar code</Button>
            </div>
          ) : null}
          <NumberSteps row={row} onAsk={setAsking} />
        </div>
      </Dialog>
      {asking === 'bar code' ? <NumberBarcode row={row} onClose={end} /> : null}
      {asking === 'release' ? <ReleaseDialog row={row} onClose={end} /> : null}
      {asking === 'spend' ? <SpendDialog row={row} onClose={end} /> : null}
    </>
  );
}
