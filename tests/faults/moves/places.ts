import type { Maker, Move } from '../../support/history.ts';
import { hasEnded, numberOf, type World } from '../world.ts';

const missing = 9000;

const createChannel: Maker = (world, dice, wrong) => {
  const named = dice.of([...world.channels.values()]);
  const name = `Quayside ${dice.below(40)}`;
  const locksMore = dice.oneOf<string[]>([], [], ['description'], ['pages', 'paper']);
  // The file tells names apart by case beyond ASCII (SQLite's NOCASE): 'É' and 'é' are two names.
  const folded = (name: string) => name.replaceAll(/[A-Z]/g, (letter) => letter.toLowerCase());
  const isTaken = (wanted: string) =>
    [...world.channels.values()].some((channel) => folded(channel.name) === folded(wanted));
  const wrongs: Move[] = [
    { name: 'channels.create', input: { name, requestTemplate: '{nonsense}' }, expect: 'refused' },
    { name: 'channels.create', input: { name, leadDays: -1 }, expect: 'BAD_INPUT' },
    { name: 'channels.create', input: { name, locksMore: ['title'] }, expect: 'BAD_INPUT' },
  ];
  if (named) {
    const upper = named.name.replaceAll(/[a-z]/g, (letter) => letter.toUpperCase());
    wrongs.push({ name: 'channels.create', input: { name: upper }, expect: 'ALREADY_EXISTS' });
  }
  if (wrong) return dice.of(wrongs) ?? null;
  return {
    name: 'channels.create',
    input: { name, locksMore, proof: dice.oneOf('none', 'electronic', 'physical') },
    expect: isTaken(name) ? 'ALREADY_EXISTS' : 'ok',
    after: (next, { channelId }: { channelId: number }) =>
      next.channels.set(channelId, { name, closed: false, locksMore }),
  };
};

const updateChannel: Maker = (world, dice, wrong, today) => {
  const id = wrong ? missing : dice.of([...world.channels.keys()]);
  if (id === undefined) return null;
  const closedOn = dice.oneOf(today, null, null);
  return {
    name: 'channels.update',
    input: { id, closedOn },
    expect: wrong ? 'NOT_FOUND' : 'ok',
    after: (next) => Object.assign(next.channels.get(id) ?? {}, { closed: closedOn !== null }),
  };
};

const removeChannel: Maker = (world, dice) => {
  const id = dice.of([...world.channels.keys()]);
  if (id === undefined) return null;
  const used = [...world.listings.values()].some((listing) => listing.channelId === id);
  return {
    name: 'channels.remove',
    input: { id },
    expect: used ? 'IN_USE' : 'ok',
    after: (next) => next.channels.delete(id),
  };
};

function expectedOfListing(world: World, formatId: number, channelId: number): Move['expect'] {
  const channel = world.channels.get(channelId);
  if (!world.formats.has(formatId) || !channel) return 'NOT_FOUND';
  if (channel.closed || hasEnded(world, formatId)) return 'STEP_REFUSED';
  const there = [...world.listings.values()].some(
    (listing) => listing.formatId === formatId && listing.channelId === channelId,
  );
  return there ? 'ALREADY_EXISTS' : 'ok';
}

const createListing: Maker = (world, dice, wrong) => {
  const pairs = [...world.formats.keys(), ...(wrong ? [missing] : [])].flatMap((formatId) =>
    [...world.channels.keys(), ...(wrong ? [missing] : [])].map((channelId) => ({ formatId, channelId })),
  );
  const fitting = pairs.filter(
    (pair) => (expectedOfListing(world, pair.formatId, pair.channelId) === 'ok') !== wrong,
  );
  const pair = dice.of(fitting) ?? dice.of(pairs);
  if (!pair) return null;
  return {
    name: 'listings.create',
    input: pair,
    expect: expectedOfListing(world, pair.formatId, pair.channelId),
    after: (next, { listingId }: { listingId: number }) =>
      next.listings.set(listingId, {
        ...pair,
        standing: 'unsent',
        sent: false,
        cleared: false,
        lastOn: null,
        note: '',
      }),
  };
};

