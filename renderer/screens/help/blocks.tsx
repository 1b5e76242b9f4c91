import { RuleTables } from './rule-tables.tsx';
import { citedText } from './sources.ts';
import type { Block, HelpSection } from './text/types.ts';

function BlockView({ block }: { block: Block }) {
  if (typeof block === 'string') return <p>{block}</p>;
  if ('list' in block)
    return (
      <ul>
        {block.list.map((item) => (
          <li key={item}>{item}</li>
        ))}
      </ul>
    );
  if ('steps' in block)
    return (
      <ol>
        {block.steps.map((item) => (
          <li key={item}>{item}</li>
        ))}
      </ol>
    );
  if ('terms' in block)
    return (
      <dl className="help-terms">
        {block.terms.map(([term, meaning]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
    );
  return <RuleTables table={block.table} />;
}

/** The element id that a section is reached by. */
export const sectionId = (id: string) => `help-${id}`;

/** One section of a page, with its sources under it. */
export function SectionView({ section }: { section: HelpSection }) {
  const id = sectionId(section.id);
  return (
    <section className="help-section" aria-labelledby={id}>
      <h2 id={id} tabIndex={-1}>
        {section.heading}
      </h2>
      {section.blocks.map((block, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the text never changes its order
        <BlockView key={index} block={block} />
      ))}
      <p className="help-sources">
        <span>Sources:</span> {citedText(section.sources)}
      </p>
    </section>
  );
}
