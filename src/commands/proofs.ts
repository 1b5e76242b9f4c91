import type { ParsedInputOf } from '../contract/index.ts';
import type { NewFile } from '../contract/proofs.ts';
import { Refusal } from '../contract/refusal.ts';
import { calendarOf, planListing } from '../records/plans.ts';
import type { PlanListing } from '../rules/plans/types.ts';
import { earliestSale, FILES_OF, roundTasks, stepsOf } from '../rules/proof-rounds.ts';
import { insertCost } from '../store/costs.ts';
import { writeListing } from '../store/listings.ts';
import { listingsOfEdition, planInForce } from '../store/plans.ts';
import { insertRound } from '../store/proofs.ts';
import { placeOfListing } from '../store/submissions.ts';
import { unfinishedOfListing } from '../store/tasks.ts';
import type { CommandContext, CommandHandler } from './context.ts';
import { moveListing } from './listing-steps.ts';
import { endWaiting, type RoundPlace, storeRoundTasks } from './round-tasks.ts';

type Input = ParsedInputOf<'proofs.record'>;

function placeOf({ db }: CommandContext, listingId: number): RoundPlace {
  const place = placeOfListing(db, listingId);
  const listing = place && listingsOfEdition(db, place.editionId).find((row) => row.id === listingId);
  if (!place || !listing) throw new Refusal('NOT_FOUND', `There is no listing ${listingId}.`, 'listingId');
  return { listing, editionId: place.editionId, workId: place.workId };
}

/** The steps of the outcome; throws STEP_REFUSED with the reason where it does not fit where the listing stands. */
function stepsFor(listing: PlanListing, input: Input) {
  const steps = stepsOf(input.outcome, listing.standing);
  if (steps) return steps;
  const name = `${listing.formatName} on ${listing.channelName}`;
  const reason =
    listing.standing === 'unsent'
      ? 'it is not sent, so there is no proof of it yet; mark it sent first'
      : listing.standing === 'cleared'
        ? 'it is cleared already; record that it is clear for sale, or what is wrong with it'
        : 'it is or was on sale; a changed file there is a matter of its own, and its cost can be recorded by itself';
  throw new Refusal(
    'STEP_REFUSED',
    `${name} stands at '${listing.standing}', where a round cannot end with '${input.outcome}': ${reason}.`,
    'outcome',
  );
}

/** Refuses answers that do not belong to the outcome, or lie before the round. */
function checkAnswers(listing: PlanListing, input: Input, on: string): void {
  if (input.outcome === 'clear for own orders' && input.saleDay === undefined)
    throw new Refusal('BAD_INPUT', 'Choose the later day on which it is to go on sale.', 'saleDay');
  for (const [field, day] of [
    ['saleDay', input.saleDay],
    ['answerBy', input.answerBy],
  ] as const)
    if (day !== undefined && day <= on)
      throw new Refusal(
        'BAD_INPUT',
        `${day} does not come after the round (${on}); choose a later day.`,
        field,
      );
  const strange = input.files.find((file) => !FILES_OF[listing.made].includes(file));
  if (strange !== undefined)
    throw new Refusal('BAD_INPUT', `${listing.formatName} has no ${strange} file.`, 'files');
}

/** Refuses a day to come, or one before the last step. */
function refuseDay(listing: PlanListing, on: string, today: string): void {
  if (on > today)
    throw new Refusal(
      'STEP_REFUSED',
      `${on} is still to come; record the round on the day it happens.`,
      'on',
    );
  if (listing.lastStepOn !== null && on < listing.lastStepOn)
    throw new Refusal(
      'STEP_REFUSED',
      `It moved to '${listing.standing}' on ${listing.lastStepOn}; choose that day or a later one.`,
      'on',
    );
}

/** Refuses a day of sale before the one that its task has already. */
function refuseEarlySale(input: Input, due: string | null): void {
  if (due !== null && input.saleDay !== undefined && input.saleDay < due)
    throw new Refusal(
      'BAD_INPUT',
      `Its task puts it on sale on ${due}; choose that day or a later one.`,
      'saleDay',
    );
}

const filesOf = (listing: PlanListing, input: Input): readonly NewFile[] =>
  input.files.length > 0 ? [...new Set(input.files)] : FILES_OF[listing.made];

/** The day on which a task puts the listing on sale; null without one. */
function saleDue({ db }: CommandContext, place: RoundPlace): string | null {
  const task = unfinishedOfListing(db, place.listing.id).find((one) => one.kind === 'on-sale');
  return task?.dueOn ?? null;
}

function recordCosts(
  context: CommandContext,
  place: RoundPlace,
  round: { id: number; on: string },
  input: Input,
) {
  const of = { formatId: place.listing.formatId, listingId: place.listing.id, roundId: round.id };
  for (const { kind, amount, voucher, note } of input.costs)
    insertCost(context.db, of, { kind, amount, on: round.on, voucher: voucher ?? '', note: note ?? '' });
}

/** Records a proof round: steps, round, what was waited for ended, new tasks, costs. */
export const recordProof: CommandHandler<'proofs.record'> = (context, input) => {
  const { db, today } = context;
  const place = placeOf(context, input.listingId);
  const listing = planListing(place.listing);
  const on = input.on ?? today;
  const steps = stepsFor(listing, input);
  checkAnswers(listing, input, on);
  refuseDay(listing, on, today);
  const due = saleDue(context, place);
  refuseEarlySale(input, due);
  endWaiting(db, listing.id, on);
  for (const to of steps) moveListing(context, { id: listing.id, to, on, note: input.note, askAgain: false });
  const { outcome, proof, note, saleDay } = input;
  const roundId = insertRound(db, { listingId: listing.id, on, proof, outcome, note });
  recordCosts(context, place, { id: roundId, on }, input);
  if (saleDay !== undefined && outcome === 'clear for own orders')
    writeListing(db, listing.id, { onSaleDate: saleDay });
  const asked = {
    calendar: calendarOf(db),
    on,
    outcome,
    listing,
    files: filesOf(listing, input),
    saleDay: saleDay ?? null,
    answerBy: input.answerBy ?? null,
    saleDue: outcome === 'new file needed' ? due : null,
  };
  const tasks = storeRoundTasks(db, place, roundTasks(asked));
  const earliest = earliestSale(asked);
  const late = outcome === 'new file needed' && due !== null && earliest > due;
  return {
    roundId,
    standing: steps.at(-1) ?? listing.standing,
    tasks,
    late: late
      ? { saleDay: due, earliest, planId: planInForce(db, place.editionId, 'release')?.id ?? null }
      : null,
  };
};

export const proofCommands = { 'proofs.record': recordProof };
