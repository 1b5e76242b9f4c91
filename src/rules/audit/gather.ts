import { formName } from '../../contract/terms.ts';
import { shownIsbn } from '../isbn/index.ts';
import { editionLabel } from '../labels.ts';
import type {
  AuditSettings,
  BlockRow,
  EditionFacts,
  EditionRow,
  FactRows,
  Facts,
  FormatFacts,
  ListingFacts,
  NumberFacts,
  TaskFacts,
  WorkFacts,
} from './facts.ts';

function byId<T extends { id: number }>(rows: Iterable<T>): Map<number, T> {
  const map = new Map<number, T>();
  for (const row of rows) map.set(row.id, row);
  return map;
}

/** Finds the block that a number's digits fall in; blocks never overlap. */
function blockFinder(blocks: readonly BlockRow[]): (isbn13: string) => BlockRow | null {
  const byDigits = new Map(blocks.map((block) => [block.digits, block]));
  const lengths = [...new Set(blocks.map((block) => block.digits.length))];
  return (isbn13) => {
    for (const length of lengths) {
      const block = byDigits.get(isbn13.slice(0, length));
      if (block) return block;
    }
    return null;
  };
}

/**
 * The editions of a work, the earliest first: by edition number; one without a number comes after the edition
 * it replaces and counts as a first edition otherwise. Ties stand as they were recorded.
 */
function inOrder(editions: readonly EditionRow[]): EditionRow[] {
  const known = byId(editions);
  const ranks = new Map<number, number>();
  const rank = (edition: EditionRow): number => {
    const done = ranks.get(edition.id);
    if (done !== undefined) return done;
    // Set first, so that a damaged file whose editions replace each other in a ring still ends.
    ranks.set(edition.id, edition.number ?? 1);
    if (edition.number === null && edition.replacesId !== null) {
      const before = known.get(edition.replacesId);
      if (before) ranks.set(edition.id, rank(before) + 1);
    }
    return ranks.get(edition.id) ?? 1;
  };
  return [...editions].sort((a, b) => rank(a) - rank(b) || a.id - b.id);
}

/** A title as SQLite compares it with NOCASE: letters of ASCII in lower case, all others as they are. */
function folded(title: string): string {
  return title.replace(/[A-Z]+/g, (letters) => letters.toLowerCase());
}

function joinEditions(rows: FactRows): { works: WorkFacts[]; editions: Map<number, EditionFacts> } {
  const ofWork = Map.groupBy(rows.editions, (edition) => edition.workId);
  const editions = new Map<number, EditionFacts>();
  const works = rows.works.map((row): WorkFacts => {
    const work: WorkFacts = { ...row, place: folded(row.title), editions: [] };
    for (const own of inOrder(ofWork.get(row.id) ?? [])) {
      const edition: EditionFacts = {
        ...own,
        label: editionLabel(own),
        work,
        contributors: [],
        formats: [],
        replaces: null,
        release: null,
        retirement: null,
        place: work.editions.length,
      };
      work.editions.push(edition);
      editions.set(edition.id, edition);
    }
    return work;
  });
  for (const edition of editions.values())
    if (edition.replacesId !== null) edition.replaces = editions.get(edition.replacesId) ?? null;
  for (const row of rows.contributors) editions.get(row.editionId)?.contributors.push(row);
  for (const plan of rows.plans) {
    const edition = editions.get(plan.editionId);
    if (edition) edition[plan.kind] = plan;
  }
  return { works, editions };
}

function joinFormats(rows: FactRows, editions: Map<number, EditionFacts>): Map<number, FormatFacts> {
  for (const row of rows.formats) {
    const edition = editions.get(row.editionId);
    if (!edition) continue;
    const name = formName(row);
    const label = `${edition.label} · ${name}`;
    edition.formats.push({
      ...row,
      edition,
      label,
      name,
      numbers: [],
      number: null,
      prices: [],
      files: [],
      listings: [],
    });
  }
  const formats = new Map<number, FormatFacts>();
  for (const edition of editions.values())
    for (const format of edition.formats) formats.set(format.id, format);
  for (const price of rows.prices) formats.get(price.formatId)?.prices.push(price);
  for (const file of rows.files) formats.get(file.formatId)?.files.push(file);
  return formats;
}

function joinNumbers(rows: FactRows, formats: Map<number, FormatFacts>): NumberFacts[] {
  const find = blockFinder(rows.blocks);
  return rows.numbers.map((row) => {
    const format = row.formatId === null ? null : (formats.get(row.formatId) ?? null);
    const written = shownIsbn(row.isbn13);
    const number: NumberFacts = { ...row, written, format, block: find(row.isbn13) };
    if (format) {
      format.numbers.push(number);
      if (!format.number && number.standing !== 'spent') format.number = number;
    }
    return number;
  });
}

function joinListings(rows: FactRows, formats: Map<number, FormatFacts>): Map<number, ListingFacts> {
  const channels = byId(rows.channels);
  for (const row of rows.listings) {
    const format = formats.get(row.formatId);
    const channel = channels.get(row.channelId);
    if (!format || !channel) continue;
    const label = `${format.label} on ${channel.name}`;
    format.listings.push({ ...row, format, channel, label, steps: [], differs: null });
  }
  const listings = new Map<number, ListingFacts>();
  for (const format of formats.values())
    for (const listing of format.listings) listings.set(listing.id, listing);
  for (const row of rows.differences) {
    const listing = listings.get(row.listingId);
    if (listing) listing.differs = row;
  }
  for (const step of rows.steps) listings.get(step.listingId)?.steps.push(step);
  return listings;
}

/**
 * Joins the rows of a catalogue file into facts; linear in the rows. Rows whose parent is missing (a damaged
 * file, or a past day on which it did not exist) are left out, tasks of a plan that is not in force too.
 */
export function gatherFacts(
  rows: FactRows,
  days: { day: string; today: string },
  settings: AuditSettings,
): Facts {
  const { works, editions } = joinEditions(rows);
  const formats = joinFormats(rows, editions);
  const numbers = joinNumbers(rows, formats);
  const listings = joinListings(rows, formats);
  const workById = byId(works);
  const plans = byId(rows.plans);
  const of = <T>(map: Map<number, T>, id: number | null): T | null =>
    id === null ? null : (map.get(id) ?? null);
  const known = (map: Map<number, unknown>, id: number | null) => id === null || map.has(id);
  const tasks = rows.tasks
    .filter((task) => known(plans, task.planId) && known(workById, task.workId))
    .filter((task) => known(editions, task.editionId) && known(formats, task.formatId))
    .filter((task) => known(listings, task.listingId))
    .map((task): TaskFacts => {
      const listing = of(listings, task.listingId);
      const format = of(formats, task.formatId) ?? listing?.format ?? null;
      const edition = of(editions, task.editionId) ?? format?.edition ?? null;
      return { ...task, listing, format, edition, work: of(workById, task.workId) ?? edition?.work ?? null };
    });
  return {
    day: days.day,
    past: days.day < days.today,
    settings,
    blocks: rows.blocks,
    channels: rows.channels,
    printCards: rows.printCards,
    works,
    editions: [...editions.values()],
    formats: [...formats.values()],
    listings: [...listings.values()],
    numbers,
    tasks,
  };
}
