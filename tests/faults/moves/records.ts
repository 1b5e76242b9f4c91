import type { Dice, Maker, Move } from '../../support/history.ts';
import {
  editionEnded,
  editionListings,
  formatsOf,
  hasEnded,
  isLocked,
  listingsOf,
  lockedMore,
  numberOf,
  type World,
} from '../world.ts';

const FORMS = ['BC', 'BB', 'ED', 'AJ'] as const;
const missing = 9000;

const text = (dice: Dice, what: string) => `${what} ${dice.below(1_000_000)}`;

const createWork: Maker = (_world, dice, wrong) => {
  const title = text(dice, 'The Tide Table');
  const wrongs = [
    { title: ' ' },
    { title, language: 'english' },
    { title, ageFrom: 9, ageTo: 3 },
    { title, number: 0 },
  ];
  if (wrong) return { name: 'works.create', input: dice.of(wrongs), expect: 'BAD_INPUT' };
  return {
    name: 'works.create',
    input: { title, contributors: [{ role: 'A01', name: 'Maren Oskarsdal' }], keywords: ['tides'] },
    expect: 'ok',
    after: (next, { workId, editionId }: { workId: number; editionId: number }) => {
      next.works.set(workId, { title });
      next.editions.set(editionId, { workId, title, language: 'eng', replacesId: null, correcting: false });
    },
  };
};

const updateWork: Maker = (world, dice, wrong) => {
  const id = wrong ? missing : dice.of([...world.works.keys()]);
  if (id === undefined) return null;
  const title = text(dice, 'Kept under');
  return {
    name: 'works.update',
    input: { id, title },
    expect: wrong ? 'NOT_FOUND' : 'ok',
    after: (next) => next.works.set(id, { title }),
  };
};

const editionsOf = (world: World, workId: number) =>
  [...world.editions].filter(([, edition]) => edition.workId === workId).map(([id]) => id);

const removeWork: Maker = (world, dice) => {
  const id = dice.of([...world.works.keys()]);
  if (id === undefined) return null;
  const editions = editionsOf(world, id);
  const used =
    editions.some((edition) => formatsOf(world, edition).length > 0) ||
    [...world.tasks.values()].some((task) => task.workId === id);
  return {
    name: 'works.remove',
    input: { id },
    expect: used ? 'IN_USE' : 'ok',
    after: (next) => {
      next.works.delete(id);
      for (const edition of editions) next.editions.delete(edition);
    },
  };
};

const createEdition: Maker = (world, dice, wrong) => {
  const workId = wrong ? missing : dice.of([...world.works.keys()]);
  if (workId === undefined) return null;
  const title = text(dice, 'A Second Tide Table');
  return {
    name: 'editions.create',
    input: { workId, title },
    expect: wrong ? 'NOT_FOUND' : 'ok',
    after: (next, { editionId }: { editionId: number }) =>
      next.editions.set(editionId, { workId, title, language: 'eng', replacesId: null, correcting: false }),
  };
};

const updateEdition: Maker = (world, dice, wrong) => {
  const locked = [...world.editions.keys()].filter((id) => isLocked(world, id));
  const id = (wrong ? dice.of(locked) : undefined) ?? dice.of([...world.editions.keys()]);
  if (id === undefined) return null;
  const more = lockedMore(world, formatsOf(world, id));
  const title = text(dice, 'Retitled');
  const ended = editionEnded(world, id);
  const identity = isLocked(world, id) ? 'FIELD_LOCKED' : 'ok';
  const name = 'editions.update';
  const moves: Move[] = [
    {
      name,
      input: { id, title },
      expect: identity,
      after: (next) => {
        const edition = next.editions.get(id);
        if (edition) edition.title = title;
      },
    },
    {
      name,
      input: { id, contributors: [{ role: 'A12', name: text(dice, 'Ilse Quayle') }] },
      expect: identity,
    },
    { name, input: { id, seriesNumber: text(dice, 'volume') }, expect: identity },
    {
      name,
      input: { id, description: text(dice, 'About tides') },
      expect: ended || more.has('description') ? 'FIELD_LOCKED' : 'ok',
    },
    {
      name,
      input: { id, keywords: [text(dice, 'harbour'), 'tides'] },
      expect: ended ? 'FIELD_LOCKED' : 'ok',
    },
    { name, input: { id, number: 1000 }, expect: 'BAD_INPUT' },
  ];
  return dice.of(moves) ?? null;
};

