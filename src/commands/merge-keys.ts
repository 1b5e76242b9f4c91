import { type NetChange, type Row, rowName } from '../rules/three-way.ts';
import type { MergeTable } from '../store/changes.ts';

/** Where rows that a copy added stand here, and references led to them. */
export class MergeKeys {
  readonly #net: ReadonlyMap<string, NetChange>;
  readonly #own = new Map<string, string>();

  constructor(net: ReadonlyMap<string, NetChange>) {
    this.#net = net;
  }

  /** Key here of a row of the copy. */
  at(entity: string, key: string): string {
    return this.#own.get(rowName(entity, key)) ?? key;
  }

  set(entity: string, key: string, own: string): void {
    this.#own.set(rowName(entity, key), own);
  }

  /** A row with its references led to where the copy's rows stand here. */
  led(row: Row, { refersTo }: MergeTable): Row {
    return Object.fromEntries(
      Object.entries(row).map(([field, value]) => {
        const target = refersTo.get(field);
        const own = target === undefined ? undefined : this.#own.get(rowName(target, String(value)));
        return [field, own === undefined ? value : Number(own)];
      }),
    );
  }

  /** The same, and references to rows that only the copy has marked as such: they are never rows of this list. */
  marked(row: Row, { refersTo }: MergeTable): Row {
    return Object.fromEntries(
      Object.entries(row).map(([field, value]) => {
        const target = refersTo.get(field);
        if (target === undefined) return [field, value];
        const name = rowName(target, String(value));
        const own = this.#own.get(name);
        if (own !== undefined) return [field, Number(own)];
        const added = (this.#net.get(name)?.addedBy ?? null) !== null;
        return [field, added ? `added ${String(value)}` : value];
      }),
    );
  }
}
