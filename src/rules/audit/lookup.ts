import type { EditionFacts, Facts, FormatFacts, ListingFacts, TaskFacts } from './facts.ts';

/** The records of a catalogue by their ids. */
export interface Index {
  readonly facts: Facts;
  readonly editions: Map<number, EditionFacts>;
  readonly formats: Map<number, FormatFacts>;
  readonly listings: Map<number, ListingFacts>;
  readonly tasks: Map<number, TaskFacts>;
}

/** Each kind is put by its ids when it is first asked for. */
class Lookup implements Index {
  readonly facts: Facts;
  #editions: Index['editions'] | undefined;
  #formats: Index['formats'] | undefined;
  #listings: Index['listings'] | undefined;
  #tasks: Index['tasks'] | undefined;

  constructor(facts: Facts) {
    this.facts = facts;
  }

  get editions() {
    this.#editions ??= byId(this.facts.editions);
    return this.#editions;
  }

  get formats() {
    this.#formats ??= byId(this.facts.formats);
    return this.#formats;
  }

  get listings() {
    this.#listings ??= byId(this.facts.listings);
    return this.#listings;
  }

  get tasks() {
    this.#tasks ??= byId(this.facts.tasks);
    return this.#tasks;
  }
}

/** Made once for the same facts, and only where a rule has found something. */
const indexes = new WeakMap<Facts, Index>();

function byId<T extends { id: number }>(rows: readonly T[]): Map<number, T> {
  return new Map(rows.map((row) => [row.id, row]));
}

export function indexOf(facts: Facts): Index {
  const known = indexes.get(facts);
  if (known) return known;
  const index = new Lookup(facts);
  indexes.set(facts, index);
  return index;
}
