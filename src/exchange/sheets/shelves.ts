import type { EditionPlan, FormKey, KnownEdition, KnownFormat, KnownWork, WorkPlan } from './plan.ts';

// Works, editions and formats that a row may belong to, laid out so that a row finds its own without looking at all of
// them: a list of a hundred thousand rows may be of one title.

/** Texts are compared without case, blanks and typographic marks. */
export function titleKey(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[\p{P}\p{S}\s]+/gu, ' ')
    .trim();
}

export const formKey = (key: FormKey) =>
  `${key.form} ${key.formDetail ?? ''} ${key.caseKind ?? ''} ${key.largePrint}`;

/** The first of those that fit, and how many there are. */
export interface Fits<T> {
  first: T | undefined;
  count: number;
}

const fitsOf = <T>(set: ReadonlySet<T> | undefined): Fits<T> => ({
  first: set?.values().next().value,
  count: set?.size ?? 0,
});

/** Sets by key; what stands under none is not there. */
class Piles<K, T> {
  readonly #piles = new Map<K, Set<T>>();

  get(key: K): ReadonlySet<T> | undefined {
    return this.#piles.get(key);
  }

  put(key: K, item: T): void {
    const pile = this.#piles.get(key);
    if (pile) pile.add(item);
    else this.#piles.set(key, new Set([item]));
  }

  take(key: K, item: T): void {
    this.#piles.get(key)?.delete(item);
  }
}

/** A work that rows may belong to: one of the catalogue, one that rows have made, or both. */
export class WorkPlace {
  readonly known: KnownWork | null;
  readonly title: string;
  plan: WorkPlan | null = null;
  #editions: EditionShelf | null = null;

  constructor(known: KnownWork | null, title: string) {
    this.known = known;
    this.title = title;
  }

  /** Laid out when first asked for: most works of a large catalogue are not in the file. */
  get editions(): EditionShelf {
    this.#editions ??= new EditionShelf(this.known?.editions ?? []);
    return this.#editions;
  }
}

/** The works of one title, by the people their editions name first. */
export class WorkShelf {
  readonly #all = new Set<WorkPlace>();
  readonly #byPerson = new Piles<string, WorkPlace>();
  readonly #open = new Set<WorkPlace>();

  put(place: WorkPlace): void {
    this.#all.add(place);
    this.#open.add(place);
    for (const name of place.known?.people ?? []) this.credit(place, name);
  }

  /** Says that an edition of the work names this person first. */
  credit(place: WorkPlace, name: string): void {
    this.#byPerson.put(titleKey(name), place);
    this.#open.delete(place);
  }

  all(): Fits<WorkPlace> {
    return fitsOf(this.#all);
  }

  /** Those of a person; an empty name tells nothing, so all fit it. */
  by(name: string): Fits<WorkPlace> {
    const key = titleKey(name);
    return key === '' ? this.all() : fitsOf(this.#byPerson.get(key));
  }

  /** Those that name nobody yet. */
  open(): Fits<WorkPlace> {
    return fitsOf(this.#open);
  }
}

/** An edition that rows may belong to: one of the catalogue, one that rows have made, or both. */
export class EditionPlace {
  readonly known: KnownEdition | null;
  plan: EditionPlan | null = null;
  #formats: FormatShelf | null = null;

  constructor(known: KnownEdition | null) {
    this.known = known;
  }

  get formats(): FormatShelf {
    this.#formats ??= new FormatShelf(this.known?.formats ?? []);
    return this.#formats;
  }

  get number(): number {
    return this.plan?.fields.number ?? this.known?.number ?? 1;
  }

  get statement(): string {
    return titleKey(this.plan?.fields.statement ?? this.known?.statement ?? '');
  }
}

/** The editions of one work, by number and by statement. */
export class EditionShelf {
  readonly #places = new Map<EditionPlace, { number: number; statement: string }>();
  readonly #known = new Map<KnownEdition, EditionPlace>();
  readonly #byNumber = new Piles<number, EditionPlace>();
  readonly #byStatement = new Piles<string, EditionPlace>();

  constructor(known: readonly KnownEdition[]) {
    for (const edition of known) {
      const place = new EditionPlace(edition);
      this.#known.set(edition, place);
      this.put(place);
    }
  }

  /** Puts an edition where its number and statement belong, also after they have changed. */
  put(place: EditionPlace): void {
    const { number, statement } = place;
    const before = this.#places.get(place);
    if (before?.number === number && before.statement === statement) return;
    if (before) {
      this.#byNumber.take(before.number, place);
      this.#byStatement.take(before.statement, place);
    }
    this.#places.set(place, { number, statement });
    this.#byNumber.put(number, place);
    this.#byStatement.put(statement, place);
  }

  /** The place of an edition that the catalogue has. */
  of(edition: KnownEdition): EditionPlace | undefined {
    return this.#known.get(edition);
  }

  /** Those that a row's number fits; without a number those that its statement fits; without either all. */
  fitting(number: number | null | undefined, statement: string | undefined): Fits<EditionPlace> {
    if (number !== undefined && number !== null) return fitsOf(this.#byNumber.get(number));
    if (statement !== undefined) return fitsOf(this.#byStatement.get(titleKey(statement)));
    return { first: this.#places.keys().next().value, count: this.#places.size };
  }
}

/** The formats of an edition of the catalogue that no row is about yet. */
export class FormatShelf {
  readonly #all = new Map<number, KnownFormat>();
  readonly #unnumbered = new Set<KnownFormat>();
  readonly #byForm = new Piles<string, KnownFormat>();
  readonly #unnumberedByForm = new Piles<string, KnownFormat>();

  constructor(known: readonly KnownFormat[]) {
    for (const format of known) {
      this.#all.set(format.id, format);
      this.#byForm.put(formKey(format), format);
      if (format.isbn13 !== null) continue;
      this.#unnumbered.add(format);
      this.#unnumberedByForm.put(formKey(format), format);
    }
  }

  /** A row is about this format now. */
  take(id: number): void {
    const format = this.#all.get(id);
    if (!format) return;
    const key = formKey(format);
    this.#all.delete(id);
    this.#byForm.take(key, format);
    this.#unnumbered.delete(format);
    this.#unnumberedByForm.take(key, format);
  }

  /** Those that a row without a form may mean: one with a number of its own means none that has another. */
  any(numbered: boolean): Fits<KnownFormat> {
    if (numbered) return fitsOf(this.#unnumbered);
    return { first: this.#all.values().next().value, count: this.#all.size };
  }

  /** The first of a form without a number, or with one where the row has none either. */
  ofForm(key: FormKey, numbered: boolean): KnownFormat | undefined {
    const unnumbered = fitsOf(this.#unnumberedByForm.get(formKey(key))).first;
    return unnumbered ?? (numbered ? undefined : fitsOf(this.#byForm.get(formKey(key))).first);
  }
}