const updateListing: Maker = (world, dice, wrong) => {
  const gone = [...world.listings].filter(([, listing]) => listing.standing === 'gone').map(([id]) => id);
  const id = (wrong ? dice.of(gone) : undefined) ?? dice.of([...world.listings.keys()]);
  if (id === undefined) return null;
  const locked = gone.includes(id) || hasEnded(world, world.listings.get(id)?.formatId ?? 0);
  const note = `note ${dice.below(1_000_000)}`;
  return {
    name: 'listings.update',
    input: { id, note, ...(wrong ? { discountBp: dice.below(10_001) } : {}) },
    expect: locked ? 'FIELD_LOCKED' : 'ok',
    after: (next) => Object.assign(next.listings.get(id) ?? {}, { note }),
  };
};

const removeListing: Maker = (world, dice) => {
  const [id, listing] = dice.of([...world.listings]) ?? [];
  if (id === undefined || !listing) return null;
  const used = [...world.tasks.values()].some((task) => task.listingId === id);
  const retired = hasEnded(world, listing.formatId) && !world.formats.get(listing.formatId)?.cancelled;
  return {
    name: 'listings.remove',
    input: { id },
    expect: listing.sent ? 'FIELD_LOCKED' : used ? 'IN_USE' : retired ? 'FIELD_LOCKED' : 'ok',
    after: (next) => next.listings.delete(id),
  };
};

const ORDER = ['unsent', 'sent', 'proof', 'cleared', 'selling', 'leaving', 'gone'];
const BACK: Record<string, string> = {
  sent: 'unsent',
  proof: 'unsent',
  cleared: 'unsent',
  leaving: 'selling',
};

/** The standings passed through, by the vocabulary's own order; null where there is no way. */
function way(from: string, to: string): string[] | null {
  if (BACK[from] === to) return [to];
  const [start, end] = [ORDER.indexOf(from), ORDER.indexOf(to)];
  return end > start ? ORDER.slice(start + 1, end + 1) : null;
}

function expectedOfMove(world: World, formatId: number, steps: string[] | null): Move['expect'] {
  if (steps === null || hasEnded(world, formatId)) return 'STEP_REFUSED';
  return steps.includes('sent') && numberOf(world, formatId) === undefined ? 'NOT_READY' : 'ok';
}

const move: Maker = (world, dice, wrong, today) => {
  const fits = ([, listing]: [number, { formatId: number }]) => !hasEnded(world, listing.formatId);
  const all = [...world.listings];
  const [id, listing] = dice.of(wrong ? all : all.filter(fits)) ?? [];
  if (id === undefined || !listing) return null;
  const name = 'listings.move';
  const choice = dice.below(4);
  if (wrong && choice === 0) return { name, input: { id, to: 'flying' }, expect: 'BAD_INPUT' };
  if (wrong && choice === 1)
    return { name, input: { id, to: dice.of(ORDER), on: '2100-01-01' }, expect: 'refused' };
  // Mostly one step at a time, so that histories are long.
  const near = ORDER.slice(0, ORDER.indexOf(listing.standing) + 2 + dice.below(2));
  const reachable = near.filter((to) => way(listing.standing, to) !== null);
  const to = (wrong ? dice.of(ORDER) : dice.of(reachable)) ?? 'sent';
  const steps = way(listing.standing, to);
  const busy = [...world.tasks.values()].some(
    (task) => task.listingId === id && ['open', 'waiting'].includes(task.standing),
  );
  const moved: Move = { name, input: { id, to }, expect: expectedOfMove(world, listing.formatId, steps) };
  if (busy) return moved;
  return {
    ...moved,
    after: (next) => {
      const sent = steps?.includes('sent') === true;
      const changed = next.listings.get(id);
      if (changed)
        Object.assign(changed, {
          standing: to,
          lastOn: today,
          sent: changed.sent || sent,
          cleared: changed.cleared || steps?.includes('cleared') === true,
        });
      const edition = next.editions.get(next.formats.get(listing.formatId)?.editionId ?? 0);
      if (edition && sent) edition.correcting = false;
    },
  };
};

export const placeMoves = {
  ...{ createChannel, updateChannel, removeChannel },
  ...{ createListing, updateListing, removeListing, move },
};
