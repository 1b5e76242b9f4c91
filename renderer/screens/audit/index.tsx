import { useQueryOf } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { useAsOf } from '../../location.ts';
import { useAuditCounts } from '../../shell/use-audit-counts.ts';
import { EmptyState, Notice, PageHeader, Refused, Section } from '../../ui/index.ts';
import { HelpLink } from '../help/help-link.tsx';
import { Accepted } from './accepted.tsx';
import { Again } from './again.tsx';
import { DayForm } from './day-form.tsx';
import { Exports } from './exports.tsx';
import { Findings } from './findings.tsx';
import { FormatGroups } from './format-groups.tsx';
import { ReportFacts } from './report-facts.tsx';
import { RulesList } from './rules-list.tsx';
import { NumbersLeft, Summary } from './summary.tsx';
import { usePrinting } from './use-printing.ts';
import type { Audit } from './words.ts';
import './audit.css';

/** The Audit screen: what stands where, and what is wrong, today or on a past day. */
export default function AuditScreen() {
  const { asOf } = useAsOf();
  const { counts, done, total, error } = useAuditCounts(asOf);
  // Asked for before it is at hand, the audit of a large catalogue would keep everything else waiting.
  const run = useQueryOf('audit.run', { asOf }, { keep: true, enabled: counts !== null });
  return (
    <>
      <PageHeader
        title="Audit"
        lede={run.data ? <Summary audit={run.data} /> : undefined}
        actions={<Exports asOf={asOf} />}
      />
      <Refused refusal={run.error ?? error} />
      {run.isPending ? (
        <p className="waiting">
          Going through the catalogue…
          {total > 0 ? ` ${done.toLocaleString()} of ${total.toLocaleString()} works so far.` : ''}
        </p>
      ) : null}
      {run.data ? <Report audit={run.data} /> : null}
    </>
  );
}

function Report({ audit }: { audit: Audit }) {
  const printing = usePrinting();
  const rules = useQueryOf('audit.rules', {}).data?.rules ?? [];
  return (
    <>
      <DayForm today={audit.today} />
      <Section title="Findings">
        <Findings audit={audit} rules={rules} whole={printing} />
      </Section>
      {audit.accepted.length > 0 ? (
        <Section title="Accepted">
          <Accepted accepted={audit.accepted} whole={printing} />
        </Section>
      ) : null}
      <Section title="Formats">
        {audit.formats.length === 0 ? (
          <EmptyState title={`No format as of ${formatDay(audit.asOf)}`}>
            Formats are added to the editions of a work.
          </EmptyState>
        ) : (
          <FormatGroups formats={audit.formats} whole={printing} />
        )}
      </Section>
      <Section title="Numbers">
        <NumbersLeft numbers={audit.numbers} />
      </Section>
      <Section title="Rules">
        {audit.asOf === audit.today ? <Again /> : null}
        <RulesList rules={rules} />
      </Section>
      <Section title="This report">
        <ReportFacts audit={audit} />
      </Section>
      <div className="audit-caution">
        <Notice>
          This audit advises; it does not decide. Where it differs from the manual of your ISBN agency or from
          a channel’s own terms, those prevail. It reads what was recorded here and cannot see what a channel
          shows. <HelpLink topic="audit" />
        </Notice>
      </div>
    </>
  );
}
