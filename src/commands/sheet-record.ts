import { BLANK_EDITION, type EditionFields, subject } from '../contract/editions.ts';
import { BLANK_FORMAT, type FormatFields } from '../contract/formats.ts';
import { Refusal } from '../contract/refusal.ts';
import type { Settings } from '../contract/settings.ts';
import type { EditionPlan, PlannedRow, WorkPlan } from '../exchange/sheets/plan.ts';
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
import { assignNumber } from './number-allocation.ts';
import { listRow, sinceOf } from './sheet-listings.ts';

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

/** Tells the listener of one row or more. */
type Telling = () => void;

/** Thrown when an edition is not recorded because none of its rows was. */
class NothingLeft extends Error {}

/** The sentence of a refusal; what is no refusal goes on. */
function sentenceOf(error: unknown): string {
  const refusal = refusalOf(error);
  if (refusal instanceof Refusal && refusal.code !== 'CANCELLED' && refusal.code !== 'DISK_TROUBLE')
    return refusal.message;
  throw refusal;
}

/**
 * Records grouped rows, each for its own part: what one row does is taken back when that row is refused. Works are
 * first recorded together, which goes twice as fast, and apart only where one of their rows is refused.
 */
export class SheetRecorder {
  readonly made: Made = { works: 0, editions: 0, formats: 0, numbers: 0, listings: 0, outside: 0 };
  #isTogether = false;
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
    if (this.#recordTogether(works, loaded)) return;
    for (const work of works) for (const tell of this.#recordWork(work, loaded)) tell();
  }

  /** Records works where none of their rows is refused; answers whether that was so. */
  #recordTogether(works: readonly WorkPlan[], loaded: Loaded): boolean {
    const before = { ...this.made };
    this.#isTogether = true;
    try {
      const told = apart(this.#context.db, () => works.flatMap((work) => this.#recordWork(work, loaded)));
      for (const tell of told) tell();
      return true;
    } catch (error) {
      sentenceOf(error);
      Object.assign(this.made, before);
      return false;
    } finally {
      this.#isTogether = false;
    }
  }

  /** Does a part that is taken back by itself when it throws, unless all is taken back then. */
  #part<T>(work: () => T): T {
    return this.#isTogether ? work() : apart(this.#context.db, work);
  }

  /** Records a work; answers what is to be told of its rows. */
  #recordWork(work: WorkPlan, loaded: Loaded): Telling[] {
    const { db } = this.#context;
    const before = { ...this.made };
    const told: Telling[] = [];
    let recorded = 0;
    try {
      this.#part(() => {
        const workId = work.known?.id ?? addWork(db, work.title);
        for (const edition of work.editions)
          recorded += this.#recordEdition(workId, work, edition, loaded, told);
        if (recorded === 0 && work.known === null) throw new NothingLeft();
        if (work.known === null) this.made.works += 1;
      });
    } catch (error) {
      if (!(error instanceof NothingLeft)) throw error;
      Object.assign(this.made, before);
    }
    return told;
  }

  /** Records the rows of one edition; answers how many were. */
  #recordEdition(
    workId: number,
    work: WorkPlan,
    edition: EditionPlan,
    loaded: Loaded,
    told: Telling[],
  ): number {
    const before = { ...this.made };
    const outcomes: Telling[] = [];
    let recorded = 0;
    try {
      this.#part(() => {
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
      if (this.#isTogether) throw error;
      Object.assign(this.made, before);
      if (!(error instanceof NothingLeft)) {
        const sentence = sentenceOf(error);
        told.push(() => {
          for (const { row } of edition.rows) this.#listener.refused(row, sentence);
        });
        return 0;
      }
    }
    told.push(...outcomes);
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
      return this.#part(() => {
        const stored = formatId === null ? undefined : loaded.formats.get(formatId);
        if (stored === undefined) {
          this.#addFormat(editionId, row);
          return { what: 'new', changes: [] };
        }
        const changes = [...editionChanges, ...this.#changeFormat(stored, row, loaded)];
        return { what: changes.length > 0 ? 'changed' : 'same', changes };
      });
    } catch (error) {
      if (this.#isTogether) throw error;
      Object.assign(this.made, before);
      return sentenceOf(error);
    }
  }

  #addFormat(editionId: number, row: ReadRow): void {
    const form = row.format.form;
    if (form === undefined)
      throw new Refusal('BAD_INPUT', 'There is no form in this row; write paperback, hardcover or e-book.');
    const fields: FormatFields = { ...BLANK_FORMAT, ...row.format, form };
    checkFields(fields);
    const formatId = addFormatRow(this.#context.db, editionId, sinceOf(row, this.#context.today), fields);
    this.made.formats += 1;
    if (row.isbn13 !== null) this.#number(formatId, row, row.isbn13);
    this.made.listings += listRow(this.#context, this.#channels, formatId, row, []).length;
  }

  #number(formatId: number, row: ReadRow, isbn13: string): void {
    const { db, today } = this.#context;
    const on = sinceOf(row, this.#context.today);
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
    const listed = loaded.listings.get(stored.id) ?? [];
    const added = listRow(this.#context, this.#channels, stored.id, row, listed);
    this.made.listings += added.length;
    return [...changed, ...added.map((channel) => `on ${channel}`)];
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
