import type { EditionFields } from '../../contract/editions.ts';
import { formName } from '../../contract/terms.ts';
import { editionLabel } from '../../rules/labels.ts';
import type { ReadRow } from './read-row.ts';

/** What tells the formats of one edition apart beside their numbers. */
export interface FormKey {
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: boolean;
}

/** A format of the catalogue, as far as rows are matched with it. */
export interface KnownFormat extends FormKey {
  id: number;
  isbn13: string | null;
}

export interface KnownEdition {
  id: number;
  number: number | null;
  statement: string;
  title: string;
  formats: KnownFormat[];
}

export interface KnownWork {
  id: number;
  title: string;
  /** Names of the first contributors of its editions. */
  people: string[];
  editions: KnownEdition[];
}

/** A row and the format it is about: one of the catalogue, or a new one. */
export interface PlannedRow {
  row: ReadRow;
  formatId: number | null;
}

/** Rows of one edition, and what they say of it together. */
export interface EditionPlan {
  known: KnownEdition | null;
  fields: Partial<EditionFields>;
  /** Row that each field was first said in. */
  saidBy: Map<string, number>;
  rows: PlannedRow[];
}

export interface WorkPlan {
  known: KnownWork | null;
  title: string;
  /** Names of first contributors of new editions. */
  people: string[];
  editions: EditionPlan[];
}

/** A row that cannot be placed, and why. */
export interface Misplaced {
  row: ReadRow;
  message: string;
}

/** Texts are compared without case, blanks and typographic marks. */
export function titleKey(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[\p{P}\p{S}\s]+/gu, ' ')
    .trim();
}

const formKey = (key: FormKey) =>
  `${key.form} ${key.formDetail ?? ''} ${key.caseKind ?? ''} ${key.largePrint}`;

const keyOfRow = ({ format }: ReadRow): string =>
  formKey({
    form: format.form ?? '',
    formDetail: format.formDetail ?? null,
    caseKind: format.caseKind ?? null,
    largePrint: format.largePrint ?? false,
  });

const leader = (row: ReadRow) => row.edition.contributors?.[0]?.name ?? '';

/** Says why a row is not taken over. */
class NotPlaced extends Error {}

/**
 * Groups rows into works and editions, matching them with what the catalogue has: by number first, then by title and
 * first contributor, edition number or statement, and form. Rows that contradict each other, or fit several places,
 * are refused with the reason; the first row of a contradiction holds.
 */
export class Grouping {
  readonly works: WorkPlan[] = [];
  readonly misplaced: Misplaced[] = [];
  readonly #byIsbn = new Map<string, { work: KnownWork; edition: KnownEdition; format: KnownFormat }>();
  readonly #byTitle = new Map<string, KnownWork[]>();
  readonly #plans = new Map<KnownWork, WorkPlan>();
  readonly #newPlans = new Map<string, WorkPlan[]>();
  readonly #editionPlans = new Map<KnownEdition, EditionPlan>();
  readonly #taken = new Map<number, number>();
  readonly #numbers = new Map<string, number>();

  constructor(known: readonly KnownWork[]) {
    for (const work of known) {
      const key = titleKey(work.title);
      const same = this.#byTitle.get(key);
      if (same) same.push(work);
      else this.#byTitle.set(key, [work]);
      for (const edition of work.editions)
        for (const format of edition.formats)
          if (format.isbn13 !== null) this.#byIsbn.set(format.isbn13, { work, edition, format });
    }
  }

  /** Places one row; a row that was read with problems is not to be given. */
  add(row: ReadRow): void {
    try {
      this.#place(row);
      if (row.isbn13 !== null) this.#numbers.set(row.isbn13, row.number);
    } catch (error) {
      if (!(error instanceof NotPlaced)) throw error;
      this.misplaced.push({ row, message: error.message });
    }
  }

