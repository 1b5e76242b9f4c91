import { type Audit, type AuditRow, type Finding, SEVERITIES, type Severity } from '../contract/audit.ts';
import type { FormatStanding } from '../contract/terms.ts';

// What every printed form of the audit says, in the order in which it says it.

export const DEMO = 'Demo catalogue: its numbers are invented and must never be printed.';
export const CAUTION =
  "This audit advises; it does not decide. Where it differs from the manual of your ISBN agency or from a channel's own terms, those prevail. It reads what was recorded here and cannot see what a channel shows.";

/** What is on sale first, then what leaves it, then what is under way, then what has ended. */
const GROUPS: readonly [FormatStanding, string][] = [
  ['live', 'Live'],
  ['retiring', 'Retiring'],
  ['proofing', 'Proofing'],
  ['committed', 'Committed'],
  ['planned', 'Planned'],
  ['retired', 'Retired'],
  ['cancelled', 'Cancelled'],
];

export const SEVERITY_NAMES: Record<Severity, string> = {
  'must fix': 'Must fix',
  'should fix': 'Should fix',
  note: 'Notes',
};

export function counted(count: number, one: string, many: string): string {
  return `${count.toLocaleString('en')} ${count === 1 ? one : many}`;
}

/** The formats by standing, without standings that no format has. */
export function formatGroups(audit: Audit): { standing: FormatStanding; name: string; rows: AuditRow[] }[] {
  const groups = Map.groupBy(audit.formats, (format) => format.standing);
  return GROUPS.flatMap(([standing, name]) => {
    const rows = groups.get(standing);
    return rows ? [{ standing, name, rows }] : [];
  });
}

/** The findings by gravity and rule, without gravities and rules that have none. */
export function findingGroups(audit: Audit): { severity: Severity; count: number; rules: Finding[][] }[] {
  return SEVERITIES.flatMap((severity) => {
    const found = audit.findings.filter((finding) => finding.severity === severity);
    const rules = [...Map.groupBy(found, (finding) => finding.rule).values()];
    return found.length > 0 ? [{ severity, count: found.length, rules }] : [];
  });
}

/** '3 live, 1 retired' */
export function headline(audit: Audit): string {
  const groups = formatGroups(audit).map(
    ({ name, rows }) => `${rows.length.toLocaleString('en')} ${name.toLowerCase()}`,
  );
  return groups.length > 0 ? groups.join(', ') : 'No format is recorded';
}

/** By what a report is known later: name and value of each fact. */
export function reportFacts(audit: Audit): [string, string][] {
  const { free, reserved, assigned, spent } = audit.numbers;
  const said = (count: number) => count.toLocaleString('en');
  const found = SEVERITIES.map((severity) => {
    const count = audit.findings.filter((finding) => finding.severity === severity).length;
    return severity === 'note' ? counted(count, 'note', 'notes') : `${said(count)} ${severity}`;
  });
  return [
    ['Catalogue', audit.catalogueName],
    ['File', audit.fileName],
    ['Made on', audit.today],
    ['Speaks of', audit.asOf === audit.today ? audit.asOf : `${audit.asOf}, a past day`],
    ['Rules applied', `${said(audit.rules)}, rule set ${audit.ruleSet}`],
    ['Findings', `${found.join(', ')}; ${said(audit.accepted.length)} accepted`],
    [
      'Numbers',
      `${said(free)} free, ${said(reserved)} reserved, ${said(assigned)} assigned, ${said(spent)} spent`,
    ],
    ['Journal head', audit.journalHead],
  ];
}
