import { Refusal } from '../contract/refusal.ts';
import { fileKindName, fileKindsOf, formName, madeOf } from '../contract/terms.ts';
import { endFile, fileById, fileInForce, insertFile } from '../store/format-files.ts';
import type { StoredFormat } from '../store/formats.ts';
import type { Commands } from './context.ts';
import { needFormat } from './formats.ts';

const nameOf = (stored: StoredFormat) => formName(stored);

function refuseEnded(stored: StoredFormat): void {
  if (stored.standing === 'retired' || stored.standing === 'cancelled')
    throw new Refusal(
      'FIELD_LOCKED',
      `${nameOf(stored)} is ${stored.standing}; it can be read for ever and changed never.`,
      'formatId',
    );
}

function refuseComing(day: string, today: string, field: string): void {
  if (day > today)
    throw new Refusal('BAD_INPUT', `${day} is still to come; record the file on the day it is final.`, field);
}

export const formatFileCommands = {
  'formats.recordFile': ({ db, today }, { finalOn = today, ...given }) => {
    const stored = needFormat(db, given.formatId);
    refuseEnded(stored);
    const kinds = fileKindsOf(madeOf(stored.form));
    if (!kinds.includes(given.kind))
      throw new Refusal(
        'BAD_INPUT',
        `${nameOf(stored)} has no ${fileKindName(given.kind)}; record ${kinds.map((kind) => `its ${fileKindName(kind)}`).join(' or ')}.`,
        'kind',
      );
    refuseComing(finalOn, today, 'finalOn');
    const before = fileInForce(db, stored.id, given.kind);
    if (before && finalOn < before.finalOn)
      throw new Refusal(
        'BAD_INPUT',
        `${before.fileName} is in force and was final on ${before.finalOn}; a file that takes its place cannot be older.`,
        'finalOn',
      );
    if (before) endFile(db, before.id, { on: finalOn, how: 'replaced', reason: '' });
    const fileId = insertFile(db, { ...given, finalOn });
    return { fileId, replacedId: before?.id ?? null };
  },

  'formats.withdrawFile': ({ db, today }, { id, reason, on = today }) => {
    const file = fileById(db, id);
    if (!file) throw new Refusal('NOT_FOUND', `There is no file ${id} on record.`, 'id');
    refuseEnded(needFormat(db, file.formatId));
    if (file.ended)
      throw new Refusal(
        'STEP_REFUSED',
        `${file.fileName} was ${file.ended.how} on ${file.ended.on} already.`,
        'id',
      );
    refuseComing(on, today, 'on');
    if (on < file.finalOn)
      throw new Refusal(
        'BAD_INPUT',
        `${file.fileName} was final on ${file.finalOn}; it cannot be withdrawn before that.`,
        'on',
      );
    endFile(db, id, { on, how: 'withdrawn', reason });
    return { fileId: id };
  },
} satisfies Commands<'formats.recordFile' | 'formats.withdrawFile'>;
