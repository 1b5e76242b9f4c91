import { useEffect, useRef } from 'react';
import { Checkbox } from '../../../ui/index.ts';
import { BlockPreviewTable } from './block-preview-table.tsx';
import { foundInWords, mendLine } from './list.ts';
import { ProblemList } from './problem-list.tsx';
import type { ReadList } from './use-list.ts';

interface ListPreviewProps {
  list: ReadList;
  goodOnly: boolean;
  onGoodOnly: (only: boolean) => void;
  onMend: (text: string) => void;
}

/** What recording the list would do, and what of it is not understood. */
export function ListPreview({ list, goodOnly, onGoodOnly, onMend }: ListPreviewProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  const { found, text, fileName } = list;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a fresh reading is what is to be looked at next.
  useEffect(() => heading.current?.focus(), [list]);
  return (
    <section className="stack owned-preview" aria-label="What is in the list">
      <h3 ref={heading} tabIndex={-1}>
        {fileName ?? 'The pasted list'}: {foundInWords(found)}
      </h3>
      {found.blocks.length === 0 ? null : (
        <>
          <BlockPreviewTable blocks={found.blocks} />
          <p className="soft">
            Blocks that are new here are recorded. Numbers the list calls assigned are reserved under their
            title, so that nothing else takes them; give them to their formats on the Work screen. Spent ones
            are never offered. What is in use here already stays as it is.
          </p>
        </>
      )}
      <ProblemList
        problems={found.problems}
        mended={(problem) =>
          problem.repair === null ? undefined : mendLine(text, problem.line, problem.text, problem.repair)
        }
        onMend={onMend}
      />
      {found.problems.length > 0 && found.blocks.length > 0 ? (
        <Checkbox
          label="Record the good lines only"
          checked={goodOnly}
          onChange={onGoodOnly}
          help="The places above are then left out; mend them in the file and import it again later."
        />
      ) : null}
    </section>
  );
}
