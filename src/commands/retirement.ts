import { Refusal } from '../contract/refusal.ts';
import { formName, madeOf } from '../contract/terms.ts';
import { successorSells } from '../records/desk.ts';
import { calendarOf, planListing } from '../records/plans.ts';
import { editionLabel } from '../rules/labels.ts';
import { dayPlus, workingDayFrom } from '../rules/working-days.ts';
import type { ReadDb } from '../store/connection.ts';
import { listingsOfEdition, type PlanListingRow } from '../store/plans.ts';
import {
  checklistOf,
  deskFormats,
  insertAgencyRecord,
  insertCount,
  insertRemovalEvent,
  writeReturns,
} from '../store/retirement.ts';
import { placeOfListing } from '../store/submissions.ts';
import {
  dateStoredTask,
  finishStoredTask,
  insertTask,
  unfinishedNeeds,
  unfinishedOfListing,
} from '../store/tasks.ts';
import type { CommandContext, Commands } from './context.ts';
import { needFormat } from './formats.ts';
import { moveListing } from './listing-steps.ts';
import { plannedEdition } from './plan-making.ts';

interface Placed extends PlanListingRow {
  editionId: number;
  workId: number;
  /** 'Paperback on Printworks Direct' */
  name: string;
}

function needListing(db: ReadDb, listingId: number): Placed {
  const place = placeOfListing(db, listingId);
  const row = place && listingsOfEdition(db, place.editionId).find((one) => one.id === listingId);
  if (!place || !row) throw new Refusal('NOT_FOUND', `There is no listing ${listingId}.`, 'listingId');
  const { formatName, channelName } = planListing(row);
  return { ...row, ...place, name: `${formatName} on ${channelName}` };
}

function refuseDayToCome(on: string, today: string): void {
  if (on > today)
    throw new Refusal('STEP_REFUSED', `${on} is still to come; record it on the day it happens.`, 'on');
}

/** The listing while it leaves, on a day from when it was asked on; throws STEP_REFUSED. */
function needLeaving(context: CommandContext, listingId: number, on: string): Placed {
  refuseDayToCome(on, context.today);
  const listing = needListing(context.db, listingId);
  if (listing.standing !== 'leaving' || listing.lastStepOn === null)
    throw new Refusal(
      'STEP_REFUSED',
      `${listing.name} stands at '${listing.standing}'; a channel promises and is asked again only after it was asked to stop selling and before it is gone.`,
      'listingId',
    );
  if (on < listing.lastStepOn)
    throw new Refusal(
      'STEP_REFUSED',
      `${listing.name} was asked on ${listing.lastStepOn}; choose that day or a later one.`,
      'on',
    );
  return listing;
}

/** Throws NOT_READY where the old would be asked off a channel before the new sells there. */
function refuseGap(db: ReadDb, listing: Placed): void {
  const next = successorSells(db, listing.editionId, listing.channelId);
  if (next && !next.sells)
    throw new Refusal(
      'NOT_READY',
      `${next.label} is not on sale there yet, so ${listing.name} would leave a gap: wait for it, or say that removal is asked before the replacement sells.`,
      'beforeReplacement',
    );
}

/** Keeps a promise and dates the tasks that look after it: chasing the day after, confirming not before. */
function keepPromise(
  { db }: CommandContext,
  listing: Placed,
  promise: { promisedBy: string; on: string; note: string },
): void {
  const { promisedBy, on, note } = promise;
  if (promisedBy < on)
    throw new Refusal('BAD_INPUT', `${promisedBy} lies before ${on}; choose a later day.`, 'promisedBy');
  insertRemovalEvent(db, { listingId: listing.id, kind: 'promised', on, promisedBy, note });
  const chase = workingDayFrom(calendarOf(db), dayPlus(promisedBy, 1));
  for (const task of unfinishedOfListing(db, listing.id)) {
    if (task.kind === 'chase') dateStoredTask(db, task.id, chase);
    if (task.kind === 'confirm-gone' && task.dueOn < chase) dateStoredTask(db, task.id, chase);
  }
}

/** The open chase is done; where nothing new is promised, the next one follows after the channel's own days. */
function chaseTasks({ db }: CommandContext, listing: Placed, on: string, note: string): void {
  const open = unfinishedOfListing(db, listing.id).filter((task) => task.kind === 'chase');
  for (const task of open) finishStoredTask(db, task, on, note);
  const dueOn = workingDayFrom(calendarOf(db), dayPlus(on, Math.max(listing.removalDays, 1)));
  insertTask(db, {
    kind: 'chase',
    title: open[0]?.title ?? `Ask again about ${listing.name} if it still shows for sale`,
    note: '',
    dueOn,
    planId: open[0]?.planId ?? null,
    workId: listing.workId,
    editionId: listing.editionId,
    formatId: listing.formatId,
    listingId: listing.id,
  });
}

/** The task on the last date for returns: made once, moved with the date. */
function returnsTask({ db }: CommandContext, listing: Placed, until: string): number | null {
  const there = unfinishedOfListing(db, listing.id).find((task) => task.kind === 'returns-end');
  if (there) {
    dateStoredTask(db, there.id, until);
    return there.id;
  }
  return insertTask(db, {
    kind: 'returns-end',
    title: `Returns of ${listing.name} end: settle what came back`,
    note: 'Money kept aside for returns is free after this day.',
    dueOn: until,
    workId: listing.workId,
    editionId: listing.editionId,
    formatId: listing.formatId,
    listingId: listing.id,
  });
}

