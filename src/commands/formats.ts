import { BLANK_FORMAT, type FormatFields } from '../contract/formats.ts';
import { Refusal } from '../contract/refusal.ts';
import { formName, madeOf } from '../contract/terms.ts';
import { editionFacts } from '../records/editions.ts';
import { fieldsCarriedBetweenForms } from '../rules/carry.ts';
import { changesOf } from '../rules/changes.ts';
import { lockedSentence } from '../rules/locks.ts';
import type { ReadDb, WriteDb } from '../store/connection.ts';
import { deleteFiles, filesOfFormats } from '../store/format-files.ts';
import {
  deleteFormat,
  formatById,
  insertFormat,
  markCancelled,
  type StoredFormat,
  writeFormat,
} from '../store/formats.ts';
import { deleteListing, listingsOfFormats } from '../store/listings.ts';
import { wasChecked } from '../store/proof-checks.ts';
import { releaseFindings } from '../store/reports.ts';
import type { CommandContext, Commands } from './context.ts';
import { needEdition } from './editions.ts';
import { moveListing } from './listing-steps.ts';

/** The format, or NOT_FOUND. */
export function needFormat(db: ReadDb, id: number): StoredFormat {
  const stored = formatById(db, id);
  if (!stored) throw new Refusal('NOT_FOUND', `There is no format ${id}.`, 'id');
  return stored;
}

type Given = { form: string } & { [K in keyof FormatFields]?: FormatFields[K] | undefined };

/** Refuses what no format can be. */
export function checkFields(fields: FormatFields): void {
  if (fields.caseKind !== null && fields.form !== 'BB')
    throw new Refusal(
      'BAD_INPUT',
      'Only a hardcover has a kind of case; leave it empty or make the form a hardcover.',
      'caseKind',
    );
  if ((fields.trimWidthUm === null) !== (fields.trimHeightUm === null))
    throw new Refusal('BAD_INPUT', 'A trim size needs both width and height.', 'trimHeightUm');
  const seen = new Set<string>();
  for (const { currency } of fields.prices) {
    if (seen.has(currency))
      throw new Refusal(
        'BAD_INPUT',
        `There are two prices in ${currency}; keep one price for each currency.`,
        'prices',
      );
    seen.add(currency);
  }
}

/** Adds a format to an edition; what is left out stays blank. Answers its id. */
export function addFormat({ db, today }: CommandContext, editionId: number, given: Given): number {
  const named = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
  const fields: FormatFields = { ...BLANK_FORMAT, form: given.form, ...named };
  checkFields(fields);
  return insertFormat(db, { ...fields, editionId, plannedOn: today });
}

function refuseEnded(stored: StoredFormat): void {
  if (stored.standing === 'retired' || stored.standing === 'cancelled')
    throw new Refusal(
      'FIELD_LOCKED',
      `This ${formName(stored).toLowerCase()} is ${stored.standing}; it can be read for ever and changed never.`,
      'id',
    );
}

function refuseLocked(db: ReadDb, stored: StoredFormat, changed: string[]): void {
  const edition = editionFacts(db, [needEdition(db, stored.editionId)])[0];
  const lock = edition?.formats.find((format) => format.id === stored.id)?.lock;
  const locked = changed.filter((field) => lock?.fields.includes(field));
  if (lock && locked.length > 0)
    throw new Refusal(
      'FIELD_LOCKED',
      lockedSentence(locked, {
        since: lock.since,
        by: lock.channelName,
        correctable: edition?.lock?.correctable ?? false,
      }),
      locked[0],
    );
}

/** Takes back what was sent but is not selling yet, so that the format can be cancelled. */
function takeBack(context: CommandContext, stored: StoredFormat, on: string): void {
  for (const listing of listingsOfFormats(context.db, [stored.id])) {
    if (listing.standing === 'unsent') continue;
    if (!['sent', 'proof', 'cleared'].includes(listing.standing))
      throw new Refusal(
        'STEP_REFUSED',
        `${listing.channelName} stands at ${listing.standing}: a format that was once on sale is retired, not cancelled.`,
        'id',
      );
    moveListing(context, { id: listing.id, to: 'unsent', on, note: 'taken back: the format is cancelled' });
  }
}

export const formatCommands = {
  'formats.create': (context, { editionId, ...given }) => {
    needEdition(context.db, editionId);
    return { formatId: addFormat(context, editionId, given) };
  },

  'formats.copy': (context, { fromFormatId, ...given }) => {
    const from = needFormat(context.db, fromFormatId);
    const named = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
    const carried = fieldsCarriedBetweenForms(from, madeOf(from.form) === madeOf(given.form));
    return { formatId: addFormat(context, from.editionId, { ...carried, ...named, form: given.form }) };
  },

  'formats.update': ({ db }, { id, ...wanted }) => {
    const stored = needFormat(db, id);
    const changes = changesOf<FormatFields>(stored, wanted as Partial<FormatFields>);
    const changed = Object.keys(changes);
    if (changed.length === 0) return { formatId: id, changed };
    refuseEnded(stored);
    refuseLocked(db, stored, changed);
    checkFields({ ...stored, ...changes });
    writeFormat(db, id, changes);
    return { formatId: id, changed };
  },

  'formats.cancel': (context, { id, reason, on }) => {
    const stored = needFormat(context.db, id);
    const day = on ?? context.today;
    if (stored.standing === 'cancelled')
      throw new Refusal('STEP_REFUSED', `This format was cancelled on ${stored.cancelledOn}.`, 'id');
    takeBack(context, stored, day);
    dropTasksOf(context.db, id, day, reason);
    markCancelled(context.db, id, day, reason);
    return { formatId: id, spent: stored.isbn13 };
  },

  'formats.remove': ({ db }, { id }) => {
    const stored = needFormat(db, id);
    if (stored.isbn13 || db.one('SELECT 1 FROM number WHERE format_id = ?', id))
      throw new Refusal(
        'IN_USE',
        'This format was given a number, so it is kept for the record; cancel it instead.',
        'id',
      );
    if (db.one('SELECT 1 FROM task WHERE format_id = ?', id))
      throw new Refusal(
        'IN_USE',
        'This format is part of a plan, so it is kept for the record; cancel it instead.',
        'id',
      );
    if (filesOfFormats(db, [id]).some((file) => file.ended !== null))
      throw new Refusal(
        'IN_USE',
        'A file of this format was superseded, so it is kept for the record; cancel the format instead.',
        'id',
      );
    if (wasChecked(db, id))
      throw new Refusal(
        'IN_USE',
        'A file of this format was checked, so it is kept for the record; cancel the format instead.',
        'id',
      );
    for (const listing of listingsOfFormats(db, [id])) deleteListing(db, listing.id);
    deleteFiles(db, id);
    releaseFindings(db, id);
    deleteFormat(db, id);
    return { formatId: id };
  },
} satisfies Commands<
  'formats.create' | 'formats.copy' | 'formats.update' | 'formats.cancel' | 'formats.remove'
>;

/** Ends the open tasks of a cancelled format with its reason. */
function dropTasksOf(db: WriteDb, formatId: number, on: string, reason: string): void {
  db.run(
    `UPDATE task SET standing = 'dropped', ended_on = ?, dropped_reason = ?
     WHERE format_id = ? AND standing IN ('open', 'waiting')`,
    on,
    `Format cancelled: ${reason}`,
    formatId,
  );
}
