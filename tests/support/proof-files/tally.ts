import type { CheckLine, CheckState } from '../../../src/contract/proof-checks/facts.ts';

/** What a planted fault has to change, by the check that sees it; everything else has to stay agreed. */
export type Planted = Readonly<Record<string, CheckState>>;

const RAISED: readonly CheckState[] = ['differs', 'not found'];

/** Lines that raise a question, or that a planted fault is expected to change; of several by one check, such a one. */
function raised(lines: readonly CheckLine[], expected: Planted): Planted {
  return Object.fromEntries(
    lines
      .filter(({ check, state }) => RAISED.includes(state) || check in expected)
      .sort((a, b) => Number(RAISED.includes(a.state)) - Number(RAISED.includes(b.state)))
      .map(({ check, state }) => [check, state]),
  );
}

/** Counts what a set of planted faults and clean files came to, and prints it. */
export class Tally {
  readonly #kind: string;
  planted = 0;
  found = 0;
  clean = 0;
  readonly falseAlarms: string[] = [];
  readonly missed: string[] = [];

  constructor(kind: string) {
    this.#kind = kind;
  }

  /** Takes one file's lines; an empty `expected` is a clean file. */
  take(name: string, lines: readonly CheckLine[], expected: Planted): void {
    const seen = raised(lines, expected);
    const wanted = Object.entries(expected);
    if (wanted.length === 0) this.clean += 1;
    else {
      this.planted += 1;
      if (wanted.every(([check, state]) => seen[check] === state)) this.found += 1;
      else this.missed.push(`${name}: ${JSON.stringify(seen)}`);
    }
    for (const [check, state] of Object.entries(seen))
      if (expected[check] === undefined) this.falseAlarms.push(`${name}: ${check} ${state}`);
  }

  print(): void {
    console.log(
      `${this.#kind}: ${this.planted} planted faults, ${this.found} found, ${this.missed.length} missed; ${this.clean} clean files; ${this.falseAlarms.length} false alarms.`,
    );
  }
}
