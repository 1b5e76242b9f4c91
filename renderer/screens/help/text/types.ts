import type { Cited } from '../sources.ts';

/** Rules that the program itself tells: shown as they are applied, never retyped. */
export type RuleTable = 'advice' | 'locks' | 'audit' | 'sources';

/** A paragraph, a list, words with their meaning, steps in order, or a table of rules. */
export type Block =
  | string
  | { list: readonly string[] }
  | { steps: readonly string[] }
  | { terms: readonly (readonly [term: string, meaning: string])[] }
  | { table: RuleTable };

export interface HelpSection {
  /** Last part of its route. */
  id: string;
  heading: string;
  blocks: readonly Block[];
  /** On whose word; never empty. */
  sources: readonly Cited[];
}

/** A screen where the matter is dealt with. */
export interface Door {
  to: string;
  label: string;
}

export interface HelpText {
  sections: readonly HelpSection[];
  doors: readonly Door[];
}
