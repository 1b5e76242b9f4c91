import type { EditionFields } from '../../contract/editions.ts';
import { formName } from '../../contract/terms.ts';
import { editionLabel } from '../../rules/labels.ts';
import type { EditionPlan, FormKey, KnownEdition, KnownFormat, KnownWork, WorkPlan } from './plan.ts';
import type { ReadRow } from './read-row.ts';
import { EditionPlace, titleKey, WorkPlace, WorkShelf } from './shelves.ts';

/** A row that cannot be placed, and why. */
export interface Misplaced {
  row: ReadRow;
  message: string;
}

const formOf = ({ format }: ReadRow): FormKey => ({
  form: format.form ?? '',
  formDetail: format.formDetail ?? null,
  caseKind: format.caseKind ?? null,
  largePrint: format.largePrint ?? false,
});

const leader = (row: ReadRow) => row.edition.contributors?.[0]?.name ?? '';

/** Says why a row is not taken over. */
class NotPlaced extends Error {}

interface KnownPlace {
  work: WorkPlace;
  edition: KnownEdition;
  format: KnownFormat;
}

/**
 * Groups rows into works and editions, matching them with what the catalogue has: by number first, then by title and
 * first contributor, edition number or statement, and form. Rows that contradict each other, or fit several places,
 * are refused with the reason; the first row of a contradiction holds.
 */
export class Grouping {
  readonly works: WorkPlan[] = [];
  readonly misplaced: Misplaced[] = [];
  readonly #byIsbn = new Map<string, KnownPlace>();
  readonly #byTitle = new Map<string, WorkShelf>();
  readonly #taken = new Map<number, number>();
  readonly #numbers = new Map<string, number>();

  constructor(known: readonly KnownWork[]) {
    for (const one of known) {
      const work = new WorkPlace(one, one.title);
      this.#shelf(titleKey(one.title)).put(work);
      for (const edition of one.editions)
        for (const format of edition.formats)
          if (format.isbn13 !== null) this.#byIsbn.set(format.isbn13, { work, edition, format });
    }
  }

  #shelf(key: string): WorkShelf {
    const shelf = this.#byTitle.get(key) ?? new WorkShelf();
    this.#byTitle.set(key, shelf);
    return shelf;
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
    this.#join(work, edition, row, this.#formatOf(edition, row));
  }

  #placeKnown(row: ReadRow, { work, edition, format }: KnownPlace): void {
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
    this.#join(work, work.editions.of(edition) ?? new EditionPlace(edition), row, format.id);
  }

  /** The plan of a work, made when its first row is placed. */
  #planOf(work: WorkPlace): WorkPlan {
    if (work.plan === null) {
      work.plan = { known: work.known, title: work.title, editions: [] };
      this.works.push(work.plan);
    }
    return work.plan;
  }

  /** The plan of an edition, made when its first row is placed. */
  #planOfEdition(work: WorkPlace, edition: EditionPlace): EditionPlan {
    const plan = this.#planOf(work);
    if (edition.plan === null) {
      edition.plan = { known: edition.known, fields: {}, saidBy: new Map(), rows: [] };
      plan.editions.push(edition.plan);
    }
    return edition.plan;
  }

  /** The work a row belongs to, by its title and, where that is not enough, its first contributor. */
  #workOf(row: ReadRow, title: string): WorkPlace {
    const named = row.work === '' ? title : row.work;
    const shelf = this.#shelf(titleKey(named));
    const who = leader(row);
    const fits = shelf.by(who);
    const { first, count } = fits.count > 0 ? fits : row.work === '' ? shelf.open() : shelf.all();
    if (count > 1)
      throw new NotPlaced(`${count} works are called ${named}; say which by its ISBN or contributors.`);
    const work = first ?? new WorkPlace(null, named);
    if (first === undefined) shelf.put(work);
    if (work.known === null && who !== '') shelf.credit(work, who);
    return work;
  }

  #editionOf(work: WorkPlace, row: ReadRow): EditionPlace {
    const { number, statement } = row.edition;
    const { first, count } = work.editions.fitting(number, statement);
    if (count > 1)
      throw new NotPlaced(
        `${work.title} has ${count} editions that fit; say which in a column for the edition number.`,
      );
    return first ?? new EditionPlace(null);
  }

  /** The format of the edition that the row is about, by its form; null for a new one. */
  #formatOf(edition: EditionPlace, row: ReadRow): number | null {
    const numbered = row.isbn13 !== null;
    if (row.format.form === undefined) {
      const { first, count } = edition.formats.any(numbered);
      if (first !== undefined && count === 1) return first.id;
      throw new NotPlaced('There is no form in this row; write paperback, hardcover, e-book or audiobook.');
    }
    return edition.formats.ofForm(formOf(row), numbered)?.id ?? null;
  }

  #join(work: WorkPlace, place: EditionPlace, row: ReadRow, formatId: number | null): void {
    const before = formatId === null ? undefined : this.#taken.get(formatId);
    if (before !== undefined)
      throw new NotPlaced(
        `Row ${before} is about the same ${formName({ form: row.format.form ?? '' })} already.`,
      );
    const edition = this.#planOfEdition(work, place);
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
    work.editions.put(place);
    edition.rows.push({ row, formatId });
    if (formatId === null) return;
    this.#taken.set(formatId, row.number);
    place.formats.take(formatId);
  }
}

const WORDS: Record<string, string> = {
  number: 'edition number',
  seriesNumber: 'volume',
  ageFrom: 'lower age',
  ageTo: 'upper age',
};
