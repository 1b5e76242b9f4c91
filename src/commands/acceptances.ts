import { Refusal } from '../contract/refusal.ts';
import { acceptanceById, insertAcceptance, reopenAcceptance } from '../store/acceptances.ts';
import type { Commands } from './context.ts';

export const acceptanceCommands = {
  'audit.accept': ({ db, audit, today }, { fingerprint, reason, reviewOn }) => {
    if (reviewOn <= today)
      throw new Refusal('BAD_INPUT', `Choose a day of review after today, ${today}.`, 'reviewOn');
    const finding = audit.on(today, today, db).found(fingerprint)?.finding;
    if (!finding)
      throw new Refusal(
        'STEP_REFUSED',
        'This finding is not there any more, or its facts have changed; look at the audit again.',
        'fingerprint',
      );
    const { rule, message, workId } = finding;
    return {
      id: insertAcceptance(db, {
        fingerprint,
        rule,
        message,
        workId,
        reason,
        acceptedOn: today,
        reviewOn,
      }),
    };
  },

  'audit.reopen': ({ db, today }, { id }) => {
    const stored = acceptanceById(db, id);
    if (!stored) throw new Refusal('NOT_FOUND', `There is no accepted finding ${id}.`, 'id');
    if (stored.reopenedOn)
      throw new Refusal('STEP_REFUSED', `This finding is open again since ${stored.reopenedOn}.`, 'id');
    reopenAcceptance(db, id, today);
    return { id };
  },
} satisfies Commands<'audit.accept' | 'audit.reopen'>;
