import type { Finding } from '../contract/audit.ts';
import type { Board } from '../rules/audit/board.ts';
import type { ReadDb } from '../store/connection.ts';
import { newestEntry } from '../store/journal.ts';
import { baseChange } from './audit-base.ts';
import { factsOf, judgeWhole } from './findings.ts';
import { GrowingAudit } from './growing-audit.ts';

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
/** Tables of what works share. */
const SHARED = new Set(['setting', 'channel', 'number_block', 'print_card', 'print_quote']);

/** How far work has come; may throw to end it. */
type Step = (done: number, total: number, what: string) => void;

/** What the journal says has changed since an entry. */
interface Changes {
  /** Something that nothing narrower can be told of. */
  all: boolean;
  /** Something that works share. */
  shared: boolean;
  works: Set<number>;
  numbers: Set<string>;
  tasks: Set<number>;
}

function changesSince(db: ReadDb, seq: number): Changes {
  const changes: Changes = {
    all: false,
    shared: false,
    works: new Set(),
    numbers: new Set(),
    tasks: new Set(),
  };
  const entries = db.all<{ entity: string; row_key: string; work_id: number | null }>(
    'SELECT entity, row_key, work_id FROM journal WHERE seq > ? ORDER BY seq',
    seq,
  );
  for (const { entity, row_key, work_id } of entries) {
    if (entity === 'number') changes.numbers.add(row_key);
    if (entity === 'task') changes.tasks.add(Number(row_key));
    const homeless = work_id === null && OF_A_WORK.has(entity);
    if (homeless || entity === 'range_table') changes.all = true;
    else if (SHARED.has(entity)) changes.shared = true;
    else if (work_id !== null) changes.works.add(work_id);
  }
  return changes;
}

/** Changes whenever another connection, and so the writing one, commits something. */
function commitsSeen(db: ReadDb): number {
  return db.one<{ n: number }>('SELECT data_version AS n FROM pragma_data_version')?.n ?? 0;
}

/** The audit of today as it was last judged: at which entry of the journal, and after which commit. */
interface Kept {
  seq: number;
  commits: number;
  board: Board;
}

/** As many works as are judged anew within a moment. */
const A_MOMENT = 500;
/** Entries of the journal beyond which they are not gone through to see what they touch. */
const MANY_ENTRIES = 20_000;

/**
 * Keeps the audit of one open file at hand. After a change only the works that the journal names are read and judged
 * anew, with what other works share with them; a change of a channel has the works listed there judged anew, and other
 * blocks, other settings that rules look at and a new day have everything judged anew.
 */
export class KeptAudit {
  readonly #db: ReadDb;
  #kept: Kept | undefined;
  #growing: GrowingAudit | undefined;
  /** The last past days asked for: what was found, and at which entry of the journal. */
  readonly #past = new Map<string, { seq: number; board: Board }>();

  constructor(db: ReadDb) {
    this.#db = db;
  }

  /** The audit of a day: of today from what is kept, of a past day as `db`, rewound to it, shows it. */
  on(day: string, today: string, db: ReadDb): Board {
    const seq = newestEntry(this.#db);
    if (day === today) return this.#upToDate(seq, today);
    const known = this.#past.get(day);
    if (known?.seq === seq) return known.board;
    const board = judgeWhole(db, this.#db, { day, today });
    this.#past.delete(day);
    this.#past.set(day, { seq, board });
    const [oldest] = this.#past.keys();
    if (this.#past.size > 3 && oldest !== undefined) this.#past.delete(oldest);
    return board;
  }

  /** Judges everything anew; gives the findings that were kept before as well, for comparison. */
  again(today: string, step: Step): { board: Board; before: readonly Finding[] } {
    const seq = newestEntry(this.#db);
    const before = this.#upToDate(seq, today).findings;
    return { board: this.#whole(seq, today, step), before };
  }

  /**
   * Works today's audit out by one small part where it is not at hand, so that other calls are answered between two;
   * true when nothing is left to do.
   */
  advance(today: string): boolean {
    if (this.#atHand(today)) {
      this.#growing = undefined;
      return true;
    }
    if (this.#growing?.day !== today)
      this.#growing = new GrowingAudit(this.#db, today, commitsSeen(this.#db));
    if (!this.#growing.next()) return false;
    const { seq, commits, board } = this.#growing;
    this.#growing = undefined;
    this.#kept = { seq, commits, board };
    return this.#atHand(today);
  }

  /** Whether today's audit is at hand, and how many works are judged if not. */
  progress(today: string): { ready: boolean; done: number; total: number } {
    if (this.#atHand(today)) return { ready: true, done: 0, total: 0 };
    return { ready: false, done: this.#growing?.done ?? 0, total: this.#growing?.total ?? 0 };
  }

  /** Whether what is kept needs at most a moment to be brought up to date. */
  #atHand(today: string): boolean {
    const kept = this.#kept;
    if (kept?.board.base.day !== today) return false;
    const seq = newestEntry(this.#db);
    if (kept.seq === seq) return kept.commits === commitsSeen(this.#db);
    if (seq - kept.seq > MANY_ENTRIES || !kept.board.divisible) return false;
    const { all, shared, works } = changesSince(this.#db, kept.seq);
    if (all || works.size > A_MOMENT) return false;
    const alike = shared ? baseChange(this.#db, kept.board.base) : undefined;
    return alike !== null && (alike?.works.length ?? 0) <= A_MOMENT;
  }

  #upToDate(seq: number, today: string): Board {
    const kept = this.#kept;
    const commits = commitsSeen(this.#db);
    if (kept?.board.base.day !== today) return this.#whole(seq, today);
    if (kept.seq === seq && kept.commits === commits) return kept.board;
    // A commit without an entry was made behind the journal's back: nothing says what it touched.
    const changes = kept.seq < seq ? changesSince(this.#db, kept.seq) : undefined;
    if (!changes || changes.all || !kept.board.divisible) return this.#whole(seq, today);
    // Should this throw half-way, nothing half-changed may be kept.
    this.#kept = undefined;
    if (!this.#renew(kept.board, changes) || !kept.board.divisible) return this.#whole(seq, today);
    this.#kept = { seq, commits, board: kept.board };
    return kept.board;
  }

  #whole(seq: number, day: string, step?: Step): Board {
    const commits = commitsSeen(this.#db);
    const board = judgeWhole(
      this.#db,
      this.#db,
      { day, today: day },
      step && ((done, total) => step(done, total, 'works judged')),
    );
    this.#kept = { seq, commits, board };
    return board;
  }

  /** Judges what changed; false where that is everything. */
  #renew(board: Board, changes: Changes): boolean {
    const db = this.#db;
    const shared = changes.shared ? baseChange(db, board.base) : undefined;
    if (shared === null) return false;
    if (shared) board.share(shared);
    const touched = {
      works: [...new Set([...changes.works, ...(shared?.works ?? [])])],
      numbers: [...changes.numbers],
      tasks: [...changes.tasks],
    };
    board.change(touched, factsOf(db, board.base, touched));
    return true;
  }
}
