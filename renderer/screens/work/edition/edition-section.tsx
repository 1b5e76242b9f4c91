import type { Edition } from '../../../../src/contract/editions.ts';
import { EmptyState } from '../../../ui/index.ts';
import { KeptAdvice } from '../advice/kept-advice.tsx';
import { FormatCard } from '../format/format-card.tsx';
import { shortName } from '../parts/edition-names.ts';
import { headingId } from '../parts/go-to.ts';
import { useWork } from '../parts/work-context.tsx';
import { Compare } from './compare.tsx';
import { CorrectionNotice } from './correction.tsx';
import { EditionActions } from './edition-actions.tsx';
import { EditionFacts } from './edition-facts.tsx';
import { EditionLinks } from './edition-links.tsx';
import { LockNotice } from './lock-notice.tsx';
import { Plans } from './plans.tsx';

/** One edition: what locks, what it replaces, its formats, and all it records. */
export function EditionSection({ edition }: { edition: Edition }) {
  const { editable } = useWork();
  const id = headingId('edition', edition.id);
  return (
    <section className="section edition" aria-labelledby={id}>
      <div className="edition-head">
        <h2 id={id} tabIndex={-1}>
          <span className="title">{edition.title}</span>, {shortName(edition)}
        </h2>
        <EditionLinks edition={edition} />
        {editable ? <EditionActions edition={edition} /> : null}
      </div>
      <div className="stack">
        {edition.lock ? <LockNotice edition={edition} lock={edition.lock} /> : null}
        {edition.correction ? <CorrectionNotice correction={edition.correction} /> : null}
        <Plans edition={edition} />
        {edition.formats.map((format) => (
          <FormatCard key={format.id} edition={edition} format={format} />
        ))}
        {edition.formats.length === 0 ? (
          <EmptyState title="No format yet">
            {editable
              ? 'Press “Add a format” for the paperback, the e-book or whatever this edition comes out as; each takes a number of its own.'
              : 'Nothing was recorded here.'}
          </EmptyState>
        ) : null}
        <EditionFacts edition={edition} />
        <Compare edition={edition} />
        <KeptAdvice edition={edition} />
      </div>
    </section>
  );
}
