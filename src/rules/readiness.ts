import type { FileStanding } from '../contract/format-files.ts';
import type { Format } from '../contract/formats.ts';
import type { FormatReadiness, Need } from '../contract/readiness.ts';
import type { SheetItem, SheetItemName } from '../contract/submissions.ts';
import { fileKindName, fileKindsOf, madeOf } from '../contract/terms.ts';
import type { SheetFacts } from './sheets/facts.ts';
import { sheetItems } from './sheets/sheet.ts';

type Mend = Need['mend'];

interface Asked {
  label: string;
  at: Mend['at'];
  /** Worth having, but a channel lists a format without it. */
  soft?: boolean;
}

/**
 * What of a submission sheet has to be there before a format is sent (common practice, no source). What the
 * sheet holds beyond this, such as a series, may be empty for good reason.
 */
const ITEMS: Partial<Record<SheetItemName, Asked>> = {
  isbn: { label: 'Number', at: 'number' },
  title: { label: 'Title', at: 'edition' },
  contributors: { label: 'Contributors', at: 'edition' },
  language: { label: 'Language', at: 'edition' },
  imprint: { label: 'Imprint', at: 'edition' },
  description: { label: 'Description', at: 'edition' },
  subjects: { label: 'Categories (subjects)', at: 'edition' },
  keywords: { label: 'Keywords', at: 'edition' },
  trimSize: { label: 'Trim size', at: 'format' },
  pages: { label: 'Pages', at: 'format' },
  interior: { label: 'Printing and paper of the inside', at: 'format' },
  cover: { label: 'Cover finish', at: 'format', soft: true },
  duration: { label: 'Running time', at: 'format' },
  prices: { label: 'Price', at: 'format' },
  publicationDate: { label: 'Publication date', at: 'format' },
  onSaleDate: { label: 'On-sale date', at: 'format' },
  discount: { label: 'Trade discount', at: 'listing', soft: true },
  returns: { label: 'Returns', at: 'listing', soft: true },
};
const ORDER = Object.keys(ITEMS) as SheetItemName[];
/** Trade terms are asked for where printed copies are traded. */
const TRADE: ReadonlySet<SheetItemName> = new Set(['discount', 'returns']);

const nowhere = { listingId: null, fileKind: null };

interface Found {
  channel: string;
  listingId: number;
  items: SheetItem[];
}

/** The state of one item of one sheet: nothing there, something the channel would not take, or well. */
function stateOf(items: readonly SheetItem[], { soft }: Asked): Pick<Need, 'state' | 'detail'> {
  const filled = items.filter((item) => item.value.trim() !== '');
  if (filled.length === 0) return { state: soft ? 'care' : 'missing', detail: 'nothing is recorded' };
  const [problem] = filled.flatMap((item) => item.problems);
  if (problem !== undefined) return { state: 'care', detail: problem };
  const text = filled.map((item) => item.value).join('; ');
  return { state: 'ready', detail: text.length > 80 ? `${text.slice(0, 79)}…` : text };
}

/** One need over all channels: alike everywhere it is one line, else one for each channel that has its own trouble. */
function needsOf(of: SheetItemName, asked: Asked, found: readonly Found[]): Need[] {
  const asking = found
    .map(({ channel, listingId, items }) => ({
      channel,
      listingId,
      own: items.filter((item) => item.of === of),
    }))
    .filter(({ own }) => own.length > 0)
    .map(({ own, ...rest }) => ({ ...rest, ...stateOf(own, asked) }));
  const groups = Map.groupBy(asking, ({ state, detail, listingId }) =>
    asked.at === 'listing' && state !== 'ready' ? `${state} ${detail} ${listingId}` : `${state} ${detail}`,
  );
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (!first) return [];
    const everywhere = group.length === found.length && group.length > 1;
    return [
      {
        need: of,
        label: asked.label,
        state: first.state,
        detail: first.detail,
        channels: everywhere ? [] : group.map(({ channel }) => channel),
        mend: { ...nowhere, at: asked.at, listingId: asked.at === 'listing' ? first.listingId : null },
      },
    ];
  });
}

function fileNeeds(format: Format): Need[] {
  return fileKindsOf(madeOf(format.form)).map((kind) => {
    const file = format.files.find((one) => one.kind === kind && one.ended === null);
    const name = fileKindName(kind);
    return {
      need: `file ${kind}`,
      label: `Final ${name}`,
      state: file ? ('ready' as const) : ('missing' as const),
      detail: file ? `${file.fileName}, final on ${file.finalOn}` : 'no final file is recorded',
      channels: [],
      mend: { ...nowhere, at: 'file' as const, fileKind: kind },
    };
  });
}

