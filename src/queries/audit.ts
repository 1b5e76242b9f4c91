import type { Audit } from '../contract/audit.ts';
import { auditCsv, auditFileName, auditPlainText } from '../exchange/audit-report.ts';
import { listingsThatDiffer } from '../records/sheets.ts';
import { gatherFacts } from '../rules/audit/gather.ts';
import { AUDIT_RULES, audit } from '../rules/audit/index.ts';
import { auditRows, numberCounts } from '../rules/audit/overview.ts';
import { readAuditRows } from '../store/audit.ts';
import { journalHead } from '../store/journal.ts';
import { isDemo, readSettings } from '../store/settings.ts';
import type { Queries, QueryContext } from './context.ts';

/**
 * Runs every rule over the catalogue as it stands, or as its own dates place it on a past day. The settings
 * (the days a removal may take, the imprint, the currency) are those of now.
 */
function run(context: QueryContext, asOf: string | undefined): Audit {
  const db = context.on(asOf);
  const day = asOf ?? context.today;
  const settings = readSettings(context.db);
  const rows = { ...readAuditRows(db, day), differences: listingsThatDiffer(db, day) };
  const facts = gatherFacts(rows, { day, today: context.today }, settings);
  return {
    catalogueName: settings.catalogueName,
    fileName: context.file.name,
    today: context.today,
    asOf: day,
    demo: isDemo(context.db),
    journalHead: journalHead(context.db).hash,
    rules: AUDIT_RULES.length,
    formats: auditRows(facts),
    numbers: numberCounts(facts),
    findings: audit(facts),
  };
}

export const auditQueries = {
  'audit.run': (context, input) => run(context, input.asOf),

  'audit.text': (context, input) => {
    const result = run(context, input.asOf);
    return {
      fileName: auditFileName(result, input.as),
      text: input.as === 'csv' ? auditCsv(result) : auditPlainText(result),
    };
  },

  'audit.rules': () => ({
    rules: AUDIT_RULES.map(({ id, sentence, severity, mend, source }) => ({
      id,
      sentence,
      severity,
      mend,
      source,
    })),
  }),
} satisfies Queries<'audit.run' | 'audit.text' | 'audit.rules'>;
