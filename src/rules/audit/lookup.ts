import type { EditionFacts, Facts, FormatFacts, ListingFacts, TaskFacts } from './facts.ts';

/** The records of a catalogue by their ids. */
export interface Index {
  facts: Facts;
  editions: Map<number, EditionFacts>;
  formats: Map<number, FormatFacts>;
  listings: Map<number, ListingFacts>;
  tasks: Map<number, TaskFacts>;
}

/** Made once for the same facts, and only where a rule has found something. */
const indexes = new WeakMap<Facts, Index>();

function byId<T extends { id: number }>(rows: readonly T[]): Map<number, T> {
  return new Map(rows.map((row) => [row.id, row]));
}

export function indexOf(facts: Facts): Index {
  const known = indexes.get(facts);
  if (known) return known;
  const index = {
    facts,
    editions: byId(facts.editions),
    formats: byId(facts.formats),
    listings: byId(facts.listings),
    tasks: byId(facts.tasks),
  };
  indexes.set(facts, index);
  return index;
}
