import { useState } from 'react';
import type { Block } from '../../../src/contract/blocks.ts';
import type { NumberRow } from '../../../src/contract/numbers.ts';
import { useQueryParam } from '../../location.ts';
import { useReadOnly } from '../../read-only.ts';
import { Button, Notice, Section, Tabs } from '../../ui/index.ts';
import { EditBlockDialog } from './edit-block-dialog.tsx';
import { NumberDialog } from './number-dialog.tsx';
import { NumberTable } from './number-table.tsx';
import { Picture } from './picture.tsx';
import { ReserveDialog } from './reserve-dialog.tsx';
import { blockName, countsInWords } from './words.ts';

type View = 'picture' | 'table';

/** The buttons of a block. */
function BlockSteps({ block }: { block: Block }) {
  const readOnly = useReadOnly();
  const [open, setOpen] = useState<'reserve' | 'edit'>();
  const none = block.counts.free === 0 ? 'This block has no free number left.' : undefined;
  const end = () => setOpen(undefined);
  return (
    <>
      <Button
        disabled={(readOnly ?? none) !== undefined}
        reason={readOnly ?? none}
        onClick={() => setOpen('reserve')}
      >
        Reserve numbers…
      </Button>
      <Button disabled={readOnly !== undefined} reason={readOnly} onClick={() => setOpen('edit')}>
        Edit label, note and cost…
      </Button>
      {open === 'reserve' ? <ReserveDialog block={block} onClose={end} /> : null}
      {open === 'edit' ? <EditBlockDialog block={block} onClose={end} /> : null}
    </>
  );
}

/** How much is left, in words, and what is noted. */
function BlockFacts({ block }: { block: Block }) {
  return (
    <div className="block-facts">
      <p>{countsInWords(block.counts, block.capacity)}.</p>
      <p className="soft">
        <span className="mono">{block.first}</span> to <span className="mono">{block.last}</span>
        {block.note === '' ? null : <> · {block.note}</>}
      </p>
      {block.counts.free === 0 ? (
        <Notice tone="care" title="This block is used up.">
          Ask your ISBN agency for a further one: it comes with a prefix of its own. Record it here, and
          formats take their numbers from it.
        </Notice>
      ) : null}
    </div>
  );
}

/** The numbers of one block, as a picture or a table. */
export function BlockView({ block, asOf }: { block: Block; asOf: string | undefined }) {
  const [view, setView] = useQueryParam('view', 'picture');
  const [opened, setOpened] = useState<NumberRow>();
  const shown: View = view === 'table' ? 'table' : 'picture';
  return (
    <Section title={`Block ${blockName(block)}`} actions={<BlockSteps block={block} />}>
      <BlockFacts block={block} />
      <Tabs<View>
        label="Ways to show the numbers"
        value={shown}
        onChange={setView}
        tabs={[
          { id: 'picture', label: 'Picture' },
          { id: 'table', label: 'Table' },
        ]}
      >
        {shown === 'picture' ? (
          <Picture key={block.id} block={block} asOf={asOf} onOpen={setOpened} />
        ) : (
          <NumberTable
            blockId={block.id}
            caption={`Numbers of block ${block.hyphenatedPrefix}`}
            fileName={`numbers-${block.hyphenatedPrefix}`}
            asOf={asOf}
            onOpen={setOpened}
          />
        )}
      </Tabs>
      {opened ? <NumberDialog opened={opened} asOf={asOf} onClose={() => setOpened(undefined)} /> : null}
    </Section>
  );
}
