import type { FormatStanding } from '../../../src/contract/terms.ts';
import { Standing } from '../../ui/index.ts';
import { namedStandings } from './words.ts';

interface StandingFilterProps {
  counts: Record<FormatStanding, number>;
  value: FormatStanding | '';
  onChange: (standing: FormatStanding | '') => void;
}

/** How many formats stand where; pressing one shows only those, pressing it again shows all. */
export function StandingFilter({ counts, value, onChange }: StandingFilterProps) {
  const all = Object.values(counts).reduce((sum, count) => sum + count, 0);
  return (
    <fieldset className="standing-filter">
      <legend className="visually-hidden">Show formats that are</legend>
      <button
        type="button"
        className="filter-button"
        aria-pressed={value === ''}
        onClick={() => onChange('')}
      >
        all formats <span className="filter-count">{all.toLocaleString()}</span>
      </button>
      {namedStandings(counts).map((standing) => (
        <button
          key={standing}
          type="button"
          className="filter-button"
          aria-pressed={value === standing}
          onClick={() => onChange(value === standing ? '' : standing)}
        >
          <Standing of="format" value={standing} />{' '}
          <span className="filter-count">{counts[standing].toLocaleString()}</span>
        </button>
      ))}
    </fieldset>
  );
}
