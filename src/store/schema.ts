import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { COST_KINDS } from '../contract/costs.ts';
import type { MARKUPS, SentSheet, SheetItemName } from '../contract/submissions.ts';
import type {
  AUDIENCES,
  CASE_KINDS,
  CHANNEL_KINDS,
  FINISHES,
  INTERIOR_COLOURS,
  ListingStanding,
  LOCKABLE_FIELDS,
  NumberStanding,
  PROOF_KINDS,
  SUBJECT_SCHEMES,
  TaskStanding,
} from '../contract/terms.ts';

// The drizzle view of the tables in migrations/: names and types only. The SQL there is what holds, with its
// STRICT tables, checks and triggers, which drizzle cannot generate.

const id = () => integer('id').primaryKey();
const flag = (name: string) => integer(name, { mode: 'boolean' }).notNull().default(false);
type LocksMore = (typeof LOCKABLE_FIELDS)[number];
type ReturnsCode = 'Y' | 'N' | 'C' | 'S';

export const setting = sqliteTable('setting', {
  name: text('name').primaryKey(),
  value: text('value').notNull(),
});

export const numberBlock = sqliteTable('number_block', {
  id: id(),
  digits: text('digits').notNull(),
  hyphenatedPrefix: text('hyphenated_prefix').notNull(),
  agency: text('agency').notNull(),
  label: text('label').notNull().default(''),
  note: text('note').notNull().default(''),
  boughtOn: text('bought_on'),
  costMinor: integer('cost_minor'),
  costCurrency: text('cost_currency'),
});

export const work = sqliteTable('work', {
  id: id(),
  title: text('title').notNull(),
  note: text('note').notNull().default(''),
});

export const edition = sqliteTable('edition', {
  id: id(),
  workId: integer('work_id').notNull(),
  number: integer('number'),
  statement: text('statement').notNull().default(''),
  title: text('title').notNull(),
  subtitle: text('subtitle').notNull().default(''),
  language: text('language').notNull(),
  imprint: text('imprint').notNull().default(''),
  series: text('series').notNull().default(''),
  seriesNumber: text('series_number').notNull().default(''),
  description: text('description').notNull().default(''),
  audience: text('audience').$type<(typeof AUDIENCES)[number]>().notNull().default('general'),
  ageFrom: integer('age_from'),
  ageTo: integer('age_to'),
  replacesId: integer('replaces_id'),
});

const ofEdition = {
  id: id(),
  editionId: integer('edition_id').notNull(),
  position: integer('position').notNull(),
};

export const editionContributor = sqliteTable('edition_contributor', {
  ...ofEdition,
  role: text('role').notNull(),
  name: text('name').notNull(),
});

export const editionSubject = sqliteTable('edition_subject', {
  ...ofEdition,
  scheme: text('scheme').$type<(typeof SUBJECT_SCHEMES)[number]>().notNull(),
  code: text('code').notNull(),
  heading: text('heading').notNull().default(''),
});

export const editionKeyword = sqliteTable('edition_keyword', {
  ...ofEdition,
  keyword: text('keyword').notNull(),
});

export const format = sqliteTable('format', {
  id: id(),
  editionId: integer('edition_id').notNull(),
  form: text('form').notNull(),
  formDetail: text('form_detail'),
  caseKind: text('case_kind').$type<(typeof CASE_KINDS)[number]>(),
  trimWidthUm: integer('trim_width_um'),
  trimHeightUm: integer('trim_height_um'),
  pages: integer('pages'),
  durationMinutes: integer('duration_minutes'),
  interiorColour: text('interior_colour').$type<(typeof INTERIOR_COLOURS)[number]>(),
  paper: text('paper').notNull().default(''),
  finish: text('finish').$type<(typeof FINISHES)[number]>(),
  insideCoverPrint: flag('inside_cover_print'),
  largePrint: flag('large_print'),
  rightToLeft: flag('right_to_left'),
  publicationDate: text('publication_date'),
  onSaleDate: text('on_sale_date'),
  note: text('note').notNull().default(''),
  plannedOn: text('planned_on').notNull(),
  cancelledOn: text('cancelled_on'),
  cancelReason: text('cancel_reason'),
});

export const formatPrice = sqliteTable('format_price', {
  id: id(),
  formatId: integer('format_id').notNull(),
  currency: text('currency').notNull(),
  amountMinor: integer('amount_minor').notNull(),
  tax: text('tax').$type<'including' | 'excluding'>().notNull().default('including'),
});

export const number = sqliteTable('number', {
  isbn13: text('isbn13').primaryKey(),
  blockId: integer('block_id'),
  blockIndex: integer('block_index'),
  formatId: integer('format_id'),
  reservedFor: text('reserved_for').notNull().default(''),
  reservedOn: text('reserved_on'),
  assignedOn: text('assigned_on'),
  spentOn: text('spent_on'),
  spentReason: text('spent_reason'),
  standing: text('standing').$type<Exclude<NumberStanding, 'free'>>().generatedAlwaysAs('derived'),
});

