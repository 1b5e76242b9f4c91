import type { Audit, Finding, Severity } from '../contract/audit.ts';
import { auditCsv, auditFileName, auditPlainText } from '../exchange/audit-report.ts';
import { auditHtml } from '../exchange/report-html.ts';
import { auditPdf } from '../exchange/report-pdf.ts';
import { withAcceptances } from '../records/findings.ts';
import { AUDIT_RULES, RULE_SET } from '../rules/audit/index.ts';
import { auditRows, numberCounts } from '../rules/audit/overview.ts';
import { acceptancesOn } from '../store/acceptances.ts';
import { journalHead } from '../store/journal.ts';
import { isDemo, readSettings } from '../store/settings.ts';
import type { Queries, QueryContext } from './context.ts';

/** What is found on a day, with what somebody accepted told apart. */
function found(context: QueryContext, asOf: string | undefined) {
  const day = asOf ?? context.today;
  const { facts, findings } = context.audit.on(day, context.today, context.on(asOf));
  return { day, facts, ...withAcceptances(findings, acceptancesOn(context.db, day)) };
}

function run(context: QueryContext, asOf: string | undefined): Audit {
  const { day, facts, findings, accepted } = found(context, asOf);
  return {
    catalogueName: readSettings(context.db).catalogueName,
    fileName: context.file.name,
    today: context.today,
    asOf: day,
    demo: isDemo(context.db),
    journalHead: journalHead(context.db).hash,
    rules: AUDIT_RULES.length,
    ruleSet: RULE_SET,
    formats: auditRows(facts),
    numbers: numberCounts(facts),
    findings,
    accepted,
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

  'audit.report': (context, { asOf, as, paper }) => {
    const result = run(context, asOf);
    const bytes = as === 'pdf' ? auditPdf(result, paper) : Buffer.from(auditHtml(result, paper));
    return {
      fileName: auditFileName(result, as),
      mediaType: as === 'pdf' ? 'application/pdf' : 'text/html',
      base64: bytes.toString('base64'),
    };
  },

  'audit.count': (context, { asOf }) => {
    const { findings, accepted } = found(context, asOf);
    const of = (severity: Severity) =>
      findings.filter((finding: Finding) => finding.severity === severity).length;
    return {
      'must fix': of('must fix'),
      'should fix': of('should fix'),
      note: of('note'),
      accepted: accepted.length,
    };
  },

  'audit.again': ({ audit, today, step }) => {
    const { judged, before } = audit.again(today, step);
    const known = new Set(before.map((finding) => finding.fingerprint));
    const now = new Set(judged.findings.map((finding) => finding.fingerprint));
    return {
      rules: AUDIT_RULES.length,
      works: judged.facts.works.length,
      formats: judged.facts.formats.length,
      findings: judged.findings.length,
      differences:
        [...now].filter((one) => !known.has(one)).length + [...known].filter((one) => !now.has(one)).length,
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
} satisfies Queries<
  'audit.report' | 'audit.run' | 'audit.text' | 'audit.count' | 'audit.again' | 'audit.rules'
>;
