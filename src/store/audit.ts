import type { FormatStanding, NumberStanding } from '../contract/terms.ts';
import type { ReadDb } from './connection.ts';
import { printCards } from './print-cards.ts';
import { fileStandings, fileStandingsOf } from './proof-checks.ts';
import { type Columns, columns, lastingRows as rows, withMore } from './rows.ts';
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

/** The values of a list that is bound as one JSON text. */
const GIVEN = '(SELECT value FROM json_each(?1))';
const EDITIONS = `(SELECT id FROM edition WHERE work_id IN ${GIVEN})`;
const FORMATS = `(SELECT f.id FROM edition e CROSS JOIN format f ON f.edition_id = e.id WHERE e.work_id IN ${GIVEN})`;
const LISTINGS = `(SELECT l.id FROM edition e CROSS JOIN format f ON f.edition_id = e.id
  CROSS JOIN listing l ON l.format_id = f.id WHERE e.work_id IN ${GIVEN})`;

/** `WHERE column IN (…)` where works are named, otherwise no condition at all. */
const within = (works: Works, column: string, ids: string) =>
  works === undefined ? '' : `WHERE ${column} IN ${ids}`;

const named = (works: Works) => (works === undefined ? [] : [JSON.stringify(works)]);

const EDITION = columns(
  edition,
  'id',
  'workId',
  'number',
  'statement',
  'title',
  'language',
  'imprint',
  'series',
  'seriesNumber',
  'audience',
  'ageFrom',
  'ageTo',
  'replacesId',
);
const MEASURED = withMore<
  NonNullable<typeof EDITION.row>,
  { descriptionLength: number; subjects: number; keywords: number }
>(
  EDITION,
  'length(trim(description)) AS descriptionLength',
  '(SELECT count(*) FROM edition_subject s WHERE s.edition_id = edition.id) AS subjects',
  '(SELECT count(*) FROM edition_keyword k WHERE k.edition_id = edition.id) AS keywords',
);
const CONTRIBUTOR = columns(editionContributor, 'editionId', 'role', 'name');
const WORK = columns(work, 'id', 'title');

function readEditions(db: ReadDb, works: Works) {
  const ids = named(works);
  return {
    works: rows(db, WORK, `FROM work ${within(works, 'id', GIVEN)} ORDER BY id`, ...ids),
    editions: rows(db, MEASURED, `FROM edition ${within(works, 'work_id', GIVEN)} ORDER BY id`, ...ids),
    contributors: rows(
      db,
      CONTRIBUTOR,
      `FROM edition_contributor ${within(works, 'edition_id', EDITIONS)} ORDER BY edition_id, position`,
      ...ids,
    ),
  };
}

const FORMAT = columns(
  format,
  'id',
  'editionId',
  'form',
  'formDetail',
  'caseKind',
  'trimWidthUm',
  'trimHeightUm',
  'pages',
  'durationMinutes',
  'interiorColour',
  'largePrint',
  'publicationDate',
  'onSaleDate',
  'plannedOn',
  'cancelledOn',
);
const STANDING = withMore<NonNullable<typeof FORMAT.row>, { standing: FormatStanding }>(
  FORMAT,
  "coalesce((SELECT s.standing FROM format_standing s WHERE s.format_id = format.id), 'planned') AS standing",
);
const PRICE = columns(formatPrice, 'formatId', 'currency', 'amountMinor');

function readFormats(db: ReadDb, works: Works) {
  const ids = named(works);
  const formats = rows(
    db,
    STANDING,
    `FROM format ${within(works, 'edition_id', EDITIONS)} ORDER BY id`,
    ...ids,
  );
  return {
    formats,
    prices: rows(db, PRICE, `FROM format_price ${within(works, 'format_id', FORMATS)} ORDER BY id`, ...ids),
  };
}

interface NumberRow
  extends Pick<
    typeof number.$inferSelect,
    'isbn13' | 'blockId' | 'formatId' | 'reservedFor' | 'reservedOn' | 'assignedOn' | 'spentOn'
  > {
  standing: Exclude<NumberStanding, 'free'>;
}
const NUMBER = columns(
  number,
  'isbn13',
  'blockId',
  'formatId',
  'reservedFor',
  'reservedOn',
  'assignedOn',
  'spentOn',
  'standing',
) as Columns<NumberRow>;

const LISTING = columns(
  listing,
  'id',
  'formatId',
  'channelId',
  'standing',
  'discountBp',
  'printCostMinor',
  'printCostCurrency',
  'onSaleDate',
  'reference',
  'firstSentOn',
  'firstClearedOn',
  'lastStepOn',
);
const STEP = columns(listingStep, 'listingId', 'toStanding', 'onDate');

function readListings(db: ReadDb, works: Works) {
  const ids = named(works);
  return {
    numbers: rows(db, NUMBER, `FROM number ${within(works, 'format_id', FORMATS)} ORDER BY isbn13`, ...ids),
    listings: rows(db, LISTING, `FROM listing ${within(works, 'format_id', FORMATS)} ORDER BY id`, ...ids),
    steps: rows(db, STEP, `FROM listing_step ${within(works, 'listing_id', LISTINGS)} ORDER BY id`, ...ids),
  };
}

