import type { Finding } from '../../contract/audit.ts';
import type { Facts, NumberFacts, TaskFacts } from './facts.ts';
import { AUDIT_RULES, bySeverity, judge } from './index.ts';

// The audit taken apart: the facts of each work for itself, what belongs to no work, and findings kept by rule, so
// that a change has only what it touches judged anew. Put together again it says what a run over everything says.

const OF_A_WORK = AUDIT_RULES.filter((rule) => !rule.whole);
const OF_THE_WHOLE = AUDIT_RULES.filter((rule) => rule.whole);

/** Findings by the id of their rule; a rule that found nothing is not named. */
type Found = Map<string, Finding[]>;

/** One work: its own facts, and what the rules of a work find in them. */
export interface WorkPart {
  facts: Facts;
  found: Found;
}

function judgeBy(rules: typeof AUDIT_RULES, facts: Facts): Found {
  const found: Found = new Map();
  for (const rule of rules) {
    const findings = judge(rule, facts);
    if (findings.length > 0) found.set(rule.id, findings);
  }
  return found;
}

/** The facts of each work for themselves; the records are the same ones, not copies. */
function factsOfWorks(facts: Facts): Map<number, Facts> {
  const tasks = Map.groupBy(facts.tasks, (task) => task.work?.id ?? null);
  return new Map(
    facts.works.map((work) => {
      const formats = work.editions.flatMap((edition) => edition.formats);
      const own: Facts = {
        ...facts,
        works: [work],
        editions: work.editions,
        formats,
        listings: formats.flatMap((format) => format.listings),
        numbers: formats.flatMap((format) => format.numbers),
        tasks: tasks.get(work.id) ?? [],
      };
      return [work.id, own];
    }),
  );
}

/** Judges every work of the facts by the rules of a work; `step` hears of each. */
export function judgeWorks(
  facts: Facts,
  step?: (done: number, total: number) => void,
): Map<number, WorkPart> {
  const parts = new Map<number, WorkPart>();
  for (const [id, own] of factsOfWorks(facts)) {
    parts.set(id, { facts: own, found: judgeBy(OF_A_WORK, own) });
    step?.(parts.size, facts.works.length);
  }
  return parts;
}

const byIsbn = (a: NumberFacts, b: NumberFacts) => (a.isbn13 < b.isbn13 ? -1 : a.isbn13 > b.isbn13 ? 1 : 0);
const byDay = (a: TaskFacts, b: TaskFacts) => (a.dueOn < b.dueOn ? -1 : a.dueOn > b.dueOn ? 1 : a.id - b.id);

/** What belongs to no work. */
export interface Loose {
  numbers: Iterable<NumberFacts>;
  tasks: readonly TaskFacts[];
}

/** The facts of all works and of what belongs to none as one, in the order in which the rows are read. */
export function together(base: Facts, works: readonly Facts[], loose: Loose): Facts {
  return {
    ...base,
    works: works.flatMap((own) => own.works),
    editions: works.flatMap((own) => own.editions),
    formats: works.flatMap((own) => own.formats),
    listings: works.flatMap((own) => own.listings),
    numbers: [...loose.numbers, ...works.flatMap((own) => own.numbers)].sort(byIsbn),
    tasks: [...loose.tasks, ...works.flatMap((own) => own.tasks)].sort(byDay),
  };
}

/** All findings, as a run over everything gives them: `parts` stand in the order of the works. */
export function findingsOf(whole: Facts, parts: readonly WorkPart[]): Finding[] {
  const found = judgeBy(OF_THE_WHOLE, whole);
  for (const part of parts)
    for (const [rule, findings] of part.found) {
      const known = found.get(rule);
      if (known) known.push(...findings);
      else found.set(rule, [...findings]);
    }
  return bySeverity(AUDIT_RULES.flatMap((rule) => found.get(rule.id) ?? []));
}
