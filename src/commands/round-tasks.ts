import { ROUND_KINDS, type RoundTask } from '../rules/proof-rounds.ts';
import type { WriteDb } from '../store/connection.ts';
import { type PlanListingRow, planInForce } from '../store/plans.ts';
import {
  dateStoredTask,
  finishStoredTask,
  hasNeed,
  insertNeed,
  insertTask,
  type StoredTask,
  unfinishedOfListing,
  waitStoredTask,
} from '../store/tasks.ts';
import { pushedDays } from './tasks.ts';

/** Where the tasks of a round belong. */
export interface RoundPlace {
  listing: PlanListingRow;
  editionId: number;
  workId: number;
}

const OF_A_ROUND: readonly string[] = ROUND_KINDS;
/** Kinds that a listing has once: an unfinished one is taken along instead of making another. */
const ONCE: readonly string[] = ['submit', 'check-proof', 'approve', 'on-sale', 'order-copies'];

/** Ends what was waited for since the last round: this round is the answer. */
export function endWaiting(db: WriteDb, listingId: number, on: string): void {
  for (const task of unfinishedOfListing(db, listingId))
    if (task.kind === 'await-mend' || task.kind === 'chase-mend')
      finishStoredTask(db, task, on, 'a new proof round was recorded');
}

/** Gives a task that is there already a later day, and takes along what comes after it. Sales of a plan stay. */
function pushLater(db: WriteDb, task: StoredTask, dueOn: string): void {
  if (dueOn <= task.dueOn) return;
  for (const [entry, day] of new Map([[task, dueOn], ...pushedDays(db, task, dueOn)]))
    if (entry === task || entry.kind !== 'on-sale') dateStoredTask(db, entry.id, day);
}

/**
 * Makes the tasks of a round, or takes along those of the listing that are not done yet; puts each after what
 * it needs, and the unfinished ones of the listing's way to sale after each other. Answers how many were made.
 */
export function storeRoundTasks(db: WriteDb, place: RoundPlace, tasks: readonly RoundTask[]): number {
  const { listing, editionId, workId } = place;
  const planId = planInForce(db, editionId, 'release')?.id ?? null;
  const there = unfinishedOfListing(db, listing.id);
  const ids = new Map<string, number>();
  let made = 0;
  for (const task of tasks) {
    const old = ONCE.includes(task.kind) ? there.find((one) => one.kind === task.kind) : undefined;
    const of = { workId, editionId, formatId: listing.formatId, listingId: listing.id };
    const id =
      old?.id ?? insertTask(db, { ...task, ...of, planId: OF_A_ROUND.includes(task.kind) ? null : planId });
    if (old) pushLater(db, old, task.dueOn);
    else made += 1;
    if (task.waitingFor !== '') waitStoredTask(db, id, task.waitingFor);
    ids.set(task.key, id);
    for (const key of task.needs) addNeed(db, id, ids.get(key));
  }
  chainToSale(db, ids, there);
  return made;
}

function addNeed(db: WriteDb, taskId: number, needsId: number | undefined): void {
  if (needsId !== undefined && needsId !== taskId && !hasNeed(db, taskId, needsId))
    insertNeed(db, taskId, needsId);
}

/** What was there already and comes later on the way to sale stands after what was made now. */
function chainToSale(db: WriteDb, ids: ReadonlyMap<string, number>, there: readonly StoredTask[]): void {
  const way = ['check-proof', 'approve', 'on-sale'];
  let before = ids.get('submit') ?? ids.get('await-mend');
  if (before === undefined) return;
  for (const kind of way) {
    const id = ids.get(kind) ?? there.find((task) => task.kind === kind)?.id;
    if (id === undefined) continue;
    addNeed(db, id, before);
    before = id;
  }
}
