import {
  dayPlus,
  type WorkCalendar,
  workingDayFrom,
  workingDaysAfter,
  workingDaysBefore,
  workingDayUntil,
} from '../working-days.ts';
import type { ReleaseKind } from './kinds.ts';
import type { ProofKind } from './types.ts';

/** Working days within which a proof is checked once it is there; common practice, no source. */
const CHECK_WITHIN = 2;
/** Working days that a printed proof is on its way in addition; common practice, no source. */
const PROOF_BY_POST = 10;

/** Working days before submitting at which the preparations are due; our own allowance. */
const PREPARATION = {
  'finish-content': 10,
  'register-numbers': 5,
  'settle-data': 5,
  'make-interior': 3,
  'make-e-book': 2,
  'make-audio': 2,
  'make-cover': 1,
} as const satisfies Partial<Record<ReleaseKind, number>>;

/** Working days within which a proof is checked, its way by post included. */
export function proofDays(proof: ProofKind): number {
  if (proof === 'none') return 0;
  return proof === 'physical' ? CHECK_WITHIN + PROOF_BY_POST : CHECK_WITHIN;
}

/** Working days a listing needs between submitting and the release day. */
export function spanOf(listing: { leadDays: number; proof: ProofKind }): number {
  const lead = listing.proof === 'physical' ? listing.leadDays + PROOF_BY_POST : listing.leadDays;
  return Math.max(lead, proofDays(listing.proof));
}

/** The day on which a task of a kind is due, for a channel with this kind of proof. */
export type ReleaseDue = (kind: ReleaseKind, proof: ProofKind) => string;

/**
 * Dates of a release: all listings are submitted on one day, worked back from the release day by the longest
 * span among them, the rest follows from that day. Nothing is due before today, and up to the release day
 * nothing on a day that is not worked, unless no working day is left: then it is due on the release day itself.
 */
export function releaseDays(
  calendar: WorkCalendar,
  today: string,
  day: string,
  listings: readonly { leadDays: number; proof: ProofKind }[],
): ReleaseDue {
  const first = workingDayFrom(calendar, today);
  const last = workingDayUntil(calendar, day);
  const within = (wanted: string): string => {
    if (last < first) return day;
    if (wanted < first) return first;
    return wanted > last ? last : wanted;
  };
  const span = Math.max(0, ...listings.map(spanOf));
  const submit = within(workingDaysBefore(calendar, last, span));
  return (kind, proof) => {
    if (kind === 'on-sale') return day;
    if (kind === 'check-page') return workingDayFrom(calendar, dayPlus(day, 1));
    if (kind === 'submit') return submit;
    if (kind === 'check-proof' || kind === 'approve')
      return within(workingDaysAfter(calendar, submit, proofDays(proof) || 1));
    return within(workingDaysBefore(calendar, submit, PREPARATION[kind]));
  };
}
