import type { Finding, Severity } from '../../contract/audit.ts';
import { byNumber } from './digits.ts';
import { leavesItsWork } from './editions.ts';
import type { Facts, FormatFacts, NumberFacts, TaskFacts, WorkFacts } from './facts.ts';
import { Findings, keptOf } from './found.ts';
import { Held } from './held.ts';
import { AUDIT_RULES } from './index.ts';
import {
  byCode,
  byWork,
  type Found,
  type Index,
  type KeyedRule,
  type OwnRule,
  type StockRule,
} from './rule.ts';
import { Stock } from './stock.ts';

// The audit of one day, kept so that a change has only what it touches judged anew: its works, or the numbers and tasks
// of no work, by the rules of one work; the keys under which these bring something, by the rules that look further.

type Numbered<R> = { rule: R; place: number };

const RULES = AUDIT_RULES.map((rule, place) => ({ rule, place }));
const OWN = RULES.filter((one): one is Numbered<OwnRule> => 'find' in one.rule);
const OF_STOCK = RULES.filter((one): one is Numbered<StockRule> => 'count' in one.rule);
const KEYED = RULES.filter((one): one is Numbered<KeyedRule<unknown>> => 'by' in one.rule);
const BY_INDEX = [...Map.groupBy(KEYED, ({ rule }) => rule.by)];

/** How many works are judged together: enough that rules are seldom begun, few enough that one can stop between. */
const WORKS_AT_ONCE = 500;

interface Unit {
  work: WorkFacts;
  tasks: readonly TaskFacts[];
}

interface Shelf {
  index: Index<unknown>;
  rules: readonly Numbered<KeyedRule<unknown>>[];
  held: Held<unknown>;
  /** Keys whose entries came or went and were not judged yet. */
  touched: Set<string>;
  /** Keys of which something was ever said. */
  said: Set<string>;
}

const byDay = (a: TaskFacts, b: TaskFacts) => byCode(a.dueOn, b.dueOn) || a.id - b.id;

/** What a rule of one work found something in. */
const whereOf = ({ workId, taskId, isbn13 }: Found): string =>
  workId === null ? (isbn13 ?? `task ${taskId}`) : `work ${workId}`;

const NOTHING = { works: [], editions: [], formats: [], listings: [], numbers: [], tasks: [] };

/** Where works stand among all works, as one text. */
const placesOf = ({ works }: Facts): string =>
  JSON.stringify(works.map(({ id, place }) => [id, place]).sort(([a], [b]) => Number(a) - Number(b)));

/** A finding where no number is free: none can be taken. */
function withoutNumber(finding: Finding): Finding {
  return finding.mending?.operation === 'numbers.assign' ? { ...finding, mending: null } : finding;
}

/** What a change touches: works, and numbers and tasks, whether or not they belong to one. */
export interface Touched {
  works: readonly number[];
  numbers: readonly string[];
  tasks: readonly number[];
}