const removeEdition: Maker = (world, dice) => {
  const id = dice.of([...world.editions.keys()]);
  if (id === undefined) return null;
  const used =
    formatsOf(world, id).length > 0 ||
    [...world.editions.values()].some((edition) => edition.replacesId === id) ||
    [...world.plans.values()].some((plan) => plan.editionId === id);
  return {
    name: 'editions.remove',
    input: { id },
    expect: used ? 'IN_USE' : 'ok',
    after: (next) => next.editions.delete(id),
  };
};

const isCorrectable = (world: World, id: number) =>
  isLocked(world, id) &&
  editionListings(world, id).every((listing) => listing.standing === 'unsent' && !listing.cleared);

const correct: Maker = (world, dice, wrong) => {
  const ids = [...world.editions.keys()];
  const id = (wrong ? undefined : dice.of(ids.filter((one) => isCorrectable(world, one)))) ?? dice.of(ids);
  if (id === undefined) return null;
  return {
    name: 'editions.correct',
    input: { id, reason: 'a misspelt name' },
    expect: isCorrectable(world, id) ? 'ok' : 'STEP_REFUSED',
    after: (next) => {
      const edition = next.editions.get(id);
      if (edition) edition.correcting = true;
    },
  };
};

const prepareNext: Maker = (world, dice, wrong) => {
  const sold = (id: number) =>
    editionListings(world, id).some((listing) => ['selling', 'leaving', 'gone'].includes(listing.standing));
  const ids = [...world.editions.keys()].filter((id) => sold(id) !== wrong);
  const editionId = dice.of(ids);
  if (editionId === undefined) return null;
  const carry = formatsOf(world, editionId).slice(0, 1 + dice.below(2));
  return {
    name: 'editions.prepareNext',
    input: { editionId, carry, add: [], takeNumbers: dice.below(2) === 0, carryListings: true },
    expect: wrong ? 'refused' : 'either',
  };
};

const createFormat: Maker = (world, dice, wrong) => {
  const editionId = dice.of([...world.editions.keys()]);
  if (editionId === undefined) return null;
  const form = dice.of(FORMS) ?? 'BC';
  const wrongs: Move[] = [
    { name: 'formats.create', input: { editionId, form: 'BC', caseKind: 'cloth' }, expect: 'BAD_INPUT' },
    { name: 'formats.create', input: { editionId, form, trimWidthUm: 129_000 }, expect: 'BAD_INPUT' },
    { name: 'formats.create', input: { editionId: missing, form }, expect: 'NOT_FOUND' },
    { name: 'formats.create', input: { editionId, form: 'Book' }, expect: 'BAD_INPUT' },
  ];
  if (wrong) return dice.of(wrongs) ?? null;
  return {
    name: 'formats.create',
    input: { editionId, form, pages: 64, prices: [{ currency: 'GBP', amountMinor: dice.below(5000) }] },
    expect: 'ok',
    after: (next, { formatId }: { formatId: number }) =>
      next.formats.set(formatId, { editionId, form, cancelled: false, note: '' }),
  };
};

