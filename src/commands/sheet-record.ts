import { BLANK_EDITION, type EditionFields, subject } from '../contract/editions.ts';
import { BLANK_FORMAT, type FormatFields } from '../contract/formats.ts';
import { Refusal } from '../contract/refusal.ts';
import type { Settings } from '../contract/settings.ts';
import type { ListingStanding } from '../contract/terms.ts';
import type { EditionPlan, PlannedRow, WorkPlan } from '../exchange/sheets/group.ts';
import type { ReadRow } from '../exchange/sheets/read-row.ts';
import { changesOf } from '../rules/changes.ts';
import { editionsByIds, type StoredEdition } from '../store/editions.ts';
import { formatsByIds, type StoredFormat } from '../store/formats.ts';
import { listingsOfFormats, type StoredListing } from '../store/listings.ts';
import { addEditionRow, addFormatRow, addWork, apart } from '../store/new-records.ts';
import { insertNumber } from '../store/numbers.ts';
import { refusalOf } from '../store/sqlite-errors.ts';
import type { CommandContext } from './context.ts';
import { checkAges, editionCommands } from './editions.ts';
import { checkFields, formatCommands } from './formats.ts';
import { moveListing } from './listing-steps.ts';
import { listingCommands } from './listings.ts';
import { assignNumber } from './number-allocation.ts';

/** What came of one row. */
export interface RowOutcome {
  what: 'new' | 'changed' | 'same';
  changes: string[];
}

/** What an import has made so far. */
export interface Made {
  works: number;
  editions: number;
  formats: number;
  numbers: number;
  listings: number;
  /** Numbers taken that lie in no recorded block. */
  outside: number;
}

interface NewListing {
  id: number;
  channel: string;
  to: ListingStanding;
  on: string;
}

/** Hears what came of each row, in the order in which rows are recorded. */
export interface Listener {
  done(row: ReadRow, outcome: RowOutcome): void;
  refused(row: ReadRow, message: string): void;
}

/** What is known of the formats and editions that some plans are about. */
interface Loaded {
  editions: Map<number, StoredEdition>;
  formats: Map<number, StoredFormat>;
  listings: Map<number, StoredListing[]>;
}

/** Thrown when an edition is not recorded because none of its rows was. */
class NothingLeft extends Error {}

/** The sentence of a refusal; what is no refusal goes on. */
function sentenceOf(error: unknown): string {
  const refusal = refusalOf(error);
  if (refusal instanceof Refusal && refusal.code !== 'CANCELLED' && refusal.code !== 'DISK_TROUBLE')
    return refusal.message;
  throw refusal;
}

/** Records grouped rows, each for its own part: what one row does is taken back when that row is refused. */
export class SheetRecorder {
  readonly made: Made = { works: 0, editions: 0, formats: 0, numbers: 0, listings: 0, outside: 0 };
  readonly #context: CommandContext;
  readonly #settings: Settings;
  readonly #channels: ReadonlyMap<string, number>;
  readonly #listener: Listener;

  constructor(
    context: CommandContext,
    settings: Settings,
    channels: ReadonlyMap<string, number>,
    listener: Listener,
  ) {
    this.#context = context;
    this.#settings = settings;
    this.#channels = channels;
    this.#listener = listener;
  }

  /** Records some works; those that the catalogue has are loaded together. */
  record(works: readonly WorkPlan[]): void {
    const editions = works.flatMap((work) => work.editions);
    const { db } = this.#context;
    const formatIds = editions.flatMap(({ rows }) => rows.flatMap(({ formatId }) => formatId ?? []));
    const ids = editions.flatMap(({ known }) => known?.id ?? []);
    const loaded: Loaded = {
      editions: new Map(editionsByIds(db, ids).map((stored) => [stored.id, stored])),
      formats: formatsByIds(db, formatIds),
      listings: Map.groupBy(listingsOfFormats(db, formatIds), (listing) => listing.formatId),
    };
    for (const work of works) this.#recordWork(work, loaded);
  }

