import type { Audit } from '../contract/audit.ts';
import { auditCsv, auditFileName, auditPlainText } from '../exchange/audit-report.ts';
import { auditHtml } from '../exchange/report-html.ts';
import { auditPdf } from '../exchange/report-pdf.ts';
import { countOpen, withAcceptances } from '../records/findings.ts';
import { AUDIT_RULES, RULE_SET } from '../rules/audit/index.ts';
import { auditRows } from '../rules/audit/overview.ts';
import { acceptancesOn } from '../store/acceptances.ts';
import { journalHead } from '../store/journal.ts';
import { isDemo, readSettings } from '../store/settings.ts';
import type { Queries, QueryContext } from './context.ts';

/** The audit of a day, and what was accepted then. */
function judged(context: QueryContext, asOf: string | undefined) {
  const day = asOf ?? context.today;
  const board = context.audit.on(day, context.today, context.on(asOf));
  return { day, board, acceptances: acceptancesOn(context.db, day) };
}

function counted(context: QueryContext, asOf: string | undefined) {
  const { board, acceptances } = judged(context, asOf);
  return countOpen(board, acceptances);
}

function run(context: QueryContext, asOf: string | undefined): Audit {
  const { day, board, acceptances } = judged(context, asOf);
  const { findings, accepted } = withAcceptances(board.findings, acceptances);
  return {
    catalogueName: readSettings(context.db).catalogueName,
    fileName: context.file.name,
    today: context.today,
    asOf: day,
    demo: isDemo(context.db),
    journalHead: journalHead(context.db).hash,
    rules: AUDIT_RULES.length,
    ruleSet: RULE_SET,
    formats: auditRows(board.formats),
    numbers: board.numbers,
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

  'audit.count': (context, { asOf }) => counted(context, asOf),

  'audit.progress': (context) => {
    const { ready, ...how } = context.audit.progress(context.today);
    return { counts: ready ? counted(context, undefined) : null, ...how };
  },

  'audit.again': ({ audit, today, step }) => {
    const { board, before } = audit.again(today, step);
    const { findings, size } = board;
    const known = new Set(before.map((finding) => finding.fingerprint));
    const now = new Set(findings.map((finding) => finding.fingerprint));
    return {
      rules: AUDIT_RULES.length,
      ...size,
      findings: findings.length,
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
  | 'audit.report'
  | 'audit.run'
  | 'audit.text'
  | 'audit.count'
  | 'audit.progress'
  | 'audit.again'
  | 'audit.rules'
>;
