import { useEffect, useRef, useState } from 'react';
import { FORMAT_STANDINGS, type FormatStanding } from '../../../src/contract/terms.ts';
import { useQueryParam } from '../../location.ts';

const SETTLE_MS = 180;
export const PAGE_SIZE = 50;

/** What is asked of the list: kept in the address, so that coming back from a work finds it again. */
export interface ListTerms {
  /** What stands in the search box. */
  typed: string;
  type: (text: string) => void;
  /** What is searched for, a moment after the last key. */
  search: string;
  standing: FormatStanding | '';
  filter: (standing: FormatStanding | '') => void;
  from: number;
  moveTo: (from: number) => void;
  clear: () => void;
}

function asStanding(text: string): FormatStanding | '' {
  return FORMAT_STANDINGS.find((standing) => standing === text) ?? '';
}

/** Search, standing and page of the works list. */
export function useListTerms(): ListTerms {
  const [search, setSearch] = useQueryParam('search');
  const [standing, setStanding] = useQueryParam('standing');
  const [from, setFrom] = useQueryParam('from', '0');
  const [typed, setTyped] = useState(search);
  const timer = useRef<number>(undefined);
  useEffect(() => () => window.clearTimeout(timer.current), []);
  useEffect(() => {
    // A move to another address of this screen brings its own search; what is being typed goes before it.
    if (timer.current === undefined) setTyped((now) => (now.trim() === search ? now : search));
  }, [search]);
  const searchFor = (text: string) => {
    window.clearTimeout(timer.current);
    timer.current = undefined;
    setSearch(text.trim());
    setFrom('0');
  };
  const start = Number(from);
  return {
    typed,
    search: search.slice(0, 200),
    standing: asStanding(standing),
    from: Number.isSafeInteger(start) && start > 0 ? start : 0,
    type: (text) => {
      setTyped(text);
      window.clearTimeout(timer.current);
      timer.current = window.setTimeout(() => searchFor(text), SETTLE_MS);
    },
    filter: (next) => {
      setStanding(next);
      setFrom('0');
    },
    moveTo: (next) => setFrom(String(next)),
    clear: () => {
      setTyped('');
      searchFor('');
      setStanding('');
    },
  };
}
