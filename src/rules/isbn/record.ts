import { checkOfNine } from './check-digit.ts';
import type { GroupRanges } from './range-table.ts';
import type { Isbn } from './types.ts';

/**
 * An ISBN as read. What nearly every reader wants is put together at once; the other forms and names are worked out
 * when asked for, because whoever reads a long list asks for few of them. They are getters of the prototype: to hand a
 * record to another thread, or to spread it, take the fields that are wanted one by one.
 */
export class IsbnRecord implements Isbn {
  declare readonly registrant: string;
  declare readonly publication: string;
  declare readonly check: string;
  declare readonly hyphenated: string;
  readonly #ranges: GroupRanges;

  constructor(
    ranges: GroupRanges,
    registrant: string,
    publication: string,
    check: string,
    hyphenated: string,
  ) {
    this.#ranges = ranges;
    this.registrant = registrant;
    this.publication = publication;
    this.check = check;
    this.hyphenated = hyphenated;
  }

  get prefix(): '978' | '979' {
    return this.#ranges.prefix;
  }

  get group(): string {
    return this.#ranges.group;
  }

  get agency(): string {
    return this.#ranges.agency;
  }

  get isbn13(): string {
    return this.#ranges.digits + this.registrant + this.publication + this.check;
  }

  get isbn10(): string | null {
    if (this.#ranges.prefix === '979') return null;
    const first9 = this.#ranges.group + this.registrant + this.publication;
    return first9 + checkOfNine(first9);
  }
}
