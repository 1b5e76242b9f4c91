import { useState } from 'react';
import type { Block } from '../../../src/contract/blocks.ts';
import type { NumberRow } from '../../../src/contract/numbers.ts';
import { useQueryParam } from '../../location.ts';
import { Button } from '../../ui/index.ts';
import { BandOverview } from './band-overview.tsx';
import { NumberPage } from './number-page.tsx';
import { PAGE, publicationElement } from './words.ts';

interface PictureProps {
  block: Block;
  asOf: string | undefined;
  onOpen: (row: NumberRow) => void;
}

/** The way between the overview of a large block and its thousands. */
function PageBar({
  block,
  from,
  go,
}: {
  block: Block;
  from: number;
  go: (from: number | undefined) => void;
}) {
  const name = (place: number) => publicationElement(place, block.capacity);
  return (
    <fieldset className="row page-bar">
      <legend className="visually-hidden">Part of the block</legend>
      <Button onClick={() => go(undefined)}>Whole block</Button>
      <Button
        disabled={from === 0}
        reason="These are the first numbers of the block."
        onClick={() => go(from - PAGE)}
      >
        Previous 1,000
      </Button>
      <Button
        disabled={from + PAGE >= block.capacity}
        reason="These are the last numbers of the block."
        onClick={() => go(from + PAGE)}
      >
        Next 1,000
      </Button>
      <span>
        Numbers <span className="mono">{name(from)}</span> to{' '}
        <span className="mono">{name(from + PAGE - 1)}</span>
      </span>
    </fieldset>
  );
}

/** The page of a large block in the address: its place in thousands, or none for the overview. */
function usePage(block: Block): [number | undefined, (from: number | undefined) => void] {
  const [text, setText] = useQueryParam('page');
  const page = /^\d{1,6}$/.test(text) ? Number(text) * PAGE : undefined;
  const from = page !== undefined && page < block.capacity ? page : undefined;
  return [from, (next) => setText(next === undefined ? '' : String(next / PAGE))];
}

/** Every number of a block as a small shape; a block of more than a thousand begins with an overview. */
export function Picture({ block, asOf, onOpen }: PictureProps) {
  const [from, setFrom] = usePage(block);
  const [moved, setMoved] = useState<{ cameFrom: number | undefined }>();
  if (block.capacity <= PAGE)
    return <NumberPage block={block} asOf={asOf} from={0} onOpen={onOpen} takeFocus={false} />;
  if (from === undefined)
    return (
      <BandOverview
        block={block}
        asOf={asOf}
        cameFrom={moved?.cameFrom}
        onOpen={(next) => {
          setMoved({ cameFrom: undefined });
          setFrom(next);
        }}
      />
    );
  const go = (next: number | undefined) => {
    setMoved(next === undefined ? { cameFrom: from } : undefined);
    setFrom(next);
  };
  return (
    <>
      <PageBar block={block} from={from} go={go} />
      <NumberPage
        key={from}
        block={block}
        asOf={asOf}
        from={from}
        onOpen={onOpen}
        takeFocus={moved !== undefined}
      />
    </>
  );
}
