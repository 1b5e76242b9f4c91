import type { BulkAction } from '../contract/bulk.ts';
import type { OutputOf } from '../contract/index.ts';
import { Refusal } from '../contract/refusal.ts';
import { formName } from '../contract/terms.ts';
import { editionLabel } from '../rules/labels.ts';
import { nextSteps } from '../rules/standings.ts';
import { editionById } from '../store/editions.ts';
import { listingById } from '../store/listings.ts';
import { refusalOf } from '../store/sqlite-errors.ts';
import type { CommandContext, Commands } from './context.ts';
import { editionCommands } from './editions.ts';
import { formatCommands, needFormat } from './formats.ts';
import { moveListing } from './listing-steps.ts';
import { listingCommands } from './listings.ts';

/** What came of one format. */
interface Done {
  changed: boolean;
  locks: boolean;
}

const NOT_SHOWN_AFTER = 100;

/** The same price in this currency is no change; prices in other currencies stay. */
function setPrice(
  context: CommandContext,
  formatId: number,
  price: Extract<BulkAction, { what: 'set price' }>['price'],
) {
  const { prices } = needFormat(context.db, formatId);
  const known = prices.find((one) => one.currency === price.currency);
  if (known?.amountMinor === price.amountMinor && known.tax === price.tax) return false;
  const others = prices.filter((one) => one.currency !== price.currency);
  const wanted = [...others, price].sort((a, b) => a.currency.localeCompare(b.currency));
  return formatCommands['formats.update'](context, { id: formatId, prices: wanted }).changed.length > 0;
}

function changeEdition(context: CommandContext, formatId: number, action: BulkAction): boolean {
  const { editionId } = needFormat(context.db, formatId);
  const edition = editionById(context.db, editionId);
  if (!edition) throw new Refusal('NOT_FOUND', `There is no edition ${editionId}.`, 'formatIds');
  const { keywords, subjects } = edition;
  if (action.what === 'add keywords') {
    const known = new Set(keywords.map((word) => word.toLocaleLowerCase()));
    const added = action.keywords.filter((word) => !known.has(word.toLocaleLowerCase()));
    if (added.length === 0) return false;
    return (
      editionCommands['editions.update'](context, { id: editionId, keywords: [...keywords, ...added] })
        .changed.length > 0
    );
  }
  if (action.what !== 'add subject') return false;
  const { subject } = action;
  if (subjects.some((one) => one.scheme === subject.scheme && one.code === subject.code)) return false;
  return (
    editionCommands['editions.update'](context, { id: editionId, subjects: [...subjects, subject] }).changed
      .length > 0
  );
}

/** The listing of a format on a channel. Throws NOT_READY where there is none. */
function listingOn(context: CommandContext, formatId: number, channelId: number) {
  const found = context.db.one<{ id: number }>(
    'SELECT id FROM listing WHERE format_id = ? AND channel_id = ?',
    formatId,
    channelId,
  );
  const listing = found && listingById(context.db, found.id);
  if (!listing) throw new Refusal('NOT_READY', 'It is not listed on this channel; list it there first.');
  return listing;
}

function moveOneStep(
  context: CommandContext,
  formatId: number,
  channelId: number,
  on: string | undefined,
): Done {
  const listing = listingOn(context, formatId, channelId);
  const next = nextSteps(listing.standing)[0];
  if (!next) throw new Refusal('STEP_REFUSED', 'Its listing there is gone; no step follows.');
  const { locked } = moveListing(context, { id: listing.id, to: next.to, on });
  return { changed: true, locks: locked.includes('form') || locked.includes('title') };
}

function carryOut(context: CommandContext, formatId: number, action: BulkAction): Done {
  switch (action.what) {
    case 'set price':
      return { changed: setPrice(context, formatId, action.price), locks: false };
    case 'list on channel': {
      const { channelId } = action;
      const listed = context.db.one(
        'SELECT 1 FROM listing WHERE format_id = ? AND channel_id = ?',
        formatId,
        channelId,
      );
      if (listed) return { changed: false, locks: false };
      listingCommands['listings.create'](context, { formatId, channelId });
      return { changed: true, locks: false };
    }
    case 'move one step':
      return moveOneStep(context, formatId, action.channelId, action.on);
    default:
      return { changed: changeEdition(context, formatId, action), locks: false };
  }
}

/** Does one format's part; what is refused leaves nothing of it behind. */
function attempt(context: CommandContext, formatId: number, action: BulkAction): Done | Refusal {
  const { db } = context;
  db.run('SAVEPOINT one_format');
  try {
    const done = carryOut(context, formatId, action);
    db.run('RELEASE one_format');
    return done;
  } catch (thrown) {
    const refusal = refusalOf(thrown);
    if (!(refusal instanceof Refusal)) throw thrown;
    db.run('ROLLBACK TO one_format');
    db.run('RELEASE one_format');
    return refusal;
  }
}

function nameOf(context: CommandContext, formatId: number): string {
  const format = context.db.one<{ id: number }>('SELECT id FROM format WHERE id = ?', formatId);
  if (!format) return `Format ${formatId}`;
  const stored = needFormat(context.db, formatId);
  const edition = editionById(context.db, stored.editionId);
  return `${edition ? editionLabel(edition) : ''} · ${formName(stored)}`;
}

function attemptAll(
  context: CommandContext,
  formatIds: readonly number[],
  action: BulkAction,
): OutputOf<'formats.bulk'> {
  const result: OutputOf<'formats.bulk'> = { done: 0, unchanged: 0, refused: 0, locks: 0, refusals: [] };
  for (const formatId of new Set(formatIds)) {
    const outcome = attempt(context, formatId, action);
    if (outcome instanceof Refusal) {
      result.refused += 1;
      if (result.refusals.length < NOT_SHOWN_AFTER)
        result.refusals.push({ formatId, name: nameOf(context, formatId), sentence: outcome.message });
    } else if (outcome.changed) result.done += 1;
    else result.unchanged += 1;
    if (!(outcome instanceof Refusal) && outcome.locks) result.locks += 1;
  }
  return result;
}

export const bulkCommands = {
  // A preview does all of it and takes it all back, so that it can never tell another story than the doing.
  'formats.bulk': (context, { formatIds, action, mode }) => {
    const { db } = context;
    db.run('SAVEPOINT all_formats');
    const result = attemptAll(context, formatIds, action);
    if (mode === 'preview') db.run('ROLLBACK TO all_formats');
    db.run('RELEASE all_formats');
    if (mode === 'all' && result.refused > 0) {
      const first = result.refusals[0];
      throw new Refusal(
        'NOT_READY',
        `Nothing was changed, since ${result.refused.toLocaleString('en')} of the formats cannot take it. The first is ${first?.name}: ${first?.sentence}`,
        'formatIds',
      );
    }
    return result;
  },
} satisfies Commands<'formats.bulk'>;
