import type { Edition } from '../../../../src/contract/editions.ts';
import { EmptyState } from '../../../ui/index.ts';
import { FormatCard } from '../format/format-card.tsx';
import { headingId } from '../parts/go-to.ts';
import { useWork } from '../parts/work-context.tsx';
import { EditionFacts } from './edition-facts.tsx';
import { EditionLinks } from './edition-links.tsx';
import { LockNotice } from './lock-notice.tsx';

/** One edition: what locks, what it replaces, its formats, and all it records. */
export function EditionSection({ edition }: { edition: Edition }) {
  const { editable } = useWork();
  const id = headingId('edition', edition.id);
  const named = edition.label.startsWith(edition.title);
  return (
    <section className="section edition" aria-labelledby={id}>
      <div className="section-head">
        <h2 id={id} tabIndex={-1}>
          <span className="title">{named ? edition.title : edition.label}</span>
          {named ? edition.label.slice(edition.title.length) : null}
        </h2>
      </div>
      <EditionLinks edition={edition} />
      <div className="stack">
        {edition.lock ? <LockNotice edition={edition} lock={edition.lock} /> : null}
        {edition.formats.map((format) => (
          <FormatCard key={format.id} edition={edition} format={format} />
        ))}
        {edition.formats.length === 0 ? (
          <EmptyState title="No format yet">
            {editable
              ? 'Add the paperback, the e-book or whatever this edition will come out as; each takes a number of its own.'
              : 'Nothing was recorded here.'}
          </EmptyState>
        ) : null}
        <EditionFacts edition={edition} />
      </div>
    </section>
  );
}