const copyFormat: Maker = (world, dice, wrong) => {
  const fromFormatId = wrong ? missing : dice.of([...world.formats.keys()]);
  if (fromFormatId === undefined) return null;
  const form = dice.of(FORMS) ?? 'BC';
  const editionId = world.formats.get(fromFormatId)?.editionId ?? 0;
  return {
    name: 'formats.copy',
    input: { fromFormatId, form },
    expect: wrong ? 'NOT_FOUND' : 'ok',
    after: (next, { formatId }: { formatId: number }) =>
      next.formats.set(formatId, { editionId, form, cancelled: false, note: '' }),
  };
};

const updateFormat: Maker = (world, dice, wrong) => {
  const ids = [...world.formats.keys()];
  const sentOnes = ids.filter((id) => listingsOf(world, id).some((listing) => listing.sent));
  const id = (wrong ? dice.of(sentOnes) : undefined) ?? dice.of(ids);
  const format = id === undefined ? undefined : world.formats.get(id);
  if (id === undefined || !format) return null;
  const ended = hasEnded(world, id);
  const locked = ended || (sentOnes.includes(id) && isLocked(world, format.editionId));
  const form = FORMS.find((other) => other !== format.form) ?? 'BC';
  const note = text(dice, 'note');
  const change = (fields: object, changed: Partial<typeof format>, refused: boolean): Move => ({
    name: 'formats.update',
    input: { id, ...fields },
    expect: refused ? 'FIELD_LOCKED' : 'ok',
    after: (next) => Object.assign(next.formats.get(id) ?? {}, changed),
  });
  const pages = 1 + dice.below(19_000);
  const pagesLocked = ended || lockedMore(world, [id]).has('pages');
  return (
    dice.of([
      change({ form, caseKind: null }, { form }, locked),
      change({ note }, { note }, ended),
      change({ pages }, {}, pagesLocked),
    ]) ?? null
  );
};

const cancelFormat: Maker = (world, dice, wrong, today) => {
  const ids = [...world.formats.keys()];
  const onSale = (id: number) =>
    listingsOf(world, id).some((listing) => ['selling', 'leaving', 'gone'].includes(listing.standing));
  const cannot = (id: number) => onSale(id) || world.formats.get(id)?.cancelled === true;
  const id = dice.of(ids.filter((one) => cannot(one) === wrong)) ?? dice.of(ids);
  if (id === undefined) return null;
  const busy = [...world.tasks.values()].some(
    (task) => task.formatId === id && ['open', 'waiting'].includes(task.standing),
  );
  const move: Move = {
    name: 'formats.cancel',
    input: { id, reason: 'dropped from the list' },
    expect: cannot(id) ? 'STEP_REFUSED' : 'ok',
  };
  if (busy) return move;
  return {
    ...move,
    after: (next) => {
      const isbn = numberOf(next, id);
      const number = isbn === undefined ? undefined : next.numbers.get(isbn);
      if (number) number.standing = 'spent';
      for (const listing of listingsOf(next, id))
        if (listing.standing !== 'unsent') Object.assign(listing, { standing: 'unsent', lastOn: today });
      Object.assign(next.formats.get(id) ?? {}, { cancelled: true });
    },
  };
};

const removeFormat: Maker = (world, dice) => {
  const id = dice.of([...world.formats.keys()]);
  if (id === undefined) return null;
  const used =
    [...world.numbers.values()].some((number) => number.formatId === id) ||
    [...world.tasks.values()].some((task) => task.formatId === id);
  return {
    name: 'formats.remove',
    input: { id },
    expect: used ? 'IN_USE' : world.formats.get(id)?.cancelled ? 'FIELD_LOCKED' : 'ok',
    after: (next) => {
      next.formats.delete(id);
      for (const [listing, { formatId }] of next.listings) if (formatId === id) next.listings.delete(listing);
    },
  };
};

export const recordMoves = {
  ...{
    createWork,
    updateWork,
    removeWork,
    createEdition,
    updateEdition,
    removeEdition,
    correct,
    prepareNext,
  },
  ...{ createFormat, copyFormat, updateFormat, cancelFormat, removeFormat },
};
