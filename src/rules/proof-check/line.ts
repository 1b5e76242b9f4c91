import type { CheckLine, CheckState } from '../../contract/proof-checks/facts.ts';

interface Said {
  expected?: string;
  found?: string;
  advice?: string;
  page?: number | null;
}

const LONGEST = 1_000;

const cut = (text: string | undefined) =>
  text === undefined ? '' : text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text;

/** One line of a result about a text: no place drawn on a page. */
export function textLineOf(check: string, label: string, state: CheckState, said: Said = {}): CheckLine {
  return {
    check,
    label,
    state,
    expected: cut(said.expected),
    found: cut(said.found),
    advice: cut(said.advice),
    page: said.page ?? null,
    box: null,
  };
}
