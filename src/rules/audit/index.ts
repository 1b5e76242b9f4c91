import { type Finding, SEVERITIES } from '../../contract/audit.ts';
import type { Facts } from './facts.ts';
import type { Rule } from './rule.ts';

/** Every rule of the audit, theme after theme. */
export const AUDIT_RULES: readonly Rule[] = [];

/**
 * Runs the rules over the facts: what must be fixed first, then rule after rule, and within a rule in the
 * order of works, editions, formats and listings.
 */
export function audit(facts: Facts, rules: readonly Rule[] = AUDIT_RULES): Finding[] {
  const findings = rules.flatMap(({ id, severity, mend, source, find }) =>
    find(facts).map((found): Finding => ({ ...found, rule: id, severity, mend, source })),
  );
  return SEVERITIES.flatMap((severity) => findings.filter((finding) => finding.severity === severity));
}
