import type { ListingStanding, Made, PROOF_KINDS } from '../../contract/terms.ts';
import type { ReleaseKind, RetirementKind } from './kinds.ts';

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
  kind: ReleaseKind | RetirementKind;
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
