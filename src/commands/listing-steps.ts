import { Refusal } from '../contract/refusal.ts';
import {
  EDITION_IDENTITY,
  FORMAT_IDENTITY,
  fileKindName,
  formName,
  type ListingStanding,
} from '../contract/terms.ts';
import { doneByMove } from '../rules/plans/kinds.ts';
import { noWay, wayTo } from '../rules/standings.ts';
import type { WriteDb } from '../store/connection.ts';
import { insertStep, type SteppingListing, steppingListing } from '../store/listing-steps.ts';
import { openDifferences } from '../store/proof-checks.ts';
import { finishStoredTask, unfinishedOfListing } from '../store/tasks.ts';
import type { CommandContext } from './context.ts';
import { followListing } from './plan-follow.ts';
import { stampSheet } from './submissions.ts';

const DONE_WITH_THE_STEP = 'done with the step';

/** 'Paperback on Printworks Direct' */
function nameOf(listing: SteppingListing): string {
  return `${formName({ ...listing, largePrint: listing.largePrint === 1 })} on ${listing.channelName}`;
}

/** The standings to pass through; throws STEP_REFUSED or NOT_READY with what would make the move possible. */
function findWay(listing: SteppingListing, to: ListingStanding): ListingStanding[] {
  const name = nameOf(listing);
  const way = wayTo(listing.standing, to);
  if (way === null) throw new Refusal('STEP_REFUSED', noWay(name, listing.standing, to), 'to');
  if (listing.formatStanding === 'retired' || listing.formatStanding === 'cancelled')
    throw new Refusal(
      'STEP_REFUSED',
      `${name} stands at '${listing.standing}' and cannot move to '${to}', because its format is ${listing.formatStanding}; sell a new format with a number of its own instead.`,
      'to',
    );
  if (way.includes('sent') && listing.numbered === 0)
    throw new Refusal(
      'NOT_READY',
      `${name} cannot be sent because the format has no number yet; take one for it first.`,
      'to',
    );
  return way;
}

/** Throws STEP_REFUSED where a check of the format's final files differs from the record without a reason. */
function checkFiles(db: WriteDb, listing: SteppingListing, way: readonly ListingStanding[]): void {
  if (!way.includes('cleared')) return;
  const [first, ...more] = openDifferences(db, listing.formatId);
  if (!first) return;
  const others = more.length === 0 ? '' : ` and ${more.length} more`;
  throw new Refusal(
    'STEP_REFUSED',
    `${nameOf(listing)} cannot be cleared: the check of its ${fileKindName(first.kind)} ${first.fileName} on ${first.checkedOn} differs from the record in ${first.label}${others}; mend the file or the record and check again, or give the reason on its Proof check page.`,
    'to',
  );
}

/** Throws STEP_REFUSED for a day that is still to come, or that lies before the step it would follow. */
function checkDay(listing: SteppingListing, on: string, today: string): void {
  if (on > today)
    throw new Refusal('STEP_REFUSED', `${on} is still to come; record the step on the day it happens.`, 'on');
  if (listing.lastStepOn !== null && on < listing.lastStepOn)
    throw new Refusal(
      'STEP_REFUSED',
      `${nameOf(listing)} moved to '${listing.standing}' on ${listing.lastStepOn}, so the next step cannot be dated ${on}; choose ${listing.lastStepOn} or later.`,
      'on',
    );
}

/**
 * Names of the fields that sending this listing locks: identity fields of edition and format that were still
 * open (never sent, or opened by a recorded correction), and what this channel locks beside them.
 */
function newlyLocked(listing: SteppingListing, way: readonly ListingStanding[]): string[] {
  if (!way.includes('sent')) return [];
  return [
    ...(listing.editionLocked === 0 ? EDITION_IDENTITY : []),
    ...(listing.formatLocked === 0 ? ['isbn', ...FORMAT_IDENTITY] : []),
    ...(JSON.parse(listing.channelLocks) as string[]),
  ];
}

/** Ends the listing's tasks that have nothing left to do where it stands now. */
function endTasks(db: WriteDb, listingId: number, reached: ListingStanding, on: string): void {
  for (const task of unfinishedOfListing(db, listingId))
    if (doneByMove(task.kind, reached)) finishStoredTask(db, task, on, DONE_WITH_THE_STEP);
}

/**
 * Moves a listing to a standing by recorded steps, one after the other, all on one day (today unless given),
 * stamps the sheet that was sent, ends the tasks this makes superfluous, and lets the plans in force follow. `locked`
 * names the fields that were open before and are locked now; `askAgain: false` is for a caller that makes the tasks
 * of a listing that came back.
 * Throws NOT_FOUND, STEP_REFUSED or NOT_READY.
 */
export function moveListing(
  context: CommandContext,
  move: {
    id: number;
    to: ListingStanding;
    on?: string | undefined;
    note?: string | undefined;
    askAgain?: boolean;
  },
): { listingId: number; standing: ListingStanding; locked: string[] } {
  const { db, today } = context;
  const listing = steppingListing(db, move.id);
  if (!listing) throw new Refusal('NOT_FOUND', `There is no listing ${move.id}.`, 'id');
  const on = move.on ?? today;
  const way = findWay(listing, move.to);
  checkDay(listing, on, today);
  checkFiles(db, listing, way);
  let from = listing.standing;
  for (const to of way) {
    const note = move.note ?? '';
    const stepId = insertStep(db, { listingId: listing.id, from, to, on, note });
    if (to === 'sent') stampSheet(context, { listingId: listing.id, stepId, on, note });
    from = to;
  }
  endTasks(db, listing.id, move.to, on);
  if (move.to !== 'unsent' || move.askAgain !== false) followListing({ db, today }, listing.id, move.to);
  return { listingId: listing.id, standing: move.to, locked: newlyLocked(listing, way) };
}
