import { dayPlus, isWorkingDay, type WorkCalendar } from './working-days.ts';

/** A recorded step of a listing on a channel. */
export interface LeadStep {
  channelId: number;
  listingId: number;
  from: string;
  to: string;
  on: string;
  /** The day the listing was to go on sale, where one is set. */
  onSaleDate: string | null;
}

/** Median and slowest of some lengths, in days. */
export interface Learned {
  median: number;
  slowest: number;
  count: number;
}

function learned(lengths: readonly number[]): Learned | null {
  if (lengths.length === 0) return null;
  const sorted = lengths.toSorted((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)] ?? 0;
  const lower = sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
  // Rounded up: a lead time that is too short is the one that hurts.
  return { median: Math.ceil((lower + upper) / 2), slowest: sorted.at(-1) ?? 0, count: sorted.length };
}

function workedBetween(calendar: WorkCalendar, from: string, to: string): number {
  let count = 0;
  for (let day = from; day < to; ) {
    day = dayPlus(day, 1);
    if (isWorkingDay(calendar, day)) count += 1;
  }
  return count;
}

const calendarDays = (from: string, to: string) =>
  Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000);

/**
 * What the steps of one channel tell: working days from sent to proof and from cleared to selling, calendar days
 * from leaving to gone. Steps recorded on one day in a row were typed in later and tell nothing; a listing that
 * waited for its on-sale date says nothing of the channel either.
 */
export function learnedTimes(calendar: WorkCalendar, steps: readonly LeadStep[]) {
  const times = { toProof: [] as number[], toSale: [] as number[], toGone: [] as number[] };
  const last = new Map<number, LeadStep>();
  for (const step of steps) {
    const before = last.get(step.listingId);
    last.set(step.listingId, step);
    if (before === undefined || before.to !== step.from) continue;
    const way = `${step.from}>${step.to}`;
    if (way === 'sent>proof') times.toProof.push(workedBetween(calendar, before.on, step.on));
    if (way === 'cleared>selling' && (step.onSaleDate === null || step.onSaleDate <= before.on))
      times.toSale.push(workedBetween(calendar, before.on, step.on));
    if (way === 'leaving>gone') times.toGone.push(calendarDays(before.on, step.on));
  }
  const told = (lengths: number[]) => learned(lengths.filter((length) => length > 0));
  return { toProof: told(times.toProof), toSale: told(times.toSale), toGone: told(times.toGone) };
}
