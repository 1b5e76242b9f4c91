import type { Edition } from '../../../../src/contract/editions.ts';
import { namesOf } from '../parts/edition-names.ts';
import { counted } from '../parts/names.ts';
import { namedContributors } from './contributors-input.tsx';
import { formatCount, type NextDraft } from './next-edition-draft.ts';

function List({ title, items }: { title: string; items: readonly string[] }) {
  return (
    <div>
      <h3 className="facts-head">{title}</h3>
      <ul className="summary-list">
        {items.map((item) => (
          <li key={item}>{item}</li>
        ))}
      </ul>
    </div>
  );
}

/** What comes over from the old edition, what changes, and what starts anew. */
export function NextSummary({ edition, draft }: { edition: Edition; draft: NextDraft }) {
  const people = namedContributors(draft.contributors);
  const changed = [
    `Edition number: ${edition.number ?? 1} becomes ${(edition.number ?? 1) + 1}`,
    `Edition statement: ${draft.statement.trim() || 'follows the number'}`,
    ...(draft.title === edition.title ? [] : [`Title: ${draft.title}`]),
    ...(draft.imprint === edition.imprint ? [] : [`Imprint: ${draft.imprint || 'none'}`]),
    ...(draft.subtitle === edition.subtitle ? [] : [`Subtitle: ${draft.subtitle || 'none'}`]),
    ...(JSON.stringify(people) === JSON.stringify(edition.contributors)
      ? []
      : [`Contributors: ${namesOf(people) || 'none'}`]),
    `Formats: ${counted(formatCount(draft), 'format')}${draft.takeNumbers ? ', with new numbers' : ''}`,
  ];
  return (
    <div className="columns next-summary">
      <List
        title="Carries over"
        items={[
          'What of title, subtitle, language, imprint, series and contributors is not changed here',
          'Description, keywords, subjects and audience',
          'Trim size, pages, paper, cover and prices of the carried formats',
          ...(draft.carryListings ? ['The same channels with discount, returns and print cost'] : []),
        ]}
      />
      <List title="Changes" items={changed} />
      <List
        title="Does not carry"
        items={[
          'ISBNs: a new edition takes new numbers',
          'Publication and on-sale dates',
          'Notes on formats, references of channels, and where each listing stands',
          ...(draft.carryListings ? [] : ['The channels']),
        ]}
      />
    </div>
  );
}
