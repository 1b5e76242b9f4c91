import type { Edition } from '../../../../src/contract/editions.ts';
import { type Column, Table } from '../../../ui/index.ts';
import { editionOf, fullName, peopleOf, shortName } from '../parts/edition-names.ts';
import { FIELD_NAMES, languageName } from '../parts/names.ts';
import { useWork } from '../parts/work-context.tsx';
import { audienceText } from './edition-facts.tsx';

interface Difference {
  name: string;
  old: string;
  now: string;
}

function textsOf(edition: Edition): Record<string, string> {
  const formats = edition.formats
    .filter((format) => format.standing !== 'cancelled')
    .map((format) => format.name);
  return {
    [FIELD_NAMES.title]: edition.title,
    [FIELD_NAMES.subtitle]: edition.subtitle,
    [FIELD_NAMES.statement]: edition.statement,
    [FIELD_NAMES.contributors]: peopleOf(edition.contributors),
    [FIELD_NAMES.language]: languageName(edition.language),
    [FIELD_NAMES.imprint]: edition.imprint,
    [FIELD_NAMES.series]: [edition.series, edition.seriesNumber].filter(Boolean).join(', '),
    [FIELD_NAMES.description]: edition.description,
    [FIELD_NAMES.keywords]: edition.keywords.join('; '),
    [FIELD_NAMES.subjects]: edition.subjects.map(({ code, heading }) => heading || code).join('; '),
    [FIELD_NAMES.audience]: audienceText(edition),
    Formats: formats.sort().join('; '),
  };
}

/** What differs between two editions, field by field; the number and the ISBNs always do and are left out. */
function differences(old: Edition, now: Edition): Difference[] {
  const before = textsOf(old);
  return Object.entries(textsOf(now))
    .map(([name, text]) => ({ name, old: before[name] ?? '', now: text }))
    .filter((difference) => difference.old !== difference.now);
}

/** What differs from the edition that this one replaces, behind a line that opens it. */
export function Compare({ edition }: { edition: Edition }) {
  const { work } = useWork();
  const old = editionOf(work, edition.replacesId);
  if (!old) return null;
  const columns: Column<Difference>[] = [
    { key: 'name', header: 'What', cell: (row) => row.name, nowrap: true },
    { key: 'old', header: shortName(old), cell: (row) => row.old || '—' },
    { key: 'now', header: shortName(edition), cell: (row) => row.now || '—' },
  ];
  return (
    <details className="compare">
      <summary>What differs from the {shortName(old)}</summary>
      <Table
        caption={`${fullName(edition)} compared with the ${shortName(old)}`}
        columns={columns}
        rows={differences(old, edition)}
        rowKey={(row) => row.name}
        empty={<p className="soft">Nothing but the number and the ISBNs.</p>}
      />
    </details>
  );
}
