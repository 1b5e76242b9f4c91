import { Link, useParams } from 'wouter';
import { useQueryParam } from '../../location.ts';
import { EmptyState, PageHeader, SearchInput } from '../../ui/index.ts';
import { searchHelp } from './search.ts';
import { TopicPage } from './topic-page.tsx';
import { helpRoute, isTopic, TOPIC_IDS, TOPICS } from './topics.ts';
import './help.css';

/** Sections that hold what was typed. */
function Hits({ typed }: { typed: string }) {
  const hits = searchHelp(typed);
  return (
    <>
      <p role="status" className="soft">
        {hits.length === 0
          ? 'No section holds all of these words.'
          : `${hits.length === 1 ? 'One section holds' : `${hits.length} sections hold`} what you typed.`}
      </p>
      <ul className="help-topics">
        {hits.map(({ topic, section, excerpt }) => (
          <li key={`${topic}/${section.id}`}>
            <h2>
              <Link href={helpRoute(topic, section.id)}>{section.heading}</Link>
            </h2>
            <p className="soft">{TOPICS[topic].title}</p>
            <p>{excerpt}</p>
          </li>
        ))}
      </ul>
    </>
  );
}

/** The pages of the help, each in a few sentences, and the search of them. */
function HelpContents() {
  const [typed, setTyped] = useQueryParam('words');
  return (
    <>
      <PageHeader
        title="Help"
        lede="How the trade deals with numbers, editions and channels, in plain words and with sources; and how this program follows it."
      />
      <div className="help-search">
        <SearchInput label="Search the help" value={typed} onChange={setTyped} />
      </div>
      {typed.trim() === '' ? (
        <ul className="help-topics">
          {TOPIC_IDS.map((id) => (
            <li key={id}>
              <h2>
                <Link href={helpRoute(id)}>{TOPICS[id].title}</Link>
              </h2>
              <p>{TOPICS[id].short}</p>
            </li>
          ))}
        </ul>
      ) : (
        <Hits typed={typed} />
      )}
    </>
  );
}

/** The Help screen: its contents at `/help`, a page at `/help/locks`, a section of it at `/help/locks/why`. */
export default function HelpScreen() {
  const { '*': rest = '' } = useParams<{ '*'?: string }>();
  const [topic, section] = rest.split('/');
  if (isTopic(topic)) return <TopicPage key={topic} topic={topic} section={section} />;
  if (rest === '') return <HelpContents />;
  return (
    <>
      <PageHeader title="Help" />
      <EmptyState title="There is no such page" action={<Link href="/help">See all pages</Link>}>
        The help has no page at this address.
      </EmptyState>
    </>
  );
}
