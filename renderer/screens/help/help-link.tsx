import { Link } from 'wouter';
import { helpRoute, TOPICS, type TopicId } from './topics.ts';

interface HelpLinkProps {
  topic: TopicId;
  section?: string;
  /** Instead of the page's own words. */
  children?: string;
}

/** A small link to the page that explains what stands beside it; never inside a dialog, whose typing it would lose. */
export function HelpLink({ topic, section, children }: HelpLinkProps) {
  return (
    <Link href={helpRoute(topic, section)} className="help-link">
      {children ?? TOPICS[topic].link}
    </Link>
  );
}

/** The same inside a dialog: folded away, read in place, so that nothing typed is lost. */
export function HelpFold({ topic, children }: Omit<HelpLinkProps, 'section'>) {
  const { link, short, title } = TOPICS[topic];
  return (
    <details className="help-fold">
      <summary>{children ?? link}</summary>
      <p>
        {short} <span className="soft">More under Help, “{title}”.</span>
      </p>
    </details>
  );
}
