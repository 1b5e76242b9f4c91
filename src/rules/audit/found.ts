import { type Finding, SEVERITIES, type Severity } from '../../contract/audit.ts';
import type { Facts } from './facts.ts';
import { fingerprintOf } from './fingerprint.ts';
import { indexOf } from './lookup.ts';
import { mendingOf } from './mendings.ts';
import { byCode, type Found, type Rule } from './rule.ts';

/** A finding as it is kept: with its rule's place among all rules, and its own place among those of the rule. */
export interface Kept {
  finding: Finding;
  rule: number;
  place: string;
  /** Tells findings of one place apart, where a rule by key made them: the number and the key. */
  within: string;
}

/** Where a finding of tasks or of numbers stands among those of its rule; all others stand in the order of works. */
function placeOf(rule: Rule, found: Found, facts: Facts): string {
  const of = 'of' in rule ? rule.of : undefined;
  if (of === 'numbers') return found.isbn13 ?? '';
  if (of !== 'tasks') return '';
  const task = indexOf(facts).tasks.get(found.taskId ?? 0);
  return `${task?.dueOn} ${String(found.taskId).padStart(12, '0')}`;
}

/** What a rule saw as a whole finding; `facts` hold the records it is about, `key` is what it lay under. */
export function keptOf(rule: Rule, place: number, found: Found, facts: Facts, key?: string): Kept {
  const { id, severity, mend, source } = rule;
  const finding: Finding = {
    ...found,
    rule: id,
    severity,
    mend,
    source,
    mending: mendingOf(id, found, facts),
    fingerprint: fingerprintOf(rule, found, facts),
  };
  const within = key === undefined ? '' : `${found.isbn13 ?? ''} ${key}`;
  return { finding, rule: place, place: placeOf(rule, found, facts), within };
}

/** Puts works in their order; a finding about no work comes first. */
type WorkOrder = (a: number | null, b: number | null) => number;

/** What is found, by what it was found in: a change replaces only its own part, and counts are kept up meanwhile. */
export class Findings {
  readonly #of = new Map<string, readonly Kept[]>();
  readonly #byFingerprint = new Map<string, { finding: Finding; times: number }>();
  readonly #counts: Record<Severity, number> = { 'must fix': 0, 'should fix': 0, note: 0 };
  #inOrder: Finding[] | undefined;

  /** Puts findings in place of those that were found in the same. */
  put(where: string, found: readonly Kept[]): void {
    const before = this.#of.get(where) ?? [];
    if (before.length === 0 && found.length === 0) return;
    for (const { finding } of before) this.#count(finding, -1);
    for (const { finding } of found) this.#count(finding, 1);
    if (found.length > 0) this.#of.set(where, found);
    else this.#of.delete(where);
    this.#inOrder = undefined;
  }

  #count(finding: Finding, by: 1 | -1): void {
    const { fingerprint, severity } = finding;
    this.#counts[severity] += by;
    const times = (this.#byFingerprint.get(fingerprint)?.times ?? 0) + by;
    if (times === 0) this.#byFingerprint.delete(fingerprint);
    else this.#byFingerprint.set(fingerprint, { finding, times });
  }

  /** How many there are of each gravity. */
  get counts(): Readonly<Record<Severity, number>> {
    return this.#counts;
  }

  /** The finding of a fingerprint, and how often it was found. */
  of(fingerprint: string): { finding: Finding; times: number } | undefined {
    return this.#byFingerprint.get(fingerprint);
  }

  /** All findings: the gravest first, then rule after rule, then in the order of works, numbers or days. */
  inOrder(works: WorkOrder): readonly Finding[] {
    if (this.#inOrder) return this.#inOrder;
    const byRule = Map.groupBy([...this.#of.values()].flat(), ({ rule }) => rule);
    const rules = [...byRule].sort(([a], [b]) => a - b).map(([, found]) => found);
    const sorted = rules.flatMap((found) =>
      found
        .sort(
          (a, b) =>
            byCode(a.place, b.place) ||
            works(a.finding.workId, b.finding.workId) ||
            byCode(a.within, b.within),
        )
        .map(({ finding }) => finding),
    );
    this.#inOrder = SEVERITIES.flatMap((severity) =>
      sorted.filter((finding) => finding.severity === severity),
    );
    return this.#inOrder;
  }
}
