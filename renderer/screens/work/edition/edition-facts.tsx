import type { Edition, Subject } from '../../../../src/contract/editions.ts';
import { roleName } from '../../../../src/contract/terms.ts';
import { KeyValue, Sign } from '../../../ui/index.ts';
import { languageName, SCHEME_NAMES } from '../parts/names.ts';
import { audienceText } from './edition-texts.ts';

function People({ edition }: { edition: Edition }) {
  if (edition.contributors.length === 0) return '—';
  return (
    <ol className="plain-list">
      {edition.contributors.map(({ role, name }) => (
        <li key={`${role}${name}`}>
          {name} <span className="soft">· {roleName(role).toLowerCase()}</span>
        </li>
      ))}
    </ol>
  );
}

function Subjects({ subjects }: { subjects: readonly Subject[] }) {
  if (subjects.length === 0) return '—';
  return (
    <ol className="plain-list">
      {subjects.map(({ scheme, code, heading }, index) => (
        <li key={`${scheme}${code}`}>
          {heading || code}{' '}
          <span className="soft">
            · {SCHEME_NAMES[scheme]} {heading ? code : ''}
            {index === 0 ? ' · main' : ''}
          </span>
        </li>
      ))}
    </ol>
  );
}

function IdentityFacts({ edition }: { edition: Edition }) {
  const locked = edition.lock?.fields.includes('title');
  const series = [edition.series, edition.seriesNumber].filter(Boolean).join(', ');
  return (
    <div>
      <h3 className="facts-head">
        {locked ? <Sign name="padlock" /> : null}
        Identity <span className="soft">{locked ? 'locked' : 'locks when first sent'}</span>
      </h3>
      <KeyValue
        items={[
          { label: 'Title', value: edition.title },
          { label: 'Subtitle', value: edition.subtitle },
          { label: 'Edition number', value: edition.number },
          { label: 'Edition statement', value: edition.statement },
          { label: 'Contributors', value: <People edition={edition} /> },
          { label: 'Language', value: languageName(edition.language) },
          { label: 'Imprint', value: edition.imprint },
          { label: 'Series', value: series },
        ]}
      />
    </div>
  );
}

function OpenFacts({ edition }: { edition: Edition }) {
  return (
    <div>
      <h3 className="facts-head">
        Description and subjects <span className="soft">stay open</span>
      </h3>
      <KeyValue
        items={[
          { label: 'Description', value: <span className="prose">{edition.description || '—'}</span> },
          { label: 'Keywords', value: edition.keywords.join('; ') },
          { label: 'Subjects', value: <Subjects subjects={edition.subjects} /> },
          { label: 'Audience', value: audienceText(edition) },
        ]}
      />
    </div>
  );
}

/** All that an edition records, identity beside what stays open. */
export function EditionFacts({ edition }: { edition: Edition }) {
  return (
    <div className="edition-facts">
      <IdentityFacts edition={edition} />
      <OpenFacts edition={edition} />
    </div>
  );
}
