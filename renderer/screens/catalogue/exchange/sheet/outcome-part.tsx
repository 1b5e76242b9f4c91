import type { SheetOutcome, SheetProblem } from '../../../../../src/contract/sheets.ts';
import { Button, Isbn } from '../../../../ui/index.ts';
import { counted } from './choices.ts';

type Work = SheetOutcome['works'][number];
type Row = Work['editions'][number]['rows'][number];

const WHAT: Record<Row['what'], string> = {
  new: 'new',
  changed: 'changed',
  same: 'as it is here',
  refused: 'refused',
};

function OneRow({ row }: { row: Row }) {
  return (
    <li>
      <span className="soft">Row {row.row}:</span> {row.name}{' '}
      {row.hyphenated === null ? null : <Isbn value={row.hyphenated} />}{' '}
      <strong className={`outcome outcome-${row.what}`}>{WHAT[row.what]}</strong>
      {row.changes.length === 0 ? '' : ` (${row.changes.join(', ')})`}
    </li>
  );
}

/** How rows were grouped to works and editions. */
export function GroupingPart({ outcome }: { outcome: SheetOutcome }) {
  const { works, worksTotal } = outcome;
  if (works.length === 0) return null;
  return (
    <section aria-label="Works and editions" className="stack">
      <h3>Works and editions</h3>
      <ul className="outcome-works">
        {works.map((work) => (
          <li key={work.editions[0]?.rows[0]?.row}>
            <i>{work.title}</i>, <span>{work.known ? 'a work that is here' : 'a new work'}</span>
            <ul>
              {work.editions.map((edition) => (
                <li key={edition.rows[0]?.row}>
                  {edition.label}: {edition.known ? 'an edition that is here' : 'a new edition'}
                  <ul>
                    {edition.rows.map((row) => (
                      <OneRow key={row.row} row={row} />
                    ))}
                  </ul>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
      {worksTotal > works.length ? (
        <p className="soft">and {counted(worksTotal - works.length, 'more work', 'more works')}</p>
      ) : null}
    </section>
  );
}

interface ProblemsProps {
  problems: readonly SheetProblem[];
  total: number;
  onMend: (problem: SheetProblem) => void;
}

/** Every cell or row that is not taken over, why, and what it may have meant. */
export function ProblemsPart({ problems, total, onMend }: ProblemsProps) {
  if (problems.length === 0) return null;
  return (
    <section aria-label="What is refused" className="stack">
      <h3>What is refused</h3>
      <ol className="outcome-problems">
        {problems.map((problem) => (
          <li key={`${problem.row} ${problem.column}`}>
            <p>
              <strong>
                Row {problem.row}
                {problem.header === '' ? '' : `, ${problem.header}`}
              </strong>{' '}
              {problem.text === '' ? null : <span className="mono">{problem.text}</span>}
            </p>
            <p>{problem.message}</p>
            {problem.repair === null ? null : (
              <Button label={`Use ${problem.repair} in row ${problem.row}`} onClick={() => onMend(problem)}>
                Use {problem.repair}
              </Button>
            )}
          </li>
        ))}
      </ol>
      {total > problems.length ? (
        <p className="soft">and {counted(total - problems.length, 'more')}</p>
      ) : null}
    </section>
  );
}
