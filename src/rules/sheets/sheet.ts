import type { SentDifference, SentSheet, SheetItem, SheetItemName } from '../../contract/submissions.ts';
import { EDITION_IDENTITY, FORMAT_IDENTITY } from '../../contract/terms.ts';
import { problemsOf } from './checks.ts';
import type { SheetFacts, ValueFacts } from './facts.ts';
import {
  allValues,
  askedItems,
  listingValues,
  RECORD_PARTS,
  type RecordFacts,
  type SheetValue,
} from './items.ts';

/** The recorded fields behind a value of the sheet, where they are not of the same name. */
const FIELDS: Partial<Record<SheetItemName, readonly string[]>> = {
  form: ['form', 'formDetail', 'caseKind'],
  trimSize: ['trimWidthUm'],
  interior: ['interiorColour', 'paper'],
  cover: ['finish'],
};

/** Fields that are locked now, and fields that sending this sheet would lock. */
function locksOf({ edition, format, listing, channel }: SheetFacts) {
  const locked = new Set([...(edition.lock?.fields ?? []), ...(format.lock?.fields ?? [])]);
  const ahead = new Set<string>([
    ...EDITION_IDENTITY,
    'isbn',
    ...FORMAT_IDENTITY,
    ...(listing.firstSentOn === null ? channel.locksMore : []),
  ]);
  return { locked, ahead };
}

function lockOf(of: SheetItemName, { locked, ahead }: ReturnType<typeof locksOf>): SheetItem['lock'] {
  const fields = FIELDS[of] ?? [of];
  if (fields.every((field) => locked.has(field))) return 'locked';
  return fields.some((field) => ahead.has(field) && !locked.has(field)) ? 'locks' : 'open';
}

/** The sheet of a listing: what its channel asks for, in its order, each value with its lock and its problems. */
export function sheetItems(facts: SheetFacts): SheetItem[] {
  const values = Map.groupBy(allValues(facts), (value) => value.of);
  const locks = locksOf(facts);
  return askedItems(facts.channel.sheetItems).flatMap((of) =>
    (values.get(of) ?? []).map((value, index) => ({
      ...value,
      lock: lockOf(of, locks),
      problems: problemsOf(value, index, facts),
    })),
  );
}

/** What is kept of a sheet when it is sent. */
export function sentSheetOf(facts: SheetFacts): SentSheet {
  const items = sheetItems(facts).map(({ of, label, value, is }) => ({ of, label, value, is }));
  return { asked: [...askedItems(facts.channel.sheetItems)], items };
}

/** The sheet as plain text, a line a value, what is not recorded left out. */
export function sheetText(head: readonly string[], items: readonly SheetItem[]): string {
  const lines = items
    .filter((item) => item.value !== '')
    .map(({ label, value }) => (value.includes('\n') ? `${label}:\n${value}\n` : `${label}: ${value}`));
  return [...head, '', ...lines, ''].join('\n');
}

interface Group {
  label: string;
  is: string;
  text: string;
}

/** 'Contributors' for several values of one name, else the value's own label. */
const LISTS: Partial<Record<SheetItemName, string>> = {
  isbn: 'ISBN',
  contributors: 'Contributors',
  subjects: 'Subjects',
  prices: 'Prices',
};

function grouped(
  values: readonly Pick<SheetValue, 'of' | 'label' | 'value' | 'is'>[],
): Map<SheetItemName, Group> {
  const groups = new Map<SheetItemName, Group>();
  for (const [of, own] of Map.groupBy(values, (value) => value.of)) {
    const shown = own.map(({ label, value }) => (of === 'prices' ? `${label.slice(-3)} ${value}` : value));
    groups.set(of, {
      label: LISTS[of] ?? own[0]?.label ?? of,
      is: JSON.stringify(own.map((value) => value.is)),
      text: shown.filter((text) => text.trim() !== '').join('; '),
    });
  }
  return groups;
}

/**
 * What is recorded otherwise now than a sheet says that was sent, in the usual order. What the channel was not
 * asked for then is not compared, nor what the sheet of that day did not know.
 */
export function differencesFrom(sent: SentSheet, facts: ValueFacts): SentDifference[] {
  const before = grouped(sent.items);
  const now = grouped(allValues(facts).filter((value) => before.has(value.of)));
  const differences: SentDifference[] = [];
  for (const [of, { label, is, text }] of now) {
    const old = before.get(of);
    if (!old || old.is === is) continue;
    differences.push({ of, label, sent: old.text, now: text });
  }
  return differences;
}

function addByName(is: Map<string, string[]>, values: readonly SheetValue[]): void {
  for (const value of values) {
    const known = is.get(value.of);
    if (known) known.push(value.is);
    else is.set(value.of, [value.is]);
  }
}

/** What is recorded of a format for every channel, as comparisons look at it; worked out once, as far as it is asked for. */
export class Recorded {
  readonly #facts: RecordFacts;
  readonly #is = new Map<string, string[]>();
  #parts = 0;

  constructor(facts: RecordFacts) {
    this.#facts = facts;
  }

  /** The recorded values of a name. */
  of(name: string): readonly string[] | undefined {
    let is = this.#is.get(name);
    for (; !is && this.#parts < RECORD_PARTS.length; is = this.#is.get(name)) {
      addByName(this.#is, RECORD_PARTS[this.#parts]?.(this.#facts) ?? []);
      this.#parts += 1;
    }
    return is;
  }
}

/**
 * Whether a sheet that was sent surely says what is recorded now, as for most listings. Where it answers no,
 * `differencesFrom` looks closer; a sheet of another shape than is written now is looked at closer too.
 */
export function surelySame(
  sent: unknown,
  recorded: Recorded,
  facts: Pick<ValueFacts, 'format' | 'listing'>,
): boolean {
  const { items } = (sent ?? {}) as { items?: unknown };
  if (!Array.isArray(items)) return false;
  const own = new Map<string, string[]>();
  addByName(own, listingValues(facts));
  for (let at = 0; at < items.length; ) {
    const { of } = items[at] as { of?: string };
    const now = own.get(of ?? '') ?? recorded.of(of ?? '');
    if (!now) return false;
    for (const is of now) {
      const item = items[at] as { of?: string; is?: unknown } | undefined;
      if (item?.of !== of || item?.is !== is) return false;
      at += 1;
    }
    if (items[at]?.of === of) return false;
  }
  return true;
}

/** Standings in which a channel goes on showing what it was sent. */
export const COMPARED: readonly string[] = ['sent', 'proof', 'cleared', 'selling'];

/** Whether differences from what was sent matter where a listing stands. */
export function isCompared(standing: string): boolean {
  return COMPARED.includes(standing);
}
