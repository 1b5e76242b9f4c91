import { Refusal } from '../contract/refusal.ts';
import { sheetFacts } from '../records/sheets.ts';
import { differencesFrom, sentSheetOf } from '../rules/sheets/sheet.ts';
import { insertSubmission, submissionsOf } from '../store/submissions.ts';
import type { CommandContext, Commands } from './context.ts';

/** Keeps the sheet of a listing as what was sent by the step just recorded. */
export function stampSheet(
  { db, today }: CommandContext,
  sent: { listingId: number; stepId: number; on: string; note: string },
): void {
  insertSubmission(db, {
    listingId: sent.listingId,
    stepId: sent.stepId,
    onDate: sent.on,
    takenOn: today,
    sheet: sentSheetOf(sheetFacts(db, sent.listingId)),
    note: sent.note,
  });
}

export const submissionCommands = {
  'submissions.record': ({ db, today }, { listingId, on, note }) => {
    const facts = sheetFacts(db, listingId);
    const { listing, channel, format } = facts;
    const name = `${format.name} on ${channel.name}`;
    const day = on ?? today;
    if (listing.standing === 'unsent' || listing.firstSentOn === null)
      throw new Refusal('STEP_REFUSED', `${name} is not sent; mark it sent instead.`, 'listingId');
    if (listing.standing === 'gone')
      throw new Refusal(
        'STEP_REFUSED',
        `${name} is gone; it can be read for ever and changed never.`,
        'listingId',
      );
    if (day > today)
      throw new Refusal('STEP_REFUSED', `${day} is still to come; record it on the day it is sent.`, 'on');
    const newest = submissionsOf(db, listingId, today)[0];
    const earliest = newest?.onDate ?? listing.firstSentOn;
    if (day < earliest)
      throw new Refusal(
        'STEP_REFUSED',
        `${name} was sent on ${earliest}, so changes to it were sent on that day or later.`,
        'on',
      );
    if (newest && differencesFrom(newest.sheet, facts).length === 0)
      throw new Refusal(
        'STEP_REFUSED',
        `Nothing of ${name} differs from what was sent on ${newest.onDate}.`,
        'listingId',
      );
    const sheet = sentSheetOf(facts);
    return {
      submissionId: insertSubmission(db, {
        listingId,
        stepId: null,
        onDate: day,
        takenOn: today,
        sheet,
        note,
      }),
    };
  },
} satisfies Commands<'submissions.record'>;