  #recordWork(work: WorkPlan, loaded: Loaded): void {
    const { db } = this.#context;
    const before = { ...this.made };
    let recorded = 0;
    try {
      apart(db, () => {
        const workId = work.known?.id ?? addWork(db, work.title);
        for (const edition of work.editions) recorded += this.#recordEdition(workId, work, edition, loaded);
        if (recorded === 0 && work.known === null) throw new NothingLeft();
        if (work.known === null) this.made.works += 1;
      });
    } catch (error) {
      if (!(error instanceof NothingLeft)) throw error;
      Object.assign(this.made, before);
    }
  }

  /** Records the rows of one edition; answers how many were. */
  #recordEdition(workId: number, work: WorkPlan, edition: EditionPlan, loaded: Loaded): number {
    const { db } = this.#context;
    const before = { ...this.made };
    const outcomes: (() => void)[] = [];
    let recorded = 0;
    try {
      apart(db, () => {
        const { editionId, changed } = this.#writeEdition(workId, work, edition, loaded);
        for (const planned of edition.rows) {
          const outcome = this.#recordRow(editionId, planned, changed, loaded);
          outcomes.push(() =>
            typeof outcome === 'string'
              ? this.#listener.refused(planned.row, outcome)
              : this.#listener.done(planned.row, outcome),
          );
          if (typeof outcome !== 'string') recorded += 1;
        }
        if (recorded === 0 && edition.known === null) throw new NothingLeft();
      });
    } catch (error) {
      Object.assign(this.made, before);
      if (!(error instanceof NothingLeft)) {
        const sentence = sentenceOf(error);
        for (const { row } of edition.rows) this.#listener.refused(row, sentence);
        return 0;
      }
    }
    for (const tell of outcomes) tell();
    return recorded;
  }

  /** Adds the edition, or changes what its rows say otherwise; answers its id and the changed fields. */
  #writeEdition(workId: number, work: WorkPlan, plan: EditionPlan, loaded: Loaded) {
    const { db } = this.#context;
    for (const one of plan.fields.subjects ?? []) {
      const parsed = subject.safeParse(one);
      if (!parsed.success)
        throw new Refusal('BAD_INPUT', `Subject ${one.code}: ${parsed.error.issues[0]?.message ?? ''}`);
    }
    if (plan.known === null) {
      const { language, imprint } = this.#settings;
      const fields: EditionFields = {
        ...BLANK_EDITION,
        language,
        imprint,
        title: work.title,
        ...plan.fields,
      };
      checkAges(fields);
      this.made.editions += 1;
      return { editionId: addEditionRow(db, workId, fields), changed: [] };
    }
    const { id } = plan.known;
    const stored = loaded.editions.get(id);
    // A first edition without a number is called number 1 in sheets; that is no change.
    const { number, ...rest } = plan.fields;
    const wanted = stored && (stored.number ?? 1) === number ? rest : plan.fields;
    const changes = stored ? changesOf<EditionFields>(stored, wanted) : {};
    if (Object.keys(changes).length === 0) return { editionId: id, changed: [] };
    const { changed } = editionCommands['editions.update'](this.#context, { id, ...changes });
    return { editionId: id, changed };
  }

  /** Records one row; answers what came of it, or the sentence with which it is refused. */
  #recordRow(
    editionId: number,
    { row, formatId }: PlannedRow,
    editionChanges: string[],
    loaded: Loaded,
  ): RowOutcome | string {
    const before = { ...this.made };
    try {
      return apart(this.#context.db, () => {
        const stored = formatId === null ? undefined : loaded.formats.get(formatId);
        if (stored === undefined) {
          this.#addFormat(editionId, row);
          return { what: 'new', changes: [] };
        }
        const changes = [...editionChanges, ...this.#changeFormat(stored, row, loaded)];
        return { what: changes.length > 0 ? 'changed' : 'same', changes };
      });
    } catch (error) {
      Object.assign(this.made, before);
      return sentenceOf(error);
    }
  }

  /** The day on which something of the past is taken to have begun: its publication, where that is past. */
  #since(row: ReadRow): string {
    const { today } = this.#context;
    const day = row.format.publicationDate ?? row.format.onSaleDate ?? today;
    if (day > today) return today;
    return day;
  }

  #addFormat(editionId: number, row: ReadRow): void {
    const form = row.format.form;
    if (form === undefined)
      throw new Refusal('BAD_INPUT', 'There is no form in this row; write paperback, hardcover or e-book.');
    const fields: FormatFields = { ...BLANK_FORMAT, ...row.format, form };
    checkFields(fields);
    const formatId = addFormatRow(this.#context.db, editionId, this.#since(row), fields);
    this.made.formats += 1;
    if (row.isbn13 !== null) this.#number(formatId, row, row.isbn13);
    this.#list(formatId, row, []);
  }

  #number(formatId: number, row: ReadRow, isbn13: string): void {
    const { db, today } = this.#context;
    const on = this.#since(row);
    if (db.one('SELECT 1 FROM number WHERE isbn13 = ?', isbn13) === undefined)
      insertNumber(db, { isbn13, formatId, assignedOn: on });
    else assignNumber(db, today, { formatId, isbn: isbn13, outsideBlocks: true, on });
    this.made.numbers += 1;
    if (db.one('SELECT 1 FROM number WHERE isbn13 = ? AND block_id IS NULL', isbn13)) this.made.outside += 1;
  }

  /** Changes a format where the row says otherwise; answers the names of what changed. */
  #changeFormat(stored: StoredFormat, row: ReadRow, loaded: Loaded): string[] {
    const { prices, ...fields } = row.format;
    const wanted = prices === undefined ? fields : { ...fields, prices: withPrices(stored.prices, prices) };
    const changes = changesOf<FormatFields>(stored, wanted);
    const changed = Object.keys(changes);
    if (changed.length > 0) formatCommands['formats.update'](this.#context, { id: stored.id, ...changes });
    if (row.isbn13 !== null && row.isbn13 !== stored.isbn13) {
      this.#number(stored.id, row, row.isbn13);
      changed.push('isbn');
    }
    return [...changed, ...this.#list(stored.id, row, loaded.listings.get(stored.id) ?? [])];
  }

  /** Lists a format on the channels the row names; answers which are new. */
  #list(formatId: number, row: ReadRow, listed: readonly StoredListing[]): string[] {
    const added: NewListing[] = [];
    for (const { channel, standing, on } of row.listings) {
      const channelId = this.#channels.get(channel);
      if (channelId === undefined) throw new Refusal('NOT_FOUND', `There is no channel called ${channel}.`);
      const known = listed.find((listing) => listing.channelId === channelId);
      if (known) {
        if (standing === 'unsent' || known.standing === standing) continue;
        throw new Refusal(
          'STEP_REFUSED',
          `This format stands at ${known.standing} on ${channel}, not at ${standing}; move it on the Work screen, where each step has its day.`,
        );
      }
      const { listingId: id } = listingCommands['listings.create'](this.#context, { formatId, channelId });
      this.made.listings += 1;
      added.push({ id, channel, to: standing, on: on ?? this.#since(row) });
    }
    this.#move(added);
    return added.map(({ channel }) => `on ${channel}`);
  }

  /** Moves new listings to where they stand: all of them on sale first, since a format that has left takes no step. */
  #move(listings: readonly NewListing[]): void {
    const left = (to: ListingStanding) => to === 'leaving' || to === 'gone';
    for (const { id, to, on } of listings)
      if (to !== 'unsent') moveListing(this.#context, { id, to: left(to) ? 'selling' : to, on, note: '' });
    for (const { id, to, on } of listings) if (left(to)) moveListing(this.#context, { id, to, on, note: '' });
  }
}

/** The prices of a format with those of a row in their place: one a currency, by currency. */
function withPrices(
  now: FormatFields['prices'],
  said: NonNullable<FormatFields['prices']>,
): FormatFields['prices'] {
  const kept = now.filter(({ currency }) => !said.some((price) => price.currency === currency));
  return [...kept, ...said].sort((a, b) => (a.currency < b.currency ? -1 : 1));
}
