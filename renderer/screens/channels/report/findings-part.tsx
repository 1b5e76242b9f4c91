import { Link } from 'wouter';
import {
  REPORT_FINDING_KINDS,
  type ReportFinding,
  type ReportFindingKind,
} from '../../../../src/contract/reports.ts';
import { useCommand } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { useReadOnly } from '../../../read-only.ts';
import { Button, Isbn, Refused, Standing } from '../../../ui/index.ts';
import { KIND_TITLES } from './words.ts';

interface Told {
  kind: ReportFindingKind;
  sentence: string;
  hyphenated: string | null;
}

/** Differences under the heading of their kind. */
export function ByKind<T extends Told>(props: {
  told: readonly T[];
  keyOf: (one: T) => string | number;
  after: (one: T) => React.ReactNode;
}) {
  const { told, keyOf, after } = props;
  return REPORT_FINDING_KINDS.map((kind) => {
    const own = told.filter((one) => one.kind === kind);
    if (own.length === 0) return null;
    return (
      <section key={kind} aria-label={KIND_TITLES[kind]} className="stack">
        <h3>
          {KIND_TITLES[kind]} <span className="soft">({own.length.toLocaleString()})</span>
        </h3>
        <ul className="report-differences">
          {own.map((one) => (
            <li key={keyOf(one)}>
              <p>
                {one.sentence} {one.hyphenated === null ? null : <Isbn value={one.hyphenated} />}
              </p>
              {after(one)}
            </li>
          ))}
        </ul>
      </section>
    );
  });
}

/** What is done about a finding: its task, or the button that makes one. */
function WhatIsDone({ finding }: { finding: ReportFinding }) {
  const readOnly = useReadOnly();
  const make = useCommand('reports.makeTask');
  const { task, workId, id, sentence } = finding;
  const ended = task !== null && (task.standing === 'done' || task.standing === 'dropped');
  return (
    <div className="row">
      <span className="soft">since the report of {formatDay(finding.on)}</span>
      {task === null ? null : (
        <span>
          Task <Standing of="task" value={task.standing} />: <Link href="/agenda">{task.title}</Link>
        </span>
      )}
      {task === null || ended ? (
        <Button
          label={`Make a task: ${sentence}`}
          pending={make.pending}
          disabled={readOnly !== undefined}
          reason={readOnly}
          onClick={() => void make.run({ findingId: id }, 'The task is in the agenda.')}
        >
          {ended ? 'Make another task' : 'Make a task'}
        </Button>
      ) : null}
      {workId === null ? null : <Link href={`/work/${workId}`}>Go to the work</Link>}
      <Refused refusal={make.refusal} />
    </div>
  );
}

/** The open findings of a channel's reports by kind, and those that were mended. */
export function FindingsPart({ findings, total }: { findings: readonly ReportFinding[]; total: number }) {
  const open = findings.filter(({ closedOn }) => closedOn === null);
  const closed = findings.filter(({ closedOn }) => closedOn !== null);
  return (
    <div className="stack">
      {open.length === 0 ? <p>No difference is open.</p> : null}
      <ByKind told={open} keyOf={({ id }) => id} after={(finding) => <WhatIsDone finding={finding} />} />
      {total > open.length ? (
        <p className="soft">and {(total - open.length).toLocaleString()} more, shown as these are mended</p>
      ) : null}
      {closed.length === 0 ? null : (
        <details>
          <summary>Mended ({closed.length.toLocaleString()})</summary>
          <ul className="report-differences">
            {closed.map((finding) => (
              <li key={finding.id}>
                <p>{finding.sentence}</p>
                <p className="soft">
                  told {formatDay(finding.on)}, mended {formatDay(finding.closedOn ?? '')}
                </p>
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
