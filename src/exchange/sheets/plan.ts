import type { EditionFields } from '../../contract/editions.ts';
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
  editions: EditionPlan[];
}
