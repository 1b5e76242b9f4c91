import { and, asc, gt, inArray, isNull, or, type SQL, type SQLWrapper, sql } from 'drizzle-orm';
import type { FormatStanding } from '../contract/terms.ts';
import type { ReadDb } from './connection.ts';
import { printCards } from './print-cards.ts';
import { fileStandings } from './proof-checks.ts';
import {
  channel,
  edition,
  editionContributor,
  format,
  formatPrice,
  listing,
  listingStep,
  number,
  numberBlock,
  plan,
  task,
  work,
} from './schema.ts';

// All that the audit looks at, read whole: one query a table, however large the catalogue. On a rewound
// connection the same statements read the tables of the past day.

/** The works whose rows are read; all of them when none are named. */
type Works = readonly number[] | undefined;

const inWorks = (works: Works) => sql`(SELECT value FROM json_each(${JSON.stringify(works ?? [])}))`;
const editionsIn = (works: Works) => sql`(SELECT id FROM edition WHERE work_id IN ${inWorks(works)})`;
const formatsIn = (works: Works) => sql`(SELECT id FROM format WHERE edition_id IN ${editionsIn(works)})`;
const listingsIn = (works: Works) => sql`(SELECT id FROM listing WHERE format_id IN ${formatsIn(works)})`;

/** `column IN (…)` where works are named, otherwise no condition at all. */
const within = (works: Works, column: SQLWrapper, ids: (works: Works) => SQL): SQL | undefined =>
  works === undefined ? undefined : sql`${column} IN ${ids(works)}`;

const rowsOf = (table: 'edition_subject' | 'edition_keyword') =>
  sql<number>`(SELECT count(*) FROM ${sql.identifier(table)} x WHERE x.edition_id = "edition"."id")`;

function readEditions(db: ReadDb, works: Works) {
  const editions = db.orm
    .select({
      id: edition.id,
      workId: edition.workId,
      number: edition.number,
      statement: edition.statement,
      title: edition.title,
      language: edition.language,
      imprint: edition.imprint,
      series: edition.series,
      seriesNumber: edition.seriesNumber,
      descriptionLength: sql<number>`length(trim(${edition.description}))`,
      subjects: rowsOf('edition_subject'),
      keywords: rowsOf('edition_keyword'),
      audience: edition.audience,
      ageFrom: edition.ageFrom,
      ageTo: edition.ageTo,
      replacesId: edition.replacesId,
    })
    .from(edition)
    .where(within(works, edition.workId, inWorks))
    .orderBy(asc(edition.id))
    .all();
  const contributors = db.orm
    .select({
      editionId: editionContributor.editionId,
      role: editionContributor.role,
      name: editionContributor.name,
    })
    .from(editionContributor)
    .where(within(works, editionContributor.editionId, editionsIn))
    .orderBy(asc(editionContributor.editionId), asc(editionContributor.position))
    .all();
  const titles = db.orm
    .select({ id: work.id, title: work.title })
    .from(work)
    .where(within(works, work.id, inWorks))
    .orderBy(sql`${work.title} COLLATE NOCASE`, asc(work.id))
    .all();
  return { works: titles, editions, contributors };
}

/** Where formats stand; of named works only their own rows are read. */
function readStandings(db: ReadDb, works: Works): { id: number; standing: FormatStanding }[] {
  const standings = 'SELECT format_id AS id, standing FROM format_standing';
  if (works === undefined) return db.all(standings);
  return db.all(
    `${standings} WHERE format_id IN (SELECT f.id FROM json_each(?) w
       CROSS JOIN edition e ON e.work_id = w.value CROSS JOIN format f ON f.edition_id = e.id)`,
    JSON.stringify(works),
  );
}

function readFormats(db: ReadDb, works: Works) {
  const standings = new Map(readStandings(db, works).map((row) => [row.id, row.standing]));
  const formats = db.orm
    .select({
      id: format.id,
      editionId: format.editionId,
      form: format.form,
      formDetail: format.formDetail,
      caseKind: format.caseKind,
      trimWidthUm: format.trimWidthUm,
      trimHeightUm: format.trimHeightUm,
      pages: format.pages,
      durationMinutes: format.durationMinutes,
      interiorColour: format.interiorColour,
      largePrint: format.largePrint,
      publicationDate: format.publicationDate,
      onSaleDate: format.onSaleDate,
      plannedOn: format.plannedOn,
      cancelledOn: format.cancelledOn,
    })
    .from(format)
    .where(within(works, format.editionId, editionsIn))
    .orderBy(asc(format.id))
    .all()
    .map((row) => ({ ...row, standing: standings.get(row.id) ?? ('planned' satisfies FormatStanding) }));
  const prices = db.orm
    .select({
      formatId: formatPrice.formatId,
      currency: formatPrice.currency,
      amountMinor: formatPrice.amountMinor,
    })
    .from(formatPrice)
    .where(within(works, formatPrice.formatId, formatsIn))
    .orderBy(asc(formatPrice.id))
    .all();
  return { formats, prices };
}

