import { asc, gt, inArray, isNull, or, type SQL, sql } from 'drizzle-orm';
import type { FormatStanding } from '../contract/terms.ts';
import type { ReadDb } from './connection.ts';
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

const rowsOf = (table: 'edition_subject' | 'edition_keyword') =>
  sql<number>`(SELECT count(*) FROM ${sql.identifier(table)} x WHERE x.edition_id = "edition"."id")`;

function readEditions(db: ReadDb) {
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
    .orderBy(asc(edition.id))
    .all();
  const contributors = db.orm
    .select({
      editionId: editionContributor.editionId,
      role: editionContributor.role,
      name: editionContributor.name,
    })
    .from(editionContributor)
    .orderBy(asc(editionContributor.editionId), asc(editionContributor.position))
    .all();
  const works = db.orm
    .select({ id: work.id, title: work.title })
    .from(work)
    .orderBy(sql`${work.title} COLLATE NOCASE`, asc(work.id))
    .all();
  return { works, editions, contributors };
}

function readFormats(db: ReadDb) {
  const standings = new Map(
    db
      .all<{ id: number; standing: FormatStanding }>('SELECT format_id AS id, standing FROM format_standing')
      .map((row) => [row.id, row.standing]),
  );
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
    })
    .from(format)
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
    .orderBy(asc(formatPrice.id))
    .all();
  return { formats, prices };
}

function readNumbers(db: ReadDb) {
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
    .select({
      isbn13: number.isbn13,
      blockId: number.blockId,
      formatId: number.formatId,
      reservedFor: number.reservedFor,
      reservedOn: number.reservedOn,
      assignedOn: number.assignedOn,
      spentOn: number.spentOn,
      standing: sql<'reserved' | 'assigned' | 'spent'>`${number.standing}`,
    })
    .from(number)
    .orderBy(asc(number.isbn13))
    .all();
  return { blocks, numbers };
}

function readListings(db: ReadDb) {
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
    .orderBy(asc(listing.id))
    .all();
  const steps = db.orm
    .select({
      listingId: listingStep.listingId,
      toStanding: listingStep.toStanding,
      onDate: listingStep.onDate,
    })
    .from(listingStep)
    .orderBy(asc(listingStep.id))
    .all();
  return { channels, listings, steps };
}

function readWork(db: ReadDb, day: string) {
  const plans = db.orm
    .select({ id: plan.id, editionId: plan.editionId, kind: plan.kind, day: plan.day })
    .from(plan)
    .where(isNull(plan.droppedOn))
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
    .where(unended)
    .orderBy(asc(task.dueOn), asc(task.id))
    .all();
  return { plans, tasks };
}

/**
 * Every row the audit needs, in a fixed number of queries. `day` (YYYY-MM-DD) decides which tasks had not
 * ended; the rest stands as the connection shows it, now or rewound.
 */
export function readAuditRows(db: ReadDb, day: string) {
  return {
    ...readEditions(db),
    ...readFormats(db),
    ...readNumbers(db),
    ...readListings(db),
    ...readWork(db, day),
  };
}
