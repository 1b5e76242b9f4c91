import type { EditionFields } from '../contract/editions.ts';
import type { FormatFields } from '../contract/formats.ts';
import { Refusal } from '../contract/refusal.ts';
import { fieldsCarriedToNextEdition, nextEditionFields } from '../rules/carry.ts';
import { changesOf } from '../rules/changes.ts';
import { editionLabel } from '../rules/labels.ts';
import { insertEdition, replacementOf, type StoredEdition } from '../store/editions.ts';
import { formatsOfEditions, type StoredFormat } from '../store/formats.ts';
import { insertListing, listingsOfFormats } from '../store/listings.ts';
import type { CommandContext, Commands } from './context.ts';
import { keepReasons } from './edition-advice.ts';
import { needEdition } from './editions.ts';
import { addFormat } from './formats.ts';
import { assignTogether } from './number-allocation.ts';

/** Refuses when there is nothing to follow, or it is followed already. */
function refuseUnready(
  context: CommandContext,
  old: StoredEdition,
  formats: StoredFormat[],
  carry: number[],
): void {
  const replacement = replacementOf(context.db, old.id);
  if (replacement !== null) {
    const next = needEdition(context.db, replacement);
    throw new Refusal(
      'ALREADY_EXISTS',
      `${editionLabel(old)} is already followed by ${editionLabel(next)}; work on that one.`,
      'editionId',
    );
  }
  if (
    !formats.some(
      (format) =>
        format.standing === 'live' || format.standing === 'retiring' || format.standing === 'retired',
    )
  )
    throw new Refusal(
      'NOT_READY',
      `${editionLabel(old)} was never on sale, so it needs no next edition: change it while it is open.`,
      'editionId',
    );
  const stranger = carry.find((id) => !formats.some((format) => format.id === id));
  if (stranger !== undefined)
    throw new Refusal('NOT_FOUND', `Format ${stranger} does not belong to ${editionLabel(old)}.`, 'carry');
}

/** The same channels for a carried format, with terms but without dates, references and standings. */
function carryListings(context: CommandContext, from: number, to: number): void {
  for (const listing of listingsOfFormats(context.db, [from])) {
    const closed = context.db.one(
      'SELECT 1 FROM channel WHERE id = ? AND closed_on IS NOT NULL',
      listing.channelId,
    );
    if (closed) continue;
    const { discountBp, returns, printCostMinor, printCostCurrency } = listing;
    const printCost =
      printCostMinor === null || printCostCurrency === null
        ? null
        : { amountMinor: printCostMinor, currency: printCostCurrency };
    insertListing(context.db, to, listing.channelId, { discountBp, returns, printCost });
  }
}

export const nextEditionCommands = {
  'editions.prepareNext': (context, input) => {
    const { db, today } = context;
    const old = needEdition(db, input.editionId);
    const formats = formatsOfEditions(db, [old.id]);
    refuseUnready(context, old, formats, input.carry);
    if (input.carry.length + input.add.length === 0)
      throw new Refusal('BAD_INPUT', 'Choose at least one format for the next edition.', 'carry');
    const carried = nextEditionFields(old);
    const fields: EditionFields = {
      ...carried,
      ...changesOf(carried, input.changes as Partial<EditionFields>),
    };
    const editionId = insertEdition(db, { ...fields, workId: old.workId, replacesId: old.id });
    if (input.stated) keepReasons(context, old.id, editionId, input.stated);
    const formatIds: number[] = [];
    for (const id of new Set(input.carry)) {
      const from = formats.find((format) => format.id === id) as FormatFields & { id: number };
      const formatId = addFormat(context, editionId, fieldsCarriedToNextEdition(from));
      if (input.carryListings) carryListings(context, id, formatId);
      formatIds.push(formatId);
    }
    for (const given of input.add) formatIds.push(addFormat(context, editionId, given));
    if (input.takeNumbers) assignTogether(db, today, formatIds, { blockId: input.blockId });
    return { editionId, formatIds };
  },
} satisfies Commands<'editions.prepareNext'>;
