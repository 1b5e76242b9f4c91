import { sha256 } from '@noble/hashes/sha2';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils';
import { type Finding, SEVERITIES } from '../../contract/audit.ts';
import { channelRules } from './channels.ts';
import { dateRules } from './dates.ts';
import { editionRules } from './editions.ts';
import type { Facts } from './facts.ts';
import { fingerprintOf } from './fingerprint.ts';
import { formRules } from './forms.ts';
import { mendingOf } from './mendings.ts';
import { nameRules } from './names.ts';
import { numberStockRules } from './number-stock.ts';
import { numberRules } from './numbers.ts';
import { onSaleRules } from './on-sale.ts';
import { priceRules } from './prices.ts';
import { proofFileRules } from './proof-files.ts';
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
  ...proofFileRules,
  ...priceRules,
  ...editionRules,
  ...nameRules,
  ...formRules,
  ...recordRules,
  ...numberStockRules,
  ...taskRules,
];

/** Stands for the words of all rules, eight hexadecimal digits: another one once a rule has changed. */
export const RULE_SET = bytesToHex(
  sha256(
    utf8ToBytes(
      JSON.stringify(
        AUDIT_RULES.map(({ id, sentence, severity, mend, source }) => [id, sentence, severity, mend, source]),
      ),
    ),
  ),
).slice(0, 8);

/** What one rule finds in the facts, whole findings in the order of works, editions, formats and listings. */
export function judge(rule: Rule, facts: Facts): Finding[] {
  const { id, severity, mend, source } = rule;
  return rule.find(facts).map(
    (found): Finding => ({
      ...found,
      rule: id,
      severity,
      mend,
      source,
      mending: mendingOf(id, found, facts),
      fingerprint: fingerprintOf(rule, found, facts),
    }),
  );
}

/** Findings as they are shown: the gravest first, otherwise in the order in which they come. */
export function bySeverity(findings: readonly Finding[]): Finding[] {
  return SEVERITIES.flatMap((severity) => findings.filter((finding) => finding.severity === severity));
}

/** Runs every rule over the facts: what must be fixed first, then rule after rule. */
export function audit(facts: Facts): Finding[] {
  return bySeverity(AUDIT_RULES.flatMap((rule) => judge(rule, facts)));
}
