import { useEffect, useRef, useState } from 'react';
import { useQueryOf } from '../../../api.ts';
import { Button, SearchInput } from '../../../ui/index.ts';
import { conditionsOf } from './conditions.ts';
import { FilterDialog } from './filter-dialog.tsx';
import { SavedFilters } from './saved-filters.tsx';
import type { useFormatTerms } from './use-terms.ts';

const SETTLE_MS = 180;

/** The text that is searched for, handed on a moment after the last key. */
function useTyped(text: string, onSettle: (text: string) => void) {
  const [typed, setTyped] = useState(text);
  const timer = useRef<number>(undefined);
  useEffect(() => () => window.clearTimeout(timer.current), []);
  useEffect(() => {
    if (timer.current === undefined) setTyped(text);
  }, [text]);
  const type = (next: string) => {
    setTyped(next);
    window.clearTimeout(timer.current);
    timer.current = window.setTimeout(() => {
      timer.current = undefined;
      onSettle(next.trim().slice(0, 200));
    }, SETTLE_MS);
  };
  return { typed, type };
}

/** Search, conditions and saved filters above the table. */
export function FilterBar({ asked }: { asked: ReturnType<typeof useFormatTerms> }) {
  const { terms, setTerms, filtered } = asked;
  const [open, setOpen] = useState(false);
  const channels = useQueryOf('channels.list', {}).data?.channels ?? [];
  const { typed, type } = useTyped(terms.text, (text) => setTerms({ ...terms, text }));
  const conditions = conditionsOf(terms, channels);
  return (
    <>
      <div className="filter-line">
        <SearchInput
          label="Search formats"
          placeholder="Title, person or number"
          value={typed}
          onChange={type}
        />
        <Button onClick={() => setOpen(true)}>Filter…</Button>
        <SavedFilters terms={terms} filtered={filtered} onChoose={setTerms} />
      </div>
      {conditions.length > 0 ? (
        <ul className="condition-list" aria-label="Conditions">
          {conditions.map((condition) => (
            <li key={condition.key}>
              <button
                type="button"
                className="filter-button"
                aria-label={`Take away: ${condition.words}`}
                onClick={() => setTerms(condition.without)}
              >
                {condition.words} <span aria-hidden="true">×</span>
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      {open ? (
        <FilterDialog
          terms={terms}
          onClose={() => setOpen(false)}
          onApply={(next) => {
            setTerms(next);
            setOpen(false);
          }}
        />
      ) : null}
    </>
  );
}
