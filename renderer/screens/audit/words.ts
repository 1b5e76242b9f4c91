import type { OutputOf } from '../../../src/contract/index.ts';
import type { FormatStanding } from '../../../src/contract/terms.ts';
import { counted } from '../catalogue/words.ts';

export type Audit = OutputOf<'audit.run'>;
export type Finding = Audit['findings'][number];
export type Mending = NonNullable<Finding['mending']>;
export type Severity = Finding['severity'];
export type Rule = OutputOf<'audit.rules'>['rules'][number];

/** What is dealt with first. */
export const SEVERITY_ORDER: readonly Severity[] = ['must fix', 'should fix', 'note'];

/** '2 must fix, 1 should fix, 3 notes' */
export function severitiesInWords(findings: readonly Finding[]): string {
  const count = (severity: Severity) => findings.filter((finding) => finding.severity === severity).length;
  return [
    `${count('must fix').toLocaleString()} must fix`,
    `${count('should fix').toLocaleString()} should fix`,
    counted(count('note'), 'note'),
  ].join(', ');
}

/** Where a finding is mended: the agenda for tasks, its work at the format or edition, or else the numbers; undefined for no place. */
export function routeOfFinding(finding: Finding): { to: string; label: string } | undefined {
  const { workId, editionId, formatId } = finding;
  if (finding.taskId !== null)
    return { to: workId === null ? '/agenda' : `/agenda?work=${workId}`, label: 'Open the agenda' };
  if (workId !== null && formatId !== null)
    return { to: `/work/${workId}?format=${formatId}`, label: 'Open the format' };
  if (workId !== null && editionId !== null)
    return { to: `/work/${workId}?edition=${editionId}`, label: 'Open the edition' };
  if (workId !== null) return { to: `/work/${workId}`, label: 'Open the work' };
  return finding.isbn13 === null ? undefined : { to: '/numbers', label: 'Open the numbers' };
}

/** Findings of one rule together, in the order in which they came. */
export function byRule(findings: readonly Finding[]): Finding[][] {
  return [...Map.groupBy(findings, (finding) => finding.rule).values()];
}

/** How many formats stand where. */
export function standingCounts(formats: Audit['formats']): Record<FormatStanding, number> {
  const count = (standing: FormatStanding) => formats.filter((row) => row.standing === standing).length;
  return {
    planned: count('planned'),
    committed: count('committed'),
    proofing: count('proofing'),
    live: count('live'),
    retiring: count('retiring'),
    retired: count('retired'),
    cancelled: count('cancelled'),
  };
}

/** The day half a year later, or the last day of that month; `YYYY-MM-DD` in and out. */
export function halfAYearAfter(day: string): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const lastOfMonth = new Date(Date.UTC(year, month + 6, 0)).getUTCDate();
  return new Date(Date.UTC(year, month + 5, Math.min(date, lastOfMonth))).toISOString().slice(0, 10);
}
