import { useState } from 'react';
import { formatDay } from '../../lib/dates.ts';
import { Button, Notice, Standing } from '../../ui/index.ts';
import { FindingLine } from './finding-line.tsx';
import { type Audit, byRule, type Finding, type Rule, SEVERITY_ORDER, type Severity } from './words.ts';

/** How many findings of one rule are shown before the rest is asked for. */
const SHOWN = 10;

interface RuleFindingsProps {
  findings: readonly Finding[];
  rule: Rule | undefined;
  whole: boolean;
}

/** What one rule found, then once how to mend it and, on demand, where the rule comes from. */
function RuleFindings({ findings, rule, whole }: RuleFindingsProps) {
  const [all, setAll] = useState(false);
  const [first] = findings;
  if (!first) return null;
  const shown = all || whole ? findings : findings.slice(0, SHOWN);
  return (
    <div className="finding-rule">
      <ul>
        {shown.map((finding) => (
          <FindingLine key={finding.fingerprint} finding={finding} />
        ))}
      </ul>
      {shown.length < findings.length ? (
        <Button kind="quiet" onClick={() => setAll(true)}>
          Show all {findings.length.toLocaleString()} of this rule
        </Button>
      ) : null}
      <p className="finding-mend">To mend: {first.mend}</p>
      <details className="finding-source" open={whole || undefined}>
        <summary>Rule and source</summary>
        <p>
          {rule ? `${rule.sentence} ` : ''}
          {first.source}
        </p>
      </details>
    </div>
  );
}

interface SeverityFindingsProps {
  severity: Severity;
  findings: readonly Finding[];
  rules: ReadonlyMap<string, Rule>;
  whole: boolean;
}

function SeverityFindings({ severity, findings, rules, whole }: SeverityFindingsProps) {
  return (
    <div className="finding-severity">
      <h3>
        <Standing of="severity" value={severity} detail={`(${findings.length.toLocaleString()})`} />
      </h3>
      {byRule(findings).map((group) => (
        <RuleFindings
          key={group[0]?.rule}
          findings={group}
          rule={rules.get(group[0]?.rule ?? '')}
          whole={whole}
        />
      ))}
    </div>
  );
}

interface FindingsProps {
  audit: Audit;
  rules: readonly Rule[];
  /** Nothing is folded away: for printing. */
  whole: boolean;
}

/** What is wrong, the gravest first; or the sentence that nothing is. */
export function Findings({ audit, rules, whole }: FindingsProps) {
  const byId = new Map(rules.map((rule) => [rule.id, rule]));
  if (audit.findings.length === 0)
    return (
      <Notice tone="done" title="Nothing to fix.">
        None of the {audit.rules.toLocaleString()} rules found anything as of {formatDay(audit.asOf)}.
      </Notice>
    );
  return SEVERITY_ORDER.map((severity) => {
    const found = audit.findings.filter((finding) => finding.severity === severity);
    return found.length === 0 ? null : (
      <SeverityFindings key={severity} severity={severity} findings={found} rules={byId} whole={whole} />
    );
  });
}