const PLAN = columns(plan, 'id', 'editionId', 'kind', 'day', 'madeOn');
const TASK = columns(
  task,
  'id',
  'planId',
  'workId',
  'editionId',
  'formatId',
  'listingId',
  'title',
  'dueOn',
  'waitingFor',
);

/** Tasks of works, by whatever record of theirs the task names. */
const TASKS = `(SELECT id FROM task WHERE work_id IN ${GIVEN} UNION SELECT id FROM task WHERE edition_id IN ${EDITIONS}
  UNION SELECT id FROM task WHERE format_id IN ${FORMATS} UNION SELECT id FROM task WHERE listing_id IN ${LISTINGS})`;

/** `day` stands at the place of the given number. */
const unended = (place: 1 | 2) => `(standing IN ('open', 'waiting') OR ended_on > ?${place})`;
const DUE = 'ORDER BY due_on, id';

function readAgenda(db: ReadDb, day: string, works: Works) {
  const ids = named(works);
  const ofWorks = works === undefined ? '' : `AND edition_id IN ${EDITIONS}`;
  return {
    plans: rows(db, PLAN, `FROM plan WHERE dropped_on IS NULL ${ofWorks} ORDER BY id`, ...ids),
    tasks:
      works === undefined
        ? rows(db, TASK, `FROM task WHERE ${unended(1)} ${DUE}`, day)
        : rows(db, TASK, `FROM task WHERE id IN ${TASKS} AND +${unended(2)} ${DUE}`, ...ids, day),
  };
}

/** All works, and the numbers and tasks that belong to none. */
export function auditedIds(db: ReadDb): { works: number[]; numbers: string[]; tasks: number[] } {
  const column = <T>(sql: string) => db.all<{ id: T }>(sql).map(({ id }) => id);
  return {
    works: column<number>('SELECT id FROM work ORDER BY id'),
    numbers: column<string>('SELECT isbn13 AS id FROM number WHERE format_id IS NULL'),
    tasks: column<number>(
      'SELECT id FROM task WHERE work_id IS NULL AND edition_id IS NULL AND format_id IS NULL AND listing_id IS NULL',
    ),
  };
}

/** The rows of some numbers that no format carries. */
export function readLooseNumbers(db: ReadDb, isbns: readonly string[]) {
  return rows(
    db,
    NUMBER,
    `FROM number WHERE +format_id IS NULL AND isbn13 IN ${GIVEN} ORDER BY isbn13`,
    JSON.stringify(isbns),
  );
}

/** Those of some tasks that are about no work and had not ended on a day. */
export function readLooseTasks(db: ReadDb, day: string, ids: readonly number[]) {
  return rows(
    db,
    TASK,
    `FROM task WHERE id IN ${GIVEN} AND +${unended(2)} AND +work_id IS NULL AND +edition_id IS NULL
       AND +format_id IS NULL AND +listing_id IS NULL ${DUE}`,
    JSON.stringify(ids),
    day,
  );
}

/**
 * Every row the audit needs, of all works or of the named ones, in a fixed number of queries. `day` (YYYY-MM-DD) decides
 * which tasks had not ended; the rest stands as the connection shows it, now or rewound.
 */
export function readAuditRows(db: ReadDb, day: string, works?: readonly number[]) {
  return {
    ...readEditions(db, works),
    ...readFormats(db, works),
    ...readListings(db, works),
    ...readAgenda(db, day, works),
    files: works === undefined ? fileStandings(db) : fileStandingsOf(db, works),
  };
}

const BLOCK = columns(numberBlock, 'id', 'digits', 'hyphenatedPrefix', 'label', 'boughtOn');
const CHANNEL = columns(
  channel,
  'id',
  'name',
  'kind',
  'proof',
  'leadDays',
  'removalDays',
  'subjectLimit',
  'keywordLimit',
  'descriptionLimit',
  'closedOn',
);

/** What every work is judged by: blocks, channels and print-cost cards. */
export function readAuditBase(db: ReadDb) {
  return {
    blocks: rows(db, BLOCK, 'FROM number_block ORDER BY id'),
    channels: rows(db, CHANNEL, 'FROM channel ORDER BY id'),
    printCards: printCards(db),
  };
}

/** The works of which something is listed on one of some channels. */
export function worksOnChannels(db: ReadDb, channels: readonly number[]): number[] {
  if (channels.length === 0) return [];
  return db
    .all<{ id: number }>(
      `SELECT DISTINCT e.work_id AS id FROM listing l JOIN format f ON f.id = l.format_id
         JOIN edition e ON e.id = f.edition_id WHERE l.channel_id IN ${GIVEN}`,
      JSON.stringify(channels),
    )
    .map(({ id }) => id);
}