const NUMBER = {
  isbn13: number.isbn13,
  blockId: number.blockId,
  formatId: number.formatId,
  reservedFor: number.reservedFor,
  reservedOn: number.reservedOn,
  assignedOn: number.assignedOn,
  spentOn: number.spentOn,
  standing: sql<'reserved' | 'assigned' | 'spent'>`${number.standing}`,
};

/** The rows of some numbers that no format carries. */
export function readLooseNumbers(db: ReadDb, isbns: readonly string[]) {
  return db.orm
    .select(NUMBER)
    .from(number)
    .where(
      and(
        isNull(number.formatId),
        sql`${number.isbn13} IN (SELECT value FROM json_each(${JSON.stringify(isbns)}))`,
      ),
    )
    .orderBy(asc(number.isbn13))
    .all();
}

function readNumbers(db: ReadDb, works: Works) {
  const blocks = db.orm
    .select({
      id: numberBlock.id,
      digits: numberBlock.digits,
      hyphenatedPrefix: numberBlock.hyphenatedPrefix,
      label: numberBlock.label,
      boughtOn: numberBlock.boughtOn,
    })
    .from(numberBlock)
    .orderBy(asc(numberBlock.id))
    .all();
  const numbers = db.orm
    .select(NUMBER)
    .from(number)
    .where(within(works, number.formatId, formatsIn))
    .orderBy(asc(number.isbn13))
    .all();
  return { blocks, numbers };
}

function readListings(db: ReadDb, works: Works) {
  const channels = db.orm.select().from(channel).orderBy(asc(channel.id)).all();
  const listings = db.orm
    .select({
      id: listing.id,
      formatId: listing.formatId,
      channelId: listing.channelId,
      standing: listing.standing,
      discountBp: listing.discountBp,
      printCostMinor: listing.printCostMinor,
      printCostCurrency: listing.printCostCurrency,
      onSaleDate: listing.onSaleDate,
      reference: listing.reference,
      firstSentOn: listing.firstSentOn,
      firstClearedOn: listing.firstClearedOn,
      lastStepOn: listing.lastStepOn,
    })
    .from(listing)
    .where(within(works, listing.formatId, formatsIn))
    .orderBy(asc(listing.id))
    .all();
  const steps = db.orm
    .select({
      listingId: listingStep.listingId,
      toStanding: listingStep.toStanding,
      onDate: listingStep.onDate,
    })
    .from(listingStep)
    .where(within(works, listingStep.listingId, listingsIn))
    .orderBy(asc(listingStep.id))
    .all();
  return { channels, listings, steps };
}

/** Tasks of the works, by whatever record of theirs the task names; an empty list means those of no work. */
function tasksIn(works: Works): SQL | undefined {
  if (works === undefined) return undefined;
  if (works.length === 0)
    return and(isNull(task.workId), isNull(task.editionId), isNull(task.formatId), isNull(task.listingId));
  return or(
    within(works, task.workId, inWorks),
    within(works, task.editionId, editionsIn),
    within(works, task.formatId, formatsIn),
    within(works, task.listingId, listingsIn),
  );
}

function readWork(db: ReadDb, day: string, works: Works) {
  const plans = db.orm
    .select({ id: plan.id, editionId: plan.editionId, kind: plan.kind, day: plan.day, madeOn: plan.madeOn })
    .from(plan)
    .where(and(isNull(plan.droppedOn), within(works, plan.editionId, editionsIn)))
    .orderBy(asc(plan.id))
    .all();
  const unended: SQL | undefined = or(inArray(task.standing, ['open', 'waiting']), gt(task.endedOn, day));
  const tasks = db.orm
    .select({
      id: task.id,
      planId: task.planId,
      workId: task.workId,
      editionId: task.editionId,
      formatId: task.formatId,
      listingId: task.listingId,
      title: task.title,
      dueOn: task.dueOn,
      waitingFor: task.waitingFor,
    })
    .from(task)
    .where(and(unended, tasksIn(works)))
    .orderBy(asc(task.dueOn), asc(task.id))
    .all();
  return { plans, tasks };
}

/**
 * Every row the audit needs, of all works or of the named ones, in a fixed number of queries; blocks, channels
 * and print-cost cards always come whole, and naming no work gives what belongs to none. `day` (YYYY-MM-DD) decides which tasks had not
 * ended; the rest stands as the connection shows it, now or rewound.
 */
export function readAuditRows(db: ReadDb, day: string, works?: readonly number[]) {
  return {
    ...readEditions(db, works),
    ...readFormats(db, works),
    ...readNumbers(db, works),
    ...readListings(db, works),
    printCards: printCards(db),
    ...readWork(db, day, works),
    files: fileStandings(db, works),
  };
}

/** The works in the order in which the audit goes through them. */
export function workOrder(db: ReadDb): number[] {
  return db.all<{ id: number }>('SELECT id FROM work ORDER BY title COLLATE NOCASE, id').map(({ id }) => id);
}