/** A catalogue on one day, and all that the rules find in it. */
export class Board {
  #base: Facts;
  readonly #units = new Map<number, Unit>();
  readonly #numbers = new Map<string, NumberFacts>();
  readonly #tasks = new Map<number, TaskFacts>();
  readonly #shelves: readonly Shelf[] = BY_INDEX.map(([index, rules]) => ({
    index,
    rules,
    held: new Held(index),
    touched: new Set<string>(),
    said: new Set<string>(),
  }));
  readonly #stock: Stock;
  readonly #found = new Findings();
  /** Editions that replace one of another work. */
  #leaving = 0;
  #whole: Facts | undefined;
  #order: readonly number[] | undefined;

  /** Judges a whole catalogue; `step` hears of its works and may throw to end it. */
  constructor(facts: Facts, step?: (done: number, total: number) => void) {
    this.#base = { ...facts, ...NOTHING };
    this.#stock = new Stock(facts.blocks);
    this.#hold(facts);
    for (let at = 0; at < facts.works.length; at += WORKS_AT_ONCE) {
      const part = facts.works.slice(at, at + WORKS_AT_ONCE);
      this.#judge(this.#factsOf(part.map(({ id }) => id)));
      step?.(at + part.length, facts.works.length);
    }
    this.#judge(this.#factsOf([], [...this.#numbers.keys()], [...this.#tasks.keys()]));
    this.#judgeBeyond(true);
  }

  /** What the works share; holds no work itself. */
  get base(): Facts {
    return this.#base;
  }

  /** Takes channels and print-cost cards that changed; the works they bear on are named to `change` after it. */
  share({ channels, printCards }: Pick<Facts, 'channels' | 'printCards'>): void {
    this.#base = { ...this.#base, channels, printCards };
    this.#whole = undefined;
  }

  /** Whether works can be judged one by one: not in a damaged file in which editions replace those of other works. */
  get divisible(): boolean {
    return this.#leaving === 0;
  }

  /** Takes further works in, and numbers and tasks of none, and judges each by itself; `settle` judges what lies beyond. */
  add(facts: Facts): void {
    this.#hold(facts);
    this.#judge(facts);
  }

  settle(): void {
    this.#judgeBeyond(true);
    this.#whole = undefined;
    this.#order = undefined;
  }

  /** Puts what is recorded now of all that was touched in place of what was, and judges it and what it bears on. */
  change({ works, numbers, tasks }: Touched, now: Facts): void {
    const before = this.#factsOf(works, numbers, tasks);
    for (const id of works) this.#found.put(`work ${id}`, []);
    for (const isbn13 of numbers) this.#found.put(isbn13, []);
    for (const id of tasks) this.#found.put(`task ${id}`, []);
    this.#letGo(before);
    this.#hold(now);
    this.#judge(now);
    this.#judgeBeyond(before.numbers.length + now.numbers.length > 0);
    this.#whole = undefined;
    if (placesOf(before) !== placesOf(now)) this.#order = undefined;
  }

  #hold(facts: Facts): void {
    const tasks = Map.groupBy(facts.tasks, (task) => task.work?.id ?? null);
    for (const work of facts.works) this.#units.set(work.id, { work, tasks: tasks.get(work.id) ?? [] });
    for (const task of tasks.get(null) ?? []) this.#tasks.set(task.id, task);
    for (const number of facts.numbers) {
      this.#stock.count(number, 1);
      if (!number.format) this.#numbers.set(number.isbn13, number);
    }
    this.#leaving += facts.editions.filter(leavesItsWork).length;
    for (const { index, held, touched } of this.#shelves)
      for (const [key, entry] of index.entries(facts)) {
        held.add(key, entry);
        touched.add(key);
      }
  }

  #letGo(facts: Facts): void {
    for (const { id } of facts.works) this.#units.delete(id);
    for (const { id } of facts.tasks) this.#tasks.delete(id);
    for (const number of facts.numbers) {
      this.#stock.count(number, -1);
      this.#numbers.delete(number.isbn13);
    }
    this.#leaving -= facts.editions.filter(leavesItsWork).length;
    for (const { index, held, touched } of this.#shelves)
      for (const [key, entry] of index.entries(facts)) {
        held.remove(key, entry);
        touched.add(key);
      }
  }

  /** Judges works, and numbers and tasks of none, each for itself. */
  #judge(facts: Facts): void {
    const kept = OWN.flatMap(({ rule, place }) =>
      rule.find(facts).map((found) => keptOf(rule, place, found, facts)),
    );
    for (const [where, found] of Map.groupBy(kept, ({ finding }) => whereOf(finding)))
      this.#found.put(where, found);
  }

  /** Judges what lies under the keys that were touched, and the stock of numbers. */
  #judgeBeyond(stock: boolean): void {
    for (const shelf of this.#shelves) {
      for (const key of shelf.touched) this.#judgeKey(shelf, key);
      shelf.touched.clear();
    }
    if (!stock) return;
    for (const { rule, place } of OF_STOCK)
      this.#found.put(
        rule.id,
        rule.count(this.#stock).map((found) => keptOf(rule, place, found, this.#base)),
      );
  }

  #judgeKey({ rules, held, said }: Shelf, key: string): void {
    const entries = held.of(key);
    for (const { rule, place } of rules) {
      const found = rule.judge(entries, this.#base);
      const where = found.length > 0 || said.has(key) ? `${rule.id} ${key}` : null;
      // Of most keys there is nothing to say, and never was.
      if (where === null) continue;
      const kept = found.map((one) => keptOf(rule, place, one, this.#around(one, rule, entries), key));
      this.#found.put(where, kept);
      if (found.length > 0) said.add(key);
    }
  }

  /** The records around what a rule by key found. */
  #around({ workId }: Found, rule: KeyedRule<unknown>, entries: readonly unknown[]): Facts {
    return workId === null ? { ...this.#base, ...rule.beside?.(entries) } : this.#factsOf([workId]);
  }

  #factsOf(works: Iterable<number>, numbers: Iterable<string> = [], tasks: Iterable<number> = []): Facts {
    const units = [...works].flatMap((id) => this.#units.get(id) ?? []);
    const editions = units.flatMap(({ work }) => work.editions);
    const formats = editions.flatMap((edition) => edition.formats);
    const loose = [...numbers].flatMap((isbn13) => this.#numbers.get(isbn13) ?? []);
    const ofNone = [...tasks].flatMap((id) => this.#tasks.get(id) ?? []);
    return {
      ...this.#base,
      works: units.map(({ work }) => work),
      editions,
      formats,
      listings: formats.flatMap((format) => format.listings),
      numbers: [...loose, ...formats.flatMap((format) => format.numbers)],
      tasks: [...ofNone, ...units.flatMap((unit) => unit.tasks)],
    };
  }

  /** How many findings there are of each gravity. */
  get counts(): Readonly<Record<Severity, number>> {
    return this.#found.counts;
  }

  /** The finding of a fingerprint, and how often it was found. */
  found(fingerprint: string): { finding: Finding; times: number } | undefined {
    return this.#found.of(fingerprint);
  }

  /** All findings: the gravest first, then rule after rule, then in the order of works, numbers or days. */
  get findings(): readonly Finding[] {
    const workOf = (id: number | null) => this.#units.get(id ?? 0)?.work;
    const findings = this.#found.inOrder((a, b) => {
      const [one, other] = [workOf(a), workOf(b)];
      return one && other ? byWork(one, other) : Number(one !== undefined) - Number(other !== undefined);
    });
    return this.#stock.free > 0 ? findings : findings.map(withoutNumber);
  }

  /** How many numbers stand where. */
  get numbers(): Stock['standings'] {
    return this.#stock.standings;
  }

  /** How many works and formats there are. */
  get size(): { works: number; formats: number } {
    let formats = 0;
    for (const { work } of this.#units.values())
      for (const edition of work.editions) formats += edition.formats.length;
    return { works: this.#units.size, formats };
  }

  /** One work, with all below it. */
  work(id: number): WorkFacts | undefined {
    return this.#units.get(id)?.work;
  }

  /** The works in their order; sorted anew only after some came, went or were renamed. */
  get #inOrder(): readonly number[] {
    const works = () => [...this.#units.values()].map(({ work }) => work);
    this.#order ??= works()
      .sort(byWork)
      .map(({ id }) => id);
    return this.#order;
  }

  /** All formats, in the order of works and editions. */
  get formats(): readonly FormatFacts[] {
    return this.#inOrder.flatMap((id) =>
      (this.#units.get(id)?.work.editions ?? []).flatMap(({ formats }) => formats),
    );
  }

  /** All works, in their order, with what belongs to none; put together when it is asked for. */
  get facts(): Facts {
    if (this.#whole) return this.#whole;
    const facts = this.#factsOf(this.#inOrder, this.#numbers.keys(), this.#tasks.keys());
    this.#whole = { ...facts, numbers: facts.numbers.sort(byNumber), tasks: facts.tasks.sort(byDay) };
    return this.#whole;
  }
}
