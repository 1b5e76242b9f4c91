import { dayPlus, type WorkCalendar, workingDayFrom, workingDaysAfter } from '../working-days.ts';
import type { RetirementKind } from './kinds.ts';
import type { PlanListing, PlanTask } from './types.ts';

/** Working days after chasing at which a listing should be gone; our own allowance. */
const GONE_AFTER_CHASE = 5;

/** The later of two days. */
export function later(day: string, other: string | null): string {
  return other !== null && other > day ? other : day;
}

/** The day on which a retirement task is due, given from when on it can be done and what the channel promises. */
export function retirementDue(
  calendar: WorkCalendar,
  kind: RetirementKind,
  from: string,
  removalDays: number,
): string {
  const ask = workingDayFrom(calendar, from);
  if (kind !== 'chase' && kind !== 'confirm-gone') return ask;
  const chase = workingDayFrom(calendar, dayPlus(ask, removalDays));
  return kind === 'chase' ? chase : workingDaysAfter(calendar, chase, GONE_AFTER_CHASE);
}

/** An 'on sale' task, not yet done, of the edition that replaces this one. */
export interface AwaitedSale {
  taskId: number;
  channelId: number;
  dueOn: string;
}

export interface RetirementInput {
  calendar: WorkCalendar;
  today: string;
  /** The day to ask for removal. */
  day: string;
  listings: readonly PlanListing[];
  /** Sales of the replacing edition to wait for; empty when nothing is waited for. */
  awaited: readonly AwaitedSale[];
  /** Whether the replacing edition is selling somewhere already. */
  replacementSells: boolean;
  /** Label of the replacing edition. */
  replacement: string | null;
}

const plain = { note: '', formatId: null, listingId: null, needs: [], needsTasks: [] };

/** The sales that asking about a listing waits for: on its own channel; where there is none, the whole release while nothing of it sells. */
function awaitedFor(input: RetirementInput, listing: PlanListing): readonly AwaitedSale[] {
  const same = input.awaited.filter((sale) => sale.channelId === listing.channelId);
  return same.length > 0 || input.replacementSells ? same : input.awaited;
}

function leavingTasks(input: RetirementInput, listing: PlanListing): PlanTask[] {
  const awaited = listing.standing === 'selling' ? awaitedFor(input, listing) : [];
  const start = later(input.day, input.today);
  const from = awaited.reduce((day, sale) => later(day, sale.dueOn), start);
  const asked = listing.standing === 'leaving' ? (listing.lastStepOn ?? from) : from;
  const of = { ...plain, formatId: listing.formatId, listingId: listing.id };
  const due = (kind: RetirementKind) =>
    workingDayFrom(
      input.calendar,
      later(retirementDue(input.calendar, kind, asked, listing.removalDays), input.today),
    );
  const ask: PlanTask = {
    ...of,
    key: `ask-removal:${listing.id}`,
    kind: 'ask-removal',
    title: `Ask ${listing.channelName} to stop selling ${listing.formatName}`,
    dueOn: due('ask-removal'),
    needsTasks: awaited.map((sale) => sale.taskId),
  };
  const needs = listing.standing === 'selling' ? [ask.key] : [];
  return [
    ...(listing.standing === 'selling' ? [ask] : []),
    {
      ...of,
      key: `chase:${listing.id}`,
      kind: 'chase',
      title: `Ask ${listing.channelName} again if ${listing.formatName} still shows for sale`,
      dueOn: due('chase'),
      needs,
    },
    {
      ...of,
      key: `confirm-gone:${listing.id}`,
      kind: 'confirm-gone',
      title: `Confirm that ${listing.formatName} is gone from ${listing.channelName}`,
      note: 'Copies offered second-hand by others are no concern of this task.',
      dueOn: due('confirm-gone'),
      needs,
    },
  ];
}

function takeBackTask(input: RetirementInput, listing: PlanListing): PlanTask {
  return {
    ...plain,
    key: `take-back:${listing.id}`,
    kind: 'take-back',
    title: `Take ${listing.formatName} back from ${listing.channelName}`,
    note: 'It was sent but never on sale there.',
    dueOn: retirementDue(input.calendar, 'take-back', later(input.day, input.today), 0),
    formatId: listing.formatId,
    listingId: listing.id,
  };
}

/** What is done once for the edition. Out of print and its caution: ISBN agency's questions and answers; STANDARDS F. */
function editionTasks(input: RetirementInput, leaving: readonly PlanTask[]): PlanTask[] {
  const start = later(input.day, input.today);
  const task = (kind: RetirementKind, title: string, note: string, from: string): PlanTask => ({
    ...plain,
    key: kind,
    kind,
    title,
    note,
    dueOn: retirementDue(input.calendar, kind, from, 0),
  });
  const asks = leaving.filter((entry) => entry.kind === 'ask-removal');
  const record = task(
    'record-out-of-print',
    'Have the bibliographic record set to out of print',
    'The number stays valid for ever and is never given to anything else.',
    asks.reduce((day, ask) => later(day, ask.dueOn), start),
  );
  const links = task(
    'move-links',
    input.replacement === null
      ? 'Take links and the website entry down; keep reviews where they can be kept'
      : `Move links, the website entry and reviews to ${input.replacement}`,
    'Not every channel carries reviews over to another ISBN; ask.',
    input.awaited.reduce((day, sale) => later(day, sale.dueOn), start),
  );
  const returnable = input.listings.filter((l) => l.returnable && l.standing !== 'unsent');
  const channels = [...new Set(returnable.map((listing) => listing.channelName))].join(', ');
  const returns = task(
    'note-returns',
    'Settle the last day on which copies may come back',
    `Ask ${channels}. Copies commonly come back for 90 to 180 days after a book goes out of print (remembered, no source); keep money aside until then.`,
    start,
  );
  return [
    { ...record, needs: asks.map((ask) => ask.key) },
    { ...links, needsTasks: input.awaited.map((sale) => sale.taskId) },
    ...(returnable.length > 0 ? [returns] : []),
  ];
}

/**
 * The tasks that take these listings off sale: asking, chasing and confirming for each that sells (asking is
 * left out where it was done already), taking back what was sent and never sold, and what is done once for
 * the edition. Asking waits for the sales of the replacing edition named in `awaited`.
 */
export function retirementTasks(input: RetirementInput): PlanTask[] {
  const leaving = input.listings
    .filter((listing) => listing.standing === 'selling' || listing.standing === 'leaving')
    .flatMap((listing) => leavingTasks(input, listing));
  const back = input.listings
    .filter((listing) => ['sent', 'proof', 'cleared'].includes(listing.standing))
    .map((listing) => takeBackTask(input, listing));
  return [...leaving, ...back, ...editionTasks(input, leaving)];
}
