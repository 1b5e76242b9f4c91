import type { Edition } from '../../../../src/contract/editions.ts';
import { type Column, Table } from '../../../ui/index.ts';
import { NoticeShape, type NoticeTone } from '../../../ui/standing-shapes.tsx';
import { editionOf, fullName, shortName } from '../parts/edition-names.ts';
import { useWork } from '../parts/work-context.tsx';
import './compare.css';
import { type Carried, type CompareRow, compareGroups, compareSummary } from './compare-rows.ts';

const TONES: Record<Carried, NoticeTone> = {
  'to decide': 'stop',
  new: 'care',
  changed: 'care',
  carried: 'done',
  'left behind': 'note',
};

function State({ value }: { value: Carried }) {
  return (
    <span className={`carried carried-${value.replace(' ', '-')}`}>
      <NoticeShape tone={TONES[value]} />
      {value}
    </span>
  );
}

/** The edition beside the one it replaces, field by field: what carried, what changed, what is to be decided. */
export function Compare({ edition }: { edition: Edition }) {
  const { work, settings } = useWork();
  const old = editionOf(work, edition.replacesId);
  if (!old) return null;
  const groups = compareGroups(old, edition, settings.lengthUnit);
  const columns: Column<CompareRow>[] = [
    { key: 'name', header: 'What', cell: (row) => row.name, nowrap: true },
    { key: 'old', header: shortName(old), cell: (row) => row.old || '—' },
    { key: 'now', header: shortName(edition), cell: (row) => row.now || '—' },
    { key: 'state', header: 'What became of it', cell: (row) => <State value={row.state} />, nowrap: true },
  ];
  return (
    <details className="compare">
      <summary>
        Beside the {shortName(old)}: {compareSummary(groups)}
      </summary>
      <div className="stack">
        {groups.map((group) => (
          <div key={group.name}>
            <h4 className="compare-head">{group.name}</h4>
            <Table
              caption={`${fullName(edition)} beside the ${shortName(old)}: ${group.name}`}
              columns={columns}
              rows={group.rows}
              rowKey={(row) => row.name}
              rowTone={(row) =>
                row.state === 'carried' || row.state === 'left behind' ? 'quiet' : undefined
              }
            />
          </div>
        ))}
      </div>
    </details>
  );
}