const removalCommands = {
  'retirement.ask': (context, { listingId, note, promisedBy, beforeReplacement, ...given }) => {
    const on = given.on ?? context.today;
    const listing = needListing(context.db, listingId);
    if (!beforeReplacement) refuseGap(context.db, listing);
    const moved = moveListing(context, { id: listingId, to: 'leaving', on, note });
    if (promisedBy !== undefined) keepPromise(context, listing, { promisedBy, on, note: '' });
    return { listingId, standing: moved.standing };
  },

  'retirement.promise': (context, { listingId, promisedBy, note, ...given }) => {
    const on = given.on ?? context.today;
    const listing = needLeaving(context, listingId, on);
    keepPromise(context, listing, { promisedBy, on, note });
    return { listingId, standing: listing.standing };
  },

  'retirement.chase': (context, { listingId, note, promisedBy, ...given }) => {
    const on = given.on ?? context.today;
    const listing = needLeaving(context, listingId, on);
    insertRemovalEvent(context.db, { listingId, kind: 'chased', on, promisedBy: null, note });
    chaseTasks(context, listing, on, note);
    if (promisedBy !== undefined) keepPromise(context, listing, { promisedBy, on, note: '' });
    return { listingId, standing: listing.standing };
  },

  'retirement.gone': (context, { listingId, evidence, ...given }) => {
    const { name, standing } = needListing(context.db, listingId);
    if (standing !== 'leaving')
      throw new Refusal(
        'STEP_REFUSED',
        `${name} stands at '${standing}'; only what a channel was asked to stop selling can be confirmed gone.`,
        'listingId',
      );
    const moved = moveListing(context, { id: listingId, to: 'gone', on: given.on, note: evidence });
    return { listingId, standing: moved.standing };
  },
} satisfies Commands<'retirement.ask' | 'retirement.promise' | 'retirement.chase' | 'retirement.gone'>;

const remainsCommands = {
  'retirement.returns': (context, { listingId, until, note }) => {
    const listing = needListing(context.db, listingId);
    if (listing.returns === null || listing.returns === 'N')
      throw new Refusal(
        'STEP_REFUSED',
        `${listing.name} is not recorded as returnable, so nothing comes back; change its returns first if that is wrong.`,
        'listingId',
      );
    if (!['selling', 'leaving', 'gone'].includes(listing.standing))
      throw new Refusal(
        'STEP_REFUSED',
        `${listing.name} was never on sale, so nothing comes back.`,
        'listingId',
      );
    writeReturns(context.db, listingId, until, note);
    return { listingId, until, taskId: returnsTask(context, listing, until) };
  },

  'retirement.count': ({ db, today }, { formatId, place, copies, fate, note, ...given }) => {
    const format = needFormat(db, formatId);
    const countedOn = given.countedOn ?? today;
    if (madeOf(format.form) !== 'print' && format.form !== 'AC')
      throw new Refusal(
        'STEP_REFUSED',
        `${formName(format)} has no copies to count; only what is printed or pressed has.`,
        'formatId',
      );
    if (countedOn > today)
      throw new Refusal(
        'STEP_REFUSED',
        `${countedOn} is still to come; count on the day itself.`,
        'countedOn',
      );
    return { countId: insertCount(db, { formatId, place, copies, countedOn, fate, note }) };
  },

  'retirement.outOfPrint': ({ db, today }, { editionId, note, ...given }) => {
    const on = given.on ?? today;
    refuseDayToCome(on, today);
    const label = editionLabel(plannedEdition(db, editionId));
    const selling = listingsOfEdition(db, editionId).find((row) => row.standing === 'selling');
    if (selling)
      throw new Refusal(
        'STEP_REFUSED',
        `${label} still sells on ${selling.channelName}; out of print comes after every channel was asked to stop.`,
        'editionId',
      );
    const formats = deskFormats(db, editionId, today).filter((row) => row.isbn13 !== null);
    const left = formats.filter((row) => row.outOfPrintOn === null);
    if (left.length === 0)
      throw new Refusal(
        formats.length === 0 ? 'STEP_REFUSED' : 'ALREADY_EXISTS',
        formats.length === 0
          ? `${label} was never on sale under a number, so no record is set to out of print.`
          : `The record of every number of ${label} is set to out of print already.`,
        'editionId',
      );
    for (const { formatId } of left) insertAgencyRecord(db, formatId, on, note);
    for (const task of checklistOf(db, editionId))
      if (
        task.kind === 'record-out-of-print' &&
        task.endedOn === null &&
        unfinishedNeeds(db, task.id).length === 0
      )
        finishStoredTask(db, task, on, note);
    return { formatIds: left.map((row) => row.formatId) };
  },
} satisfies Commands<'retirement.returns' | 'retirement.count' | 'retirement.outOfPrint'>;

export const retirementCommands = { ...removalCommands, ...remainsCommands };
