import type { Finding } from '../contract/audit.ts';
import type { Facts, NumberFacts, TaskFacts } from '../rules/audit/facts.ts';
import { gatherFacts } from '../rules/audit/gather.ts';
import { findingsOf, judgeWorks, together, type WorkPart } from '../rules/audit/parts.ts';
import { readAuditRows, readLooseNumbers, workOrder } from '../store/audit.ts';
import type { ReadDb } from '../store/connection.ts';
import { newestEntry } from '../store/journal.ts';
import { readSettings } from '../store/settings.ts';
import { type Judged, judgeWhole } from './findings.ts';
import { listingsThatDiffer } from './sheets.ts';

/** Tables of which every row belongs to a work. */
const OF_A_WORK = new Set([
  'work',
  'edition',
  'edition_contributor',
  'edition_subject',
  'edition_keyword',
  'format',
  'format_price',
  'listing',
  'listing_step',
  'submission',
  'plan',
]);
/** Tables that every work is judged by; they seldom change. */
const OF_ALL = new Set(['setting', 'channel', 'number_block', 'range_table', 'print_card', 'print_quote']);

/** How far work has come; may throw to end it. */
type Step = (done: number, total: number, what: string) => void;

/** What the journal says has changed since an entry. */
interface Touched {
  all: boolean;
  order: boolean;
  looseTasks: boolean;
  works: Set<number>;
  isbns: Set<string>;
}

function touchedSince(db: ReadDb, seq: number): Touched {
  const touched: Touched = {
    all: false,
    order: false,
    looseTasks: false,
    works: new Set(),
    isbns: new Set(),
  };
  const entries = db.all<{ entity: string; row_key: string; work_id: number | null }>(
    'SELECT entity, row_key, work_id FROM journal WHERE seq > ? ORDER BY seq',
    seq,
  );
  for (const { entity, row_key, work_id } of entries) {
    if (entity === 'number') touched.isbns.add(row_key);
    if (entity === 'work') touched.order = true;
    if (entity === 'task' && work_id === null) touched.looseTasks = true;
    const homeless = work_id === null && OF_A_WORK.has(entity);
    if (homeless || OF_ALL.has(entity)) touched.all = true;
    else if (work_id !== null) touched.works.add(work_id);
  }
  return touched;
}

/** Changes whenever another connection, and so the writing one, commits something. */
function commitsSeen(db: ReadDb): number {
  return db.one<{ n: number }>('SELECT data_version AS n FROM pragma_data_version')?.n ?? 0;
}

/** The audit of today as it was last judged. */
interface Kept {
  seq: number;
  commits: number;
  day: string;
  base: Facts;
  parts: Map<number, WorkPart>;
  order: number[];
  looseNumbers: Map<string, NumberFacts>;
  looseTasks: readonly TaskFacts[];
  judged: Judged;
}

/**
 * Keeps the audit of one open file at hand. After a change only the works that the journal names are read and judged
 * anew, with the few rules that look beyond one work; a change of channels, blocks or settings, or a new day, has
 * everything judged anew.
 */
export class KeptAudit {
  readonly #db: ReadDb;
  #kept: Kept | undefined;
  /** The last past days asked for: what was found, and at which entry of the journal. */
  readonly #past = new Map<string, { seq: number; judged: Judged }>();

  constructor(db: ReadDb) {
    this.#db = db;
  }

  /** The audit of a day: of today from what is kept, of a past day as `db`, rewound to it, shows it. */
  on(day: string, today: string, db: ReadDb): Judged {
    const seq = newestEntry(this.#db);
    if (day === today) return this.#upToDate(seq, today).judged;
    const known = this.#past.get(day);
    if (known?.seq === seq) return known.judged;
    const judged = judgeWhole(db, this.#db, { day, today });
    this.#past.delete(day);
    this.#past.set(day, { seq, judged });
    const [oldest] = this.#past.keys();
    if (this.#past.size > 3 && oldest !== undefined) this.#past.delete(oldest);
    return judged;
  }

  /** Judges everything anew; gives the findings that were kept before as well, for comparison. */
  again(today: string, step: Step): { judged: Judged; before: Finding[] } {
    const seq = newestEntry(this.#db);
    const before = this.#upToDate(seq, today).judged.findings;
    this.#kept = this.#whole(seq, today, step);
    return { judged: this.#kept.judged, before };
  }

  #rows(day: string, works?: readonly number[]) {
    const db = this.#db;
    return { ...readAuditRows(db, day, works), differences: listingsThatDiffer(db, day, works) };
  }

  #upToDate(seq: number, today: string): Kept {
    const kept = this.#kept;
    const commits = commitsSeen(this.#db);
    if (kept?.seq === seq && kept.day === today && kept.commits === commits) return kept;
    // A commit without an entry was made behind the journal's back: nothing says what it touched.
    const touched = kept?.day === today && kept.seq < seq ? touchedSince(this.#db, kept.seq) : undefined;
    this.#kept =
      kept && touched && !touched.all ? this.#renewed(kept, seq, touched) : this.#whole(seq, today);
    return this.#kept;
  }

  #whole(seq: number, day: string, step?: Step): Kept {
    const base = gatherFacts(this.#rows(day), { day, today: day }, readSettings(this.#db));
    const parts = judgeWorks(base, step && ((done, total) => step(done, total, 'works judged')));
    const order = base.works.map((work) => work.id);
    const judged = { facts: base, findings: findingsOf(base, [...parts.values()]) };
    const loose = base.numbers.filter((number) => number.format === null);
    return {
      seq,
      commits: commitsSeen(this.#db),
      day,
      base,
      parts,
      order,
      looseNumbers: new Map(loose.map((number) => [number.isbn13, number])),
      looseTasks: base.tasks.filter((task) => task.work === null),
      judged,
    };
  }

  #renewed(kept: Kept, seq: number, touched: Touched): Kept {
    const { base, day, parts, looseNumbers } = kept;
    const works = [...touched.works];
    // The same blocks, channels and cards as everywhere else, since the rules tell them apart by themselves.
    const shared = { blocks: base.blocks, channels: base.channels, printCards: base.printCards };
    const days = { day, today: day };
    const gathered = (rows: Parameters<typeof gatherFacts>[0]) =>
      gatherFacts({ ...rows, ...shared }, days, base.settings);
    if (works.length > 0) {
      const renewed = judgeWorks(gathered(this.#rows(day, works)));
      for (const id of works) {
        const part = renewed.get(id);
        if (part) parts.set(id, part);
        else parts.delete(id);
      }
    }
    const nothing = touched.looseTasks || touched.isbns.size > 0 ? this.#rows(day, []) : undefined;
    if (nothing && touched.isbns.size > 0) {
      const isbns = [...touched.isbns];
      for (const isbn of isbns) looseNumbers.delete(isbn);
      const numbers = readLooseNumbers(this.#db, isbns);
      for (const number of gathered({ ...nothing, numbers }).numbers) looseNumbers.set(number.isbn13, number);
    }
    const looseTasks = nothing && touched.looseTasks ? gathered(nothing).tasks : kept.looseTasks;
    const order = touched.order ? workOrder(this.#db) : kept.order;
    const inOrder = order.flatMap((id) => parts.get(id) ?? []);
    const facts = together(
      base,
      inOrder.map((part) => part.facts),
      { numbers: looseNumbers.values(), tasks: looseTasks },
    );
    const commits = commitsSeen(this.#db);
    return {
      ...kept,
      seq,
      commits,
      order,
      looseTasks,
      judged: { facts, findings: findingsOf(facts, inOrder) },
    };
  }
}
