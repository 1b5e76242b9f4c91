import type { DeskStep } from '../contract/retirement.ts';
import type { ListingStanding } from '../contract/terms.ts';
import { later } from './plans/retirement-days.ts';
import { dayPlus } from './working-days.ts';

// What is next about a listing of an edition that leaves. That the old is not asked off before the new sells, and
// that silence is followed up, is common practice, no source.

/** Days after which a chase without answer is followed by another; our own allowance. */
export const CHASE_AGAIN_DAYS = 7;

export interface DeskFacts {
  today: string;
  standing: ListingStanding;
  askedOn: string | null;
  /** What the channel promised last. */
  promisedBy: string | null;
  chasedOn: string | null;
  /** Days the channel commonly takes for a removal. */
  removalDays: number;
  /** Label of the replacing edition; null without one. */
  replacement: string | null;
  /** Whether the replacing edition sells on this channel, or on any where it is not listed on this one. */
  replacementSells: boolean;
}

/** The day by which the listing is to be gone: as promised, else as the channel commonly takes. */
export function expectedBy({ askedOn, promisedBy, removalDays }: DeskFacts): string | null {
  return promisedBy ?? (askedOn === null ? null : dayPlus(askedOn, removalDays));
}

function whileLeaving(facts: DeskFacts): { next: DeskStep; because: string } {
  const expected = expectedBy(facts) ?? facts.today;
  const { chasedOn, promisedBy, today } = facts;
  const patience = chasedOn === null ? expected : dayPlus(chasedOn, CHASE_AGAIN_DAYS);
  const until = later(patience, expected);
  if (until < today)
    return {
      next: 'chase',
      because:
        chasedOn === null
          ? `It was to be gone by ${expected}.`
          : `No answer since it was chased on ${chasedOn}.`,
    };
  if (expected <= today) return { next: 'confirm gone', because: `It was to be gone by ${expected}: look.` };
  if (promisedBy === null)
    return { next: 'await promise', because: `No day is promised; it commonly takes until ${expected}.` };
  return { next: 'confirm gone', because: `Promised by ${promisedBy}.` };
}

/** The next step about a listing, and why. */
export function deskStep(facts: DeskFacts): { next: DeskStep; because: string } {
  const { standing } = facts;
  if (standing === 'gone') return { next: 'nothing', because: 'It is gone.' };
  if (standing === 'unsent') return { next: 'nothing', because: 'It was never on sale there.' };
  if (standing === 'leaving') return whileLeaving(facts);
  if (standing !== 'selling')
    return { next: 'take back', because: `It stands at ${standing} and was never on sale there.` };
  if (facts.replacement !== null && !facts.replacementSells)
    return { next: 'wait for sale', because: `${facts.replacement} is not on sale there yet.` };
  return { next: 'ask', because: facts.replacement === null ? 'It sells.' : `${facts.replacement} sells.` };
}
