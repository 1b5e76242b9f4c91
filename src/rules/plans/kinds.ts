import type { ReleaseKind, RetirementKind } from '../../contract/plan-templates.ts';
import type { ListingStanding } from '../../contract/terms.ts';
import { isPast } from '../standings.ts';

/** The standing of its listing that finishing a task brings about. */
const MOVES: Partial<Record<ReleaseKind | RetirementKind, ListingStanding>> = {
  submit: 'sent',
  'check-proof': 'proof',
  approve: 'cleared',
  'on-sale': 'selling',
  'ask-removal': 'leaving',
  'confirm-gone': 'gone',
  'take-back': 'unsent',
};

/** Where finishing a task of this kind moves its listing; null when it moves nothing. */
export function movesTo(kind: string): ListingStanding | null {
  return Object.hasOwn(MOVES, kind) ? (MOVES[kind as keyof typeof MOVES] ?? null) : null;
}

/** Whether a listing that stands here has already passed what a task would bring about, so that nothing moves. */
export function isThere(standing: ListingStanding, target: ListingStanding): boolean {
  return standing === target || (target !== 'unsent' && isPast(standing, target));
}

/**
 * Whether a task of this kind has nothing left to do once its listing moved to a standing. A listing that was
 * taken back leaves the release tasks open: they are to be done again.
 */
export function doneByMove(kind: string, reached: ListingStanding): boolean {
  if (kind === 'chase') return reached === 'gone';
  // What a channel was to mend is mended, or given up, once its listing left the proof behind.
  if (kind === 'await-mend' || kind === 'chase-mend')
    return reached === 'unsent' || isPast(reached, 'cleared');
  const target = movesTo(kind);
  return target !== null && isThere(reached, target);
}
