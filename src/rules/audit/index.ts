import { type Finding, SEVERITIES } from '../../contract/audit.ts';
import { channelRules } from './channels.ts';
import { dateRules } from './dates.ts';
import { editionRules } from './editions.ts';
import type { Facts } from './facts.ts';
import { formRules } from './forms.ts';
import { nameRules } from './names.ts';
import { numberStockRules } from './number-stock.ts';
import { numberRules } from './numbers.ts';
import { onSaleRules } from './on-sale.ts';
import { priceRules } from './prices.ts';
import { recordRules } from './record.ts';
import { retirementRules } from './retirement.ts';
import type { Rule } from './rule.ts';
import { standingRules } from './standings.ts';
import { submissionRules } from './submissions.ts';
import { taskRules } from './tasks.ts';

/** Every rule of the audit, theme after theme. */
export const AUDIT_RULES: readonly Rule[] = [
  ...numberRules,
  ...onSaleRules,
  ...retirementRules,
  ...standingRules,
  ...dateRules,
  ...channelRules,
  ...submissionRules,
  ...priceRules,
  ...editionRules,
  ...nameRules,
  ...formRules,
  ...recordRules,
  ...numberStockRules,
  ...taskRules,
];

/**
 * Runs the rules over the facts: what must be fixed first, then rule after rule, and within a rule in the
 * order of works, editions, formats and listings.
 */
export function audit(facts: Facts): Finding[] {
  const findings = AUDIT_RULES.flatMap(({ id, severity, mend, source, find }) =>
    find(facts).map((found): Finding => ({ ...found, rule: id, severity, mend, source })),
  );
  return SEVERITIES.flatMap((severity) => findings.filter((finding) => finding.severity === severity));
}