export const channel = sqliteTable('channel', {
  id: id(),
  name: text('name').notNull(),
  kind: text('kind').$type<(typeof CHANNEL_KINDS)[number]>().notNull().default('any'),
  contact: text('contact').notNull().default(''),
  note: text('note').notNull().default(''),
  leadDays: integer('lead_days').notNull().default(3),
  removalDays: integer('removal_days').notNull().default(7),
  proof: text('proof').$type<(typeof PROOF_KINDS)[number]>().notNull().default('electronic'),
  subjectLimit: integer('subject_limit'),
  keywordLimit: integer('keyword_limit'),
  keywordSeparator: text('keyword_separator').notNull().default(';'),
  descriptionLimit: integer('description_limit'),
  titleLimit: integer('title_limit'),
  subtitleLimit: integer('subtitle_limit'),
  descriptionMarkup: text('description_markup').$type<(typeof MARKUPS)[number]>().notNull().default('any'),
  sheetItems: text('sheet_items', { mode: 'json' }).$type<SheetItemName[]>().notNull().default([]),
  defaultDiscountBp: integer('default_discount_bp'),
  defaultReturns: text('default_returns').$type<ReturnsCode>(),
  requestTemplate: text('request_template').notNull().default(''),
  locksMore: text('locks_more', { mode: 'json' }).$type<LocksMore[]>().notNull().default([]),
  closedOn: text('closed_on'),
});

export const listing = sqliteTable('listing', {
  id: id(),
  formatId: integer('format_id').notNull(),
  channelId: integer('channel_id').notNull(),
  standing: text('standing').$type<ListingStanding>().notNull().default('unsent'),
  discountBp: integer('discount_bp'),
  returns: text('returns').$type<ReturnsCode>(),
  printCostMinor: integer('print_cost_minor'),
  printCostCurrency: text('print_cost_currency'),
  onSaleDate: text('on_sale_date'),
  reference: text('reference').notNull().default(''),
  note: text('note').notNull().default(''),
  firstSentOn: text('first_sent_on'),
  firstClearedOn: text('first_cleared_on'),
  lastStepOn: text('last_step_on'),
});

export const listingStep = sqliteTable('listing_step', {
  id: id(),
  listingId: integer('listing_id').notNull(),
  fromStanding: text('from_standing').$type<ListingStanding>().notNull(),
  toStanding: text('to_standing').$type<ListingStanding>().notNull(),
  onDate: text('on_date').notNull(),
  note: text('note').notNull().default(''),
});

export const submission = sqliteTable('submission', {
  id: id(),
  listingId: integer('listing_id').notNull(),
  stepId: integer('step_id'),
  onDate: text('on_date').notNull(),
  takenOn: text('taken_on').notNull(),
  sheet: text('sheet', { mode: 'json' }).$type<SentSheet>().notNull(),
  note: text('note').notNull().default(''),
});

export const cost = sqliteTable('cost', {
  id: id(),
  formatId: integer('format_id').notNull(),
  listingId: integer('listing_id'),
  roundId: integer('round_id'),
  kind: text('kind').$type<(typeof COST_KINDS)[number]>().notNull(),
  amountMinor: integer('amount_minor').notNull(),
  currency: text('currency').notNull(),
  voucher: text('voucher').notNull().default(''),
  onDate: text('on_date').notNull(),
  note: text('note').notNull().default(''),
});

export const printCard = sqliteTable('print_card', {
  id: id(),
  channelId: integer('channel_id').notNull(),
  currency: text('currency').notNull(),
  form: text('form').notNull().default(''),
  caseKind: text('case_kind').$type<(typeof CASE_KINDS)[number] | ''>().notNull().default(''),
  interiorColour: text('interior_colour')
    .$type<(typeof INTERIOR_COLOURS)[number] | ''>()
    .notNull()
    .default(''),
  trimWidthUm: integer('trim_width_um').notNull().default(0),
  trimHeightUm: integer('trim_height_um').notNull().default(0),
  pagesFrom: integer('pages_from').notNull(),
  pagesTo: integer('pages_to').notNull(),
  validFrom: text('valid_from').notNull().default(''),
  fixedParts: integer('fixed_parts'),
  pageParts: integer('page_parts'),
  note: text('note').notNull().default(''),
});

export const printQuote = sqliteTable('print_quote', {
  id: id(),
  cardId: integer('card_id').notNull(),
  pages: integer('pages').notNull(),
  amountMinor: integer('amount_minor').notNull(),
  currency: text('currency').notNull(),
});

export const plan = sqliteTable('plan', {
  id: id(),
  editionId: integer('edition_id').notNull(),
  kind: text('kind').$type<'release' | 'retirement'>().notNull(),
  day: text('day').notNull(),
  madeOn: text('made_on').notNull(),
  droppedOn: text('dropped_on'),
  droppedReason: text('dropped_reason'),
  templateId: integer('template_id'),
  printedProof: integer('printed_proof', { mode: 'boolean' }),
  onSaleFixed: integer('on_sale_fixed', { mode: 'boolean' }).notNull().default(true),
  endedOn: text('ended_on'),
});

export const task = sqliteTable('task', {
  id: id(),
  planId: integer('plan_id'),
  workId: integer('work_id'),
  editionId: integer('edition_id'),
  formatId: integer('format_id'),
  listingId: integer('listing_id'),
  kind: text('kind').notNull(),
  title: text('title').notNull(),
  dueOn: text('due_on').notNull(),
  standing: text('standing').$type<TaskStanding>().notNull().default('open'),
  waitingFor: text('waiting_for').notNull().default(''),
  endedOn: text('ended_on'),
  droppedReason: text('dropped_reason'),
  note: text('note').notNull().default(''),
  step: text('step'),
});

export const taskNeed = sqliteTable('task_need', {
  id: id(),
  taskId: integer('task_id').notNull(),
  needsId: integer('needs_id').notNull(),
});
