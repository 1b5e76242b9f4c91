import { useRef, useState } from 'react';
import type { Block } from '../../../src/contract/blocks.ts';
import { useQueryOf } from '../../api.ts';
import { useAsOf, useQueryParam } from '../../location.ts';
import { useReadOnly } from '../../read-only.ts';
import { Button, Notice, PageHeader, Refused } from '../../ui/index.ts';
import { HelpLink } from '../help/help-link.tsx';
import { AllTaken } from './all-taken.tsx';
import { BlockView } from './block-view.tsx';
import { BlocksTable } from './blocks-table.tsx';
import { CheckPanel } from './check-panel.tsx';
import { NoBlock } from './no-block.tsx';
import './numbers.css';
import { ImportDialog } from './owned/import-dialog.tsx';
import './picture.css';
import { RecordBlockDialog } from './record-block-dialog.tsx';
import { ScreenActions } from './screen-actions.tsx';
import { leftInWords } from './words.ts';

/** Stands for no block in the address: every number in use is then shown. */
const ALL = 'all';

function ledeOf(blocks: readonly Block[]): string {
  const sum = (of: (block: Block) => number) => blocks.reduce((total, block) => total + of(block), 0);
  const left = leftInWords(
    sum((block) => block.counts.free),
    sum((block) => block.capacity),
  );
  return blocks.length === 1 ? `${left} in one block` : `${left} in ${blocks.length} blocks`;
}

/** Which block is shown, kept in the address; the first one where none is chosen. */
function useChosen(blocks: readonly Block[]) {
  const [chosen, setChosen] = useQueryParam('block');
  const [, setPage] = useQueryParam('page');
  const [, setStanding] = useQueryParam('standing', 'all');
  const choose = (next: string) => {
    for (const [set, to] of [
      [setPage, ''],
      [setStanding, 'all'],
      [setChosen, next],
    ] as const)
      set(to);
  };
  const block = chosen === ALL ? undefined : (blocks.find((one) => String(one.id) === chosen) ?? blocks[0]);
  return { block, all: chosen === ALL, choose };
}

/** How long the numbers last at the pace they are taken; told for today alone. */
function Runway() {
  const runway = useQueryOf('blocks.runway', {});
  return runway.data ? <p className="runway">{runway.data.sentence}</p> : null;
}

/** How many numbers lie outside every block, with the way to them. */
function Outside({
  blocks,
  asOf,
  onShow,
}: {
  blocks: readonly Block[];
  asOf: string | undefined;
  onShow: () => void;
}) {
  const status = useQueryOf('catalogue.status', { asOf, withList: false });
  if (!status.data) return null;
  const { reserved, assigned, spent } = status.data.numbers;
  const inside = blocks.reduce(
    (sum, { counts }) => sum + counts.reserved + counts.assigned + counts.spent,
    0,
  );
  const outside = reserved + assigned + spent - inside;
  if (outside <= 0) return null;
  return (
    <Notice
      tone="care"
      title={
        outside === 1 ? 'One number lies outside every block.' : `${outside} numbers lie outside every block.`
      }
      action={<Button onClick={onShow}>Show every number in use</Button>}
    >
      Record the block it belongs to, if it is yours.
    </Notice>
  );
}

/** With the first block the button that opened the dialog has gone; the heading takes the focus. */
function focusLeft(): void {
  if (document.activeElement === document.body) document.querySelector('h1')?.focus();
}

/** The Numbers screen: blocks, every number of them, and the check of ISBNs. */
export default function NumbersScreen() {
  const { asOf } = useAsOf();
  const readOnly = useReadOnly();
  const list = useQueryOf('blocks.list', { asOf });
  const [open, setOpen] = useState<'record' | 'import'>();
  const checkBox = useRef<HTMLDivElement>(null);
  const blocks = list.data?.blocks ?? [];
  const { block, all, choose } = useChosen(blocks);
  const end = () => {
    setOpen(undefined);
    requestAnimationFrame(focusLeft);
  };
  return (
    <div className="numbers-screen">
      <PageHeader
        title="Numbers"
        lede={blocks.length > 0 ? ledeOf(blocks) : undefined}
        actions={
          <ScreenActions
            hasBlocks={blocks.length > 0}
            readOnly={readOnly}
            onCheck={() => checkBox.current?.querySelector('textarea')?.focus()}
            onRecord={() => setOpen('record')}
            onImport={() => setOpen('import')}
          />
        }
      />
      <Refused refusal={list.error} />
      {list.data && blocks.length === 0 ? (
        <NoBlock readOnly={readOnly} onRecord={() => setOpen('record')} onImport={() => setOpen('import')} />
      ) : null}
      {blocks.length > 0 ? (
        <BlocksTable blocks={blocks} chosen={block?.id} onChoose={(next) => choose(String(next.id))} />
      ) : null}
      {blocks.length > 0 && asOf === undefined ? <Runway /> : null}
      {list.data ? <Outside blocks={blocks} asOf={asOf} onShow={() => choose(ALL)} /> : null}
      {block ? <BlockView key={block.id} block={block} asOf={asOf} /> : null}
      {all ? <AllTaken asOf={asOf} /> : null}
      <p>
        <HelpLink topic="numbers" />
      </p>
      <CheckPanel box={checkBox} asOf={asOf} />
      <RecordBlockDialog
        open={open === 'record'}
        onClose={end}
        onDone={(made) => {
          end();
          choose(String(made.id));
        }}
      />
      {open === 'import' ? <ImportDialog onClose={end} /> : null}
    </div>
  );
}
