import { Refusal } from '../contract/refusal.ts';
import { inChunks, readMessage } from '../exchange/onix/read.ts';
import { plainDescription } from '../exchange/onix/xhtml.ts';
import { type OnixPlan, planGroups } from '../records/onix-groups.ts';
import { readingHouse } from '../records/onix-house.ts';
import { type PlanRow, planRow } from '../records/onix-plan.ts';
import { AT_STANDING, type KeptPart, type ReadProduct } from '../rules/onix/products.ts';
import { writeEdition } from '../store/editions.ts';
import { formatById, writeFormat } from '../store/formats.ts';
import { writeParts } from '../store/onix-parts.ts';
import { withSearchLater } from '../store/search-later.ts';
import type { Commands, LongCommandContext } from './context.ts';
import { addEdition } from './editions.ts';
import { addFormat } from './formats.ts';
import { assignNumber } from './number-allocation.ts';
import { workCommands } from './works.ts';

type PlacedRow = OnixPlan['rows'][number];

/** Works and editions of the plan as they come to stand in the catalogue. */
interface Made {
  works: Map<string, number>;
  editions: Map<string, number>;
  /** Editions that a row of this message has spoken for. */
  spoken: Set<string>;
  told: {
    worksAdded: number;
    editionsAdded: number;
    formatsAdded: number;
    formatsChanged: number;
    lockedLeft: number;
    kept: number;
  };
}

/** The chosen rows; throws where one of them cannot be taken. */
function chosenRows(plan: OnixPlan, rows: readonly number[] | undefined): Map<number, PlacedRow> {
  if (rows === undefined) {
    const usual = plan.rows.filter(
      ({ state }) => state === 'new' || state === 'changed' || state === 'locked',
    );
    return new Map(usual.map((row) => [row.row, row]));
  }
  const all = new Map(plan.rows.map((row) => [row.row, row]));
  const wanted = new Set(rows);
  // The first of the wanted rows with a number, which the rows after it repeat.
  const first = new Map<string | null, number>();
  for (const { row, isbn13 } of plan.rows) if (wanted.has(row) && !first.has(isbn13)) first.set(isbn13, row);
  const chosen = new Map<number, PlacedRow>();
  for (const number of rows) {
    const row = all.get(number);
    if (!row) throw new Refusal('NOT_FOUND', `The message has no row ${number}.`, 'rows');
    const repeats = row.isbn13 !== null && first.get(row.isbn13) !== number;
    if (row.state === 'refused' || repeats)
      throw new Refusal(
        'NOT_READY',
        `Row ${number} (${row.isbn || 'no number'}) cannot be taken: ${row.notes[0] ?? 'see the preview.'} Leave the row out, or mend the file. Nothing was taken over.`,
        'rows',
      );
    chosen.set(number, row);
  }
  return chosen;
}

/** The work and edition a new product belongs to, made when they are first needed. */
function editionFor(context: LongCommandContext, row: PlacedRow, read: ReadProduct, made: Made): number {
  const known = made.editions.get(row.edition);
  if (known !== undefined) return known;
  const { db } = context;
  const fields = { ...read.edition, title: row.title };
  const id = (letter: string, key: string) =>
    new RegExp(`^${letter}\\d+$`).test(key) ? Number(key.slice(1)) : undefined;
  const workId = made.works.get(row.work) ?? id('w', row.work);
  const editionId = id('e', row.edition);
  if (editionId !== undefined) {
    made.editions.set(row.edition, editionId);
    return editionId;
  }
  if (workId === undefined) {
    const added = workCommands['works.create'](context, { ...fields, workNote: '' });
    made.works.set(row.work, added.workId);
    made.editions.set(row.edition, added.editionId);
    made.told.worksAdded += 1;
    made.told.editionsAdded += 1;
    return added.editionId;
  }
  const added = addEdition(db, workId, fields);
  made.works.set(row.work, workId);
  made.editions.set(row.edition, added);
  made.told.editionsAdded += 1;
  return added;
}

/** Keeps what has no field here; what is bound to a standing is bound to the one the format has now. */
function keepParts({ db }: LongCommandContext, formatId: number, read: ReadProduct, made: Made): void {
  const standing = formatById(db, formatId)?.standing ?? 'planned';
  const parts = read.kept.map((part: KeptPart) => ({
    ...part,
    key: part.key.replace(AT_STANDING, standing),
  }));
  writeParts(db, formatId, parts);
  made.told.kept += parts.length;
}

