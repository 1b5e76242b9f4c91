import type { OWN_KIND, PlanStep, ReleaseKind, RetirementKind } from '../../contract/plan-templates.ts';
import type { ListingStanding, Made, PROOF_KINDS } from '../../contract/terms.ts';

export type ProofKind = (typeof PROOF_KINDS)[number];

/** A listing as a plan sees it: where it stands, what it is called, and the rules of its channel. */
export interface PlanListing {
  id: number;
  standing: ListingStanding;
  /** The day of its last step. */
  lastStepOn: string | null;
  returnable: boolean;
  formatId: number;
  formatName: string;
  made: Made;
  channelId: number;
  channelName: string;
  /** Working days from submitting to on sale. */
  leadDays: number;
  /** Calendar days the channel promises for a removal. */
  removalDays: number;
  proof: ProofKind;
}

/** A task that a plan will make; `key` is its name inside the plan. */
export interface PlanTask {
  key: string;
  kind: ReleaseKind | RetirementKind | typeof OWN_KIND;
  /** The step it is made from. */
  step: string;
  title: string;
  note: string;
  dueOn: string;
  formatId: number | null;
  listingId: number | null;
  /** Keys of tasks of the same plan that come first; they stand before this one in the list. */
  needs: string[];
  /** Ids of tasks of another plan that come first. */
  needsTasks: number[];
}

/** Something to be dated: a step with its place in the order, about a listing or not. */
export interface Dated<Key> {
  key: Key;
  step: PlanStep;
  /** The listing it is about, where it is about one. */
  listing: Pick<PlanListing, 'id' | 'standing' | 'lastStepOn' | 'leadDays' | 'removalDays' | 'proof'> | null;
  /** What comes first, of the same list. */
  needs: readonly Key[];
  /** The latest day of what it awaits from another plan. */
  awaitedDue: string | null;
  /** It cannot be done before this day, such as a task that is late. */
  notBefore?: string | undefined;
}