function checkState({ checks, checkedName, checkedOn, open, reasoned }: FileStanding) {
  if (checks === 0) return { state: 'care' as const, detail: 'not checked yet' };
  if (checkedName === null)
    return { state: 'care' as const, detail: 'checked: other file than the final one' };
  if (open > 0)
    return {
      state: 'care' as const,
      detail: `checked on ${checkedOn}: ${open} ${open === 1 ? 'difference' : 'differences'} without a reason, so it cannot be cleared`,
    };
  const detail = reasoned > 0 ? 'what differs has its reason' : 'nothing differs';
  return { state: 'ready' as const, detail: `checked on ${checkedOn}: ${detail}` };
}

/** Whether the files that are there were held against the record. */
function checkNeeds(format: Format, files: readonly FileStanding[]): Need[] {
  return fileKindsOf(madeOf(format.form)).flatMap((kind) => {
    const file = files.find((one) => one.kind === kind);
    if (!file) return [];
    return [
      {
        need: `check ${kind}`,
        label: `Check of the ${fileKindName(kind)}`,
        ...checkState(file),
        channels: [],
        mend: { ...nowhere, at: 'check' as const, fileKind: kind },
      },
    ];
  });
}

/** What the product form itself needs to be told. */
function formNeeds(format: Format): Need[] {
  if (madeOf(format.form) === 'print') return [];
  return [
    {
      need: 'formDetail',
      label: 'File format',
      state: format.formDetail === null ? 'missing' : 'ready',
      detail: format.formDetail === null ? 'nothing is recorded' : format.name,
      channels: [],
      mend: { ...nowhere, at: 'format' },
    },
  ];
}

export interface ReadyListing {
  facts: SheetFacts;
  proof: 'none' | 'electronic' | 'physical';
  closedOn: string | null;
}

/** What is asked for that hangs on the channel itself. */
function channelNeeds(listings: readonly ReadyListing[]): Need[] {
  if (listings.length === 0)
    return [
      {
        need: 'listing',
        label: 'A channel',
        state: 'missing',
        detail: 'it is listed nowhere yet',
        channels: [],
        mend: { ...nowhere, at: 'add-listing' },
      },
    ];
  return listings.flatMap(({ facts, proof, closedOn }) => {
    const mend: Mend = { ...nowhere, at: 'listing', listingId: facts.listing.id };
    const channels = [facts.channel.name];
    const closed: Need = {
      need: 'channel',
      label: 'Channel',
      state: 'care',
      detail: `closed since ${closedOn}: remove the listing`,
      channels,
      mend,
    };
    const printed: Need = {
      need: 'proof',
      label: 'Printed proof',
      state: 'ready',
      detail: 'comes after sending: leave days for the post',
      channels,
      mend,
    };
    return [...(closedOn === null ? [] : [closed]), ...(proof === 'physical' ? [printed] : [])];
  });
}

/**
 * What a format needs before it is sent: the data every channel asks for, what each channel's own rules add, and
 * its final files. `listings` are those not yet sent anywhere, or all where every one was; `alone` stands in for
 * a channel where there is none; `files` are its final files with their checks.
 */
export function readinessOf(
  format: Format,
  listings: readonly ReadyListing[],
  alone: SheetFacts,
  files: readonly FileStanding[] = [],
): FormatReadiness {
  const asked = listings.length > 0 ? listings.map(({ facts }) => facts) : [alone];
  const found = asked.map((facts) => ({
    channel: facts.channel.name,
    listingId: facts.listing.id,
    items: sheetItems(facts),
  }));
  const traded = listings.length > 0 && madeOf(format.form) === 'print';
  const items = ORDER.filter((of) => traded || !TRADE.has(of)).flatMap((of) => {
    const rule = ITEMS[of];
    return rule ? needsOf(of, rule, found) : [];
  });
  const unnamed = listings.length === 0 ? items.map((need) => ({ ...need, channels: [] })) : items;
  const needs = [
    ...unnamed,
    ...formNeeds(format),
    ...fileNeeds(format),
    ...checkNeeds(format, files),
    ...channelNeeds(listings),
  ];
  return {
    formatId: format.id,
    name: format.name,
    standing: format.standing,
    ready: needs.every((need) => need.state !== 'missing'),
    needs,
  };
}
