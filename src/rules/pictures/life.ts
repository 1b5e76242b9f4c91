import type { FormatStanding, ListingStanding } from '../../contract/terms.ts';
import type { FormatFacts } from '../audit/facts.ts';

/** A stretch of days on which a format stood at one standing; `to` is the first day it no longer did. */
export interface Span {
  standing: FormatStanding;
  from: string;
  to: string | null;
}

/** From when to when a retirement plan of a format's edition was in force; `droppedOn` is the first day it was not. */
export interface PlanPeriod {
  madeOn: string;
  droppedOn: string | null;
}

const OUT: ReadonlySet<ListingStanding> = new Set(['sent', 'proof', 'cleared', 'selling', 'leaving']);

/**
 * Where a format stands, given where its listings stand: the same derivation as the view `format_standing` of the
 * catalogue file, which holds. `submitted`: something of it was ever sent.
 */
export function derivedStanding(
  listings: readonly ListingStanding[],
  facts: { submitted: boolean; retirementPlanned: boolean },
): FormatStanding {
  const has = (standing: ListingStanding) => listings.includes(standing);
  if (has('gone') && !listings.some((standing) => OUT.has(standing))) return 'retired';
  if (has('leaving') && !has('selling')) return 'retiring';
  if (has('selling')) {
    return (has('leaving') || has('gone')) && facts.retirementPlanned ? 'retiring' : 'live';
  }
  if (has('proof') || has('cleared')) return 'proofing';
  return facts.submitted ? 'committed' : 'planned';
}

/** The days on which something about the format changed, in order. */
function turns(format: FormatFacts, plans: readonly PlanPeriod[]): string[] {
  const steps = format.listings.flatMap((listing) => listing.steps.map((step) => step.onDate));
  const first = [format.plannedOn, format.number?.assignedOn ?? format.plannedOn, ...steps].sort()[0];
  const days = [first ?? format.plannedOn, format.plannedOn, ...steps];
  const planned = plans.flatMap(({ madeOn, droppedOn }) => [madeOn, ...(droppedOn ? [droppedOn] : [])]);
  days.push(...planned.filter((day) => day > (first ?? '')));
  if (format.cancelledOn !== null) days.push(format.cancelledOn);
  return [...new Set(days)].sort();
}

function standingAt(format: FormatFacts, plans: readonly PlanPeriod[], day: string): FormatStanding {
  if (format.cancelledOn !== null && format.cancelledOn <= day) return 'cancelled';
  const taken = format.listings.map((listing) => listing.steps.filter((step) => step.onDate <= day));
  const standings = taken.map((steps) => steps.at(-1)?.toStanding ?? 'unsent');
  return derivedStanding(standings, {
    submitted: taken.some((steps) => steps.some((step) => step.toStanding === 'sent')),
    retirementPlanned: plans.some(
      ({ madeOn, droppedOn }) => madeOn <= day && (droppedOn === null || droppedOn > day),
    ),
  });
}

/**
 * Where a format stood from when to when, without gaps, from the first day that is known of it; `plans` are all that
 * ever were made to retire its edition. Several steps of one day leave the last one's standing.
 */
export function spansOf(format: FormatFacts, plans: readonly PlanPeriod[]): Span[] {
  const spans: Span[] = [];
  for (const day of turns(format, plans)) {
    const standing = standingAt(format, plans, day);
    const last = spans.at(-1);
    if (last?.standing === standing) continue;
    if (last) last.to = day;
    spans.push({ standing, from: day, to: null });
  }
  return spans;
}