  #place(row: ReadRow): void {
    const twin = row.isbn13 === null ? undefined : this.#numbers.get(row.isbn13);
    if (twin !== undefined)
      throw new NotPlaced(`This ISBN stands in row ${twin} already; one number belongs to one format.`);
    const found = row.isbn13 === null ? undefined : this.#byIsbn.get(row.isbn13);
    if (found) {
      this.#placeKnown(row, found);
      return;
    }
    const title = row.edition.title ?? row.work;
    if (title === '') throw new NotPlaced('There is no title in this row; fill it in.');
    const work = this.#workOf(row, title);
    const edition = this.#editionOf(work, row);
    this.#join(edition, row, this.#formatOf(edition, row));
  }

  #placeKnown(
    row: ReadRow,
    { work, edition, format }: { work: KnownWork; edition: KnownEdition; format: KnownFormat },
  ): void {
    const { number } = row.edition;
    if (number !== undefined && number !== null && number !== (edition.number ?? 1))
      throw new NotPlaced(
        `This ISBN belongs to ${editionLabel(edition)} here, not to edition ${number}; a number stays with its edition.`,
      );
    if (
      row.work !== '' &&
      titleKey(row.work) !== titleKey(work.title) &&
      titleKey(row.work) !== titleKey(edition.title)
    )
      throw new NotPlaced(`This ISBN belongs to the work ${work.title} here; a number stays with its work.`);
    this.#join(this.#planOfEdition(this.#planOf(work), edition), row, format.id);
  }

  #planOf(work: KnownWork): WorkPlan {
    const plan = this.#plans.get(work);
    if (plan) return plan;
    const made: WorkPlan = { known: work, title: work.title, people: work.people, editions: [] };
    this.#plans.set(work, made);
    this.works.push(made);
    return made;
  }

  #planOfEdition(work: WorkPlan, edition: KnownEdition): EditionPlan {
    const plan = this.#editionPlans.get(edition);
    if (plan) return plan;
    const made: EditionPlan = { known: edition, fields: {}, saidBy: new Map(), rows: [] };
    this.#editionPlans.set(edition, made);
    work.editions.push(made);
    return made;
  }

  /** The work a row belongs to, by its title and, where that is not enough, its first contributor. */
  #workOf(row: ReadRow, title: string): WorkPlan {
    const named = row.work === '' ? title : row.work;
    const key = titleKey(named);
    const known = (this.#byTitle.get(key) ?? []).map((work) => this.#plans.get(work) ?? work);
    const all = [...known, ...(this.#newPlans.get(key) ?? [])];
    const who = titleKey(leader(row));
    const fits = who === '' ? all : all.filter((work) => work.people.some((name) => titleKey(name) === who));
    const open = all.filter((work) => work.people.length === 0);
    const candidates = fits.length > 0 ? fits : row.work === '' ? open : all;
    if (candidates.length > 1)
      throw new NotPlaced(
        `${candidates.length} works are called ${named}; say which by its ISBN or contributors.`,
      );
    const [work] = candidates;
    if (work !== undefined) return 'id' in work ? this.#planOf(work) : this.#withLeader(work, row);
    const made: WorkPlan = { known: null, title: named, people: [], editions: [] };
    this.works.push(made);
    this.#newPlans.set(key, [...(this.#newPlans.get(key) ?? []), made]);
    return this.#withLeader(made, row);
  }

  #withLeader(work: WorkPlan, row: ReadRow): WorkPlan {
    if (work.known === null && leader(row) !== '' && !work.people.includes(leader(row)))
      work.people = [...work.people, leader(row)];
    return work;
  }

  #editionOf(work: WorkPlan, row: ReadRow): EditionPlan {
    const planned = new Set(work.editions.map((plan) => plan.known));
    const rest = (work.known?.editions ?? []).filter((edition) => !planned.has(edition));
    const all = [
      ...work.editions.map((plan) => ({
        plan,
        ...{ number: plan.known?.number, statement: plan.known?.statement, ...plan.fields },
      })),
      ...rest.map((edition) => ({ edition, number: edition.number, statement: edition.statement })),
    ];
    const { number, statement } = row.edition;
    const fits = all.filter((one) => {
      if (number !== undefined && number !== null) return (one.number ?? 1) === number;
      return statement === undefined || titleKey(one.statement ?? '') === titleKey(statement);
    });
    if (fits.length > 1)
      throw new NotPlaced(
        `${work.title} has ${fits.length} editions that fit; say which in a column for the edition number.`,
      );
    const [fit] = fits;
    if (fit !== undefined) return 'plan' in fit ? fit.plan : this.#planOfEdition(work, fit.edition);
    const made: EditionPlan = { known: null, fields: {}, saidBy: new Map(), rows: [] };
    work.editions.push(made);
    return made;
  }

  /** The format of the edition that the row is about, by its form; null for a new one. */
  #formatOf(edition: EditionPlan, row: ReadRow): number | null {
    const free = (edition.known?.formats ?? []).filter((format) => !this.#taken.has(format.id));
    if (row.format.form === undefined) {
      const [only, more] = free.filter((format) => row.isbn13 === null || format.isbn13 === null);
      if (only !== undefined && more === undefined) return only.id;
      throw new NotPlaced('There is no form in this row; write paperback, hardcover, e-book or audiobook.');
    }
    const fits = free.filter((format) => formKey(format) === keyOfRow(row));
    const unnumbered = fits.find((format) => format.isbn13 === null);
    if (unnumbered !== undefined) return unnumbered.id;
    return row.isbn13 === null ? (fits[0]?.id ?? null) : null;
  }

  #join(edition: EditionPlan, row: ReadRow, formatId: number | null): void {
    const before = formatId === null ? undefined : this.#taken.get(formatId);
    if (before !== undefined)
      throw new NotPlaced(
        `Row ${before} is about the same ${formName({ form: row.format.form ?? '' })} already.`,
      );
    for (const [key, value] of Object.entries(row.edition)) {
      const said = edition.fields[key as keyof EditionFields];
      if (said !== undefined && JSON.stringify(said) !== JSON.stringify(value))
        throw new NotPlaced(
          `Row ${edition.saidBy.get(key)} says otherwise of the ${WORDS[key] ?? key} of this edition; make both rows say the same.`,
        );
    }
    for (const [key, value] of Object.entries(row.edition)) {
      if (edition.saidBy.has(key)) continue;
      Object.assign(edition.fields, { [key]: value });
      edition.saidBy.set(key, row.number);
    }
    edition.rows.push({ row, formatId });
    if (formatId !== null) this.#taken.set(formatId, row.number);
  }
}

const WORDS: Record<string, string> = {
  number: 'edition number',
  seriesNumber: 'volume',
  ageFrom: 'lower age',
  ageTo: 'upper age',
};
