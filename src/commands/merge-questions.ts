import type { MergeConflict, MergeSide } from '../contract/changes.ts';

/** What a conflict on a whole record says of fields. */
export const WHOLE_RECORD = { field: null, before: null, here: null, there: null };

/** What a person has to decide while two lists become one, and what has been decided already. */
export class MergeQuestions {
  readonly asked: MergeConflict[] = [];
  readonly #choices: Readonly<Record<string, MergeSide>>;
  readonly #otherwise: MergeSide | undefined;

  /** `otherwise` holds for every conflict that `choices` does not name. */
  constructor(choices: Readonly<Record<string, MergeSide>>, otherwise: MergeSide | undefined) {
    this.#choices = choices;
    this.#otherwise = otherwise;
  }

  /** The side that was chosen; null where nobody has chosen yet. What can only be left out never becomes 'there'. */
  ask(conflict: Omit<MergeConflict, 'chosen'>): MergeSide | null {
    const wish = this.#choices[conflict.id] ?? this.#otherwise;
    const chosen = wish === undefined || conflict.sides.includes(wish) ? (wish ?? null) : 'here';
    this.asked.push({ ...conflict, chosen });
    return chosen;
  }

  get open(): number {
    return this.asked.filter(({ chosen }) => chosen === null).length;
  }
}
