import type { ProofKind } from './types.ts';

/** Working days within which a proof is checked once it is there; common practice, no source. */
export const CHECK_WITHIN = 2;

/** Working days that a printed proof is on its way beside the channel's lead time; common practice, no source. */
export const PROOF_BY_POST = 10;

/** Working days a channel needs from what was sent to on sale: its lead time, and the post of a printed proof. */
export function channelDays(channel: { leadDays: number; proof: ProofKind }): number {
  return channel.leadDays + (channel.proof === 'physical' ? PROOF_BY_POST : 0);
}

/** Working days within which a proof is checked, its way by post included. */
export function proofDays(proof: ProofKind): number {
  if (proof === 'none') return 0;
  return proof === 'physical' ? CHECK_WITHIN + PROOF_BY_POST : CHECK_WITHIN;
}

/** Working days a listing needs between submitting and the release day, by the steps as delivered. */
export function spanOf(listing: { leadDays: number; proof: ProofKind }): number {
  return Math.max(channelDays(listing), proofDays(listing.proof));
}
