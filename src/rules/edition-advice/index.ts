import type { EditionChange } from '../../contract/edition-advice.ts';
import { FORM_RULES, SALE_RULES } from './form-rules.ts';
import { NAME_RULES } from './name-rules.ts';
import { BESIDE_RULES, RIGHTS_RULES } from './rights-rules.ts';
import type { AdviceRule } from './rule.ts';
import { TEXT_RULES } from './text-rules.ts';

/** The whole table, in the order it is asked and shown. */
export const ADVICE_RULES: readonly AdviceRule[] = [
  ...TEXT_RULES,
  ...NAME_RULES,
  ...FORM_RULES,
  ...SALE_RULES,
  ...RIGHTS_RULES,
  ...BESIDE_RULES,
];

const BY_CHANGE = new Map(ADVICE_RULES.map((rule) => [rule.change, rule]));

/** The rule on one kind of change; each has exactly one. */
export function ruleOn(change: EditionChange): AdviceRule {
  const rule = BY_CHANGE.get(change);
  if (!rule) throw new Error(`No rule is written on ${change}.`);
  return rule;
}

/** Said wherever advice is given. */
export const CAUTION =
  'This is advice. The manual of your ISBN agency prevails; where a line is your own call and money or rights hang on it, ask the agency. The full text of the manual of 2017 was not at hand: rules rest on the places named beside them.';