function addProduct(context: LongCommandContext, row: PlacedRow, read: ReadProduct, made: Made): void {
  const { db, today } = context;
  const editionId = editionFor(context, row, read, made);
  const formatId = addFormat(context, editionId, { ...read.format, form: row.form });
  assignNumber(db, today, { formatId, isbn: read.isbn13 ?? '', outsideBlocks: true });
  made.told.formatsAdded += 1;
  keepParts(context, formatId, read, made);
}

const without = <T extends object>(changes: T, locked: readonly string[]): T =>
  Object.fromEntries(Object.entries(changes).filter(([field]) => !locked.includes(field))) as T;

/** Takes over what may still change; the first row of an edition speaks for it. */
function changeProduct(
  context: LongCommandContext,
  row: PlacedRow,
  formatId: number,
  read: ReadProduct,
  made: Made,
): void {
  const { db } = context;
  const format = formatById(db, formatId);
  if (!format) throw new Refusal('NOT_FOUND', `There is no format ${formatId}.`, 'rows');
  const ended = format.standing === 'retired' || format.standing === 'cancelled';
  made.told.lockedLeft += row.lockedFields.length;
  const spoken = made.spoken.has(row.edition);
  const edition = spoken ? {} : without(row.editionChanges, row.lockedFields);
  const fields = ended ? {} : without(row.formatChanges, row.lockedFields);
  if (Object.keys(edition).length > 0) writeEdition(db, format.editionId, edition);
  if (Object.keys(fields).length > 0) writeFormat(db, formatId, fields);
  if (Object.keys(edition).length + Object.keys(fields).length > 0) made.told.formatsChanged += 1;
  // A partial update tells only of some blocks, so what was kept of the others stays.
  if (read.notification !== '04') keepParts(context, formatId, read, made);
}

/** Sets which edition follows which, where neither has another neighbour yet. */
function linkEditions({ db }: LongCommandContext, plan: OnixPlan, made: Made): void {
  for (const { editions } of plan.works)
    for (const { key, id, replaces } of editions) {
      const later = id ?? made.editions.get(key);
      const earlier =
        replaces === null
          ? undefined
          : (made.editions.get(replaces) ?? editions.find((one) => one.key === replaces)?.id);
      if (later === undefined || !earlier || later === earlier) continue;
      db.run(
        `UPDATE edition SET replaces_id = ?2 WHERE id = ?1 AND replaces_id IS NULL
           AND NOT EXISTS (SELECT 1 FROM edition WHERE replaces_id = ?2)
           AND ?1 IS NOT (SELECT replaces_id FROM edition WHERE id = ?2)`,
        later,
        earlier,
      );
    }
}

export const onixCommands = {
  'onix.import': (context, { file, rows: wanted, places }) => {
    const { db, files, step } = context;
    const house = readingHouse(db);
    const read = (each: (product: ReadProduct) => void) =>
      readMessage(
        inChunks((from, most) => files.part(file, from, most)),
        house,
        each,
      );
    const rows: PlanRow[] = [];
    const seen = new Map<string, number>();
    read((product) => {
      rows.push(planRow(db, product, seen, plainDescription));
      step(rows.length, null, 'products read');
    });
    const plan = planGroups(db, rows, places);
    const chosen = chosenRows(plan, wanted);
    const made: Made = {
      works: new Map(),
      editions: new Map(),
      spoken: new Set(),
      told: { worksAdded: 0, editionsAdded: 0, formatsAdded: 0, formatsChanged: 0, lockedLeft: 0, kept: 0 },
    };
    let done = 0;
    withSearchLater(db, step, () => {
      read((product) => {
        const row = chosen.get(product.row);
        if (!row) return;
        if (row.formatId === null) addProduct(context, row, product, made);
        else changeProduct(context, row, row.formatId, product, made);
        made.spoken.add(row.edition);
        done += 1;
        step(done, chosen.size, 'products taken over');
      });
      linkEditions(context, plan, made);
    });
    return made.told;
  },
} satisfies Commands<'onix.import'>;
