import { sha256 } from '@noble/hashes/sha2';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils';
import { channelRules } from './channels.ts';
import { dateRules } from './dates.ts';
import { editionRules } from './editions.ts';
import { formRules } from './forms.ts';
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
