import { useEffect } from 'react';
import { Link } from 'wouter';
import { PageHeader } from '../../ui/index.ts';
import { SectionView, sectionId } from './blocks.tsx';
import { TEXTS } from './text/index.ts';
import { helpRoute, TOPIC_IDS, TOPICS, type TopicId } from './topics.ts';

/** Goes to the section that the address names. */
function useSection(topic: TopicId, section: string | undefined): void {
  useEffect(() => {
    if (section === undefined || !TEXTS[topic].sections.some(({ id }) => id === section)) return;
    // The head of the screen takes the focus first when the page opens.
    const timer = window.setTimeout(() => {
      const heading = document.getElementById(sectionId(section));
      heading?.scrollIntoView({ block: 'start' });
      heading?.focus({ preventScroll: true });
    }, 0);
    return () => window.clearTimeout(timer);
  }, [topic, section]);
}

/** The pages in their order, the present one marked. */
function Pages({ topic }: { topic: TopicId }) {
  return (
    <nav className="help-pages" aria-label="Pages of the help">
      <ul>
        {TOPIC_IDS.map((id) => (
          <li key={id}>
            <Link href={helpRoute(id)} aria-current={id === topic ? 'page' : undefined}>
              {TOPICS[id].title}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** One page of the help. */
export function TopicPage({ topic, section }: { topic: TopicId; section: string | undefined }) {
  const { sections, doors } = TEXTS[topic];
  const { title, short } = TOPICS[topic];
  useSection(topic, section);
  return (
    <>
      <PageHeader title={title} crumbs={[{ label: 'Help', to: '/help' }, { label: title }]} />
      <div className="help">
        <article className="help-text">
          <p className="help-short">{short}</p>
          {sections.map((one) => (
            <SectionView key={one.id} section={one} />
          ))}
          <section className="help-section" aria-labelledby="help-doors">
            <h2 id="help-doors">Where it is done</h2>
            <ul>
              {doors.map((door) => (
                <li key={door.to}>
                  <Link href={door.to}>{door.label}</Link>
                </li>
              ))}
            </ul>
          </section>
        </article>
        <Pages topic={topic} />
      </div>
    </>
  );
}
