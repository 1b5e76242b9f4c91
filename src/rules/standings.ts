import { LISTING_STANDINGS, type ListingStanding } from '../contract/terms.ts';

/** One step a listing may take, with what it means in plain words. */
export interface ListingStep {
  readonly from: ListingStanding;
  readonly to: ListingStanding;
  readonly label: string;
}

/**
 * Every step there is; what is not listed cannot happen. The trigger `step_allowed` holds the same table.
 * The order is the product's vocabulary; that a refused listing starts over is common practice, no source.
 */
export const LISTING_STEPS: readonly ListingStep[] = [
  { from: 'unsent', to: 'sent', label: 'Files and data were sent to the channel' },
  { from: 'sent', to: 'proof', label: 'The channel has a proof to check' },
  { from: 'sent', to: 'unsent', label: 'The channel refused it, or it was taken back' },
  { from: 'proof', to: 'cleared', label: 'The proof is approved' },
  { from: 'proof', to: 'unsent', label: 'The proof was refused, or it was taken back' },
  { from: 'cleared', to: 'selling', label: 'It is on sale' },
  { from: 'cleared', to: 'unsent', label: 'The channel refused it, or it was taken back' },
  { from: 'selling', to: 'leaving', label: 'The channel was asked to stop selling' },
  { from: 'leaving', to: 'gone', label: 'It no longer shows for sale' },
  { from: 'leaving', to: 'selling', label: 'The request to stop selling was withdrawn' },
];

/** The steps that can be taken from a standing, forward ones first. */
export function nextSteps(standing: ListingStanding): { to: ListingStanding; label: string }[] {
  return LISTING_STEPS.filter((step) => step.from === standing).map(({ to, label }) => ({ to, label }));
}

/** Whether one standing comes later than another in the order of the vocabulary. */
export function isPast(standing: ListingStanding, other: ListingStanding): boolean {
  return LISTING_STANDINGS.indexOf(standing) > LISTING_STANDINGS.indexOf(other);
}

/**
 * The standings passed through from one standing to another, the last being `to`: a single allowed step, or
 * forward one after the other. Null where there is no way; it never goes back in order to go forward again.
 */
export function wayTo(from: ListingStanding, to: ListingStanding): ListingStanding[] | null {
  if (LISTING_STEPS.some((step) => step.from === from && step.to === to)) return [to];
  if (!isPast(to, from)) return null;
  return LISTING_STANDINGS.slice(LISTING_STANDINGS.indexOf(from) + 1, LISTING_STANDINGS.indexOf(to) + 1);
}

/** Why the named listing has no way there, and what would make one: a sentence or two for the person who asked. */
export function noWay(name: string, from: ListingStanding, to: ListingStanding): string {
  if (from === to) return `${name} already stands at '${from}'; choose another standing.`;
  const impossible = `${name} stands at '${from}' and cannot move to '${to}'.`;
  if (from === 'gone')
    return `${impossible} What is gone stays gone; to sell again, make a new format with a number of its own.`;
  if (from === 'leaving')
    return `${impossible} Move it to 'selling' if the request to stop selling was withdrawn.`;
  if (from === 'selling')
    return `${impossible} Once on sale it is not taken back: move it to 'leaving', and to 'gone' when it no longer shows.`;
  return `${impossible} If the channel refused it, move it to 'unsent' first, then forward again.`;
}
