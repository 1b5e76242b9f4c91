/** One line of the table: what was tried, how often, and what became of it. */
export interface Figure {
  what: string;
  tried: number;
  held: number;
  /** Each failure in a sentence. */
  failed: string[];
  /** What else the run counted. */
  notes: string[];
  seconds: number;
}

/** Counts tries; a try without faults held. */
export class Tally {
  readonly #what: string;
  readonly #started = performance.now();
  #tried = 0;
  #held = 0;
  readonly #failed: string[] = [];
  readonly #counts = new Map<string, number>();

  constructor(what: string) {
    this.#what = what;
  }

  get tried(): number {
    return this.#tried;
  }

  add(faults: readonly string[], times = 1): void {
    this.#tried += times;
    if (faults.length === 0) this.#held += times;
    else {
      this.#held += times - 1;
      this.#failed.push(faults.join('; '));
    }
  }

  count(what: string, times = 1): void {
    this.#counts.set(what, (this.#counts.get(what) ?? 0) + times);
  }

  figure(...notes: string[]): Figure {
    const counted = [...this.#counts].sort().map(([what, n]) => `${what}: ${n.toLocaleString('en')}`);
    return {
      what: this.#what,
      tried: this.#tried,
      held: this.#held,
      failed: this.#failed,
      notes: [...counted, ...notes],
      seconds: (performance.now() - this.#started) / 1000,
    };
  }
}
