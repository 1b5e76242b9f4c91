import type { Board } from '../rules/audit/board.ts';
import { auditedIds } from '../store/audit.ts';
import type { ReadDb } from '../store/connection.ts';
import { newestEntry } from '../store/journal.ts';
import { emptyBoard, factsOf } from './findings.ts';

/** Works judged at a time: some hundredths of a second. */
const AT_ONCE = 100;

/**
 * Today's audit while it is worked out part by part. What is changed between two parts may or may not be in it: `seq` is
 * the entry of the journal at its beginning, and whatever came after it is to be judged once more at the end.
 */
export class GrowingAudit {
  readonly day: string;
  readonly seq: number;
  readonly commits: number;
  readonly total: number;
  readonly board: Board;
  readonly #db: ReadDb;
  readonly #works: readonly number[];
  #done = 0;

  constructor(db: ReadDb, day: string, commits: number) {
    this.#db = db;
    this.day = day;
    this.commits = commits;
    this.seq = newestEntry(db);
    this.#works = auditedIds(db).works;
    this.total = this.#works.length;
    this.board = emptyBoard(db, day);
  }

  /** How many works are judged. */
  get done(): number {
    return this.#done;
  }

  /** Judges some more works; true when nothing is left. */
  next(): boolean {
    const works = this.#works.slice(this.#done, this.#done + AT_ONCE);
    if (works.length > 0) {
      this.board.add(factsOf(this.#db, this.board.base, { works, numbers: [], tasks: [] }));
      this.#done += works.length;
      return false;
    }
    const { numbers, tasks } = auditedIds(this.#db);
    this.board.add(factsOf(this.#db, this.board.base, { works: [], numbers, tasks }));
    this.board.settle();
    return true;
  }
}
