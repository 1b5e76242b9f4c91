import { Button } from '../../../ui/index.ts';
import type { OwnedProblem } from './list.ts';

/** More than these would not be mended by hand one by one. */
const NAMED = 100;

interface ProblemListProps {
  problems: readonly OwnedProblem[];
  /** The list as it would be with the offered repair, or undefined where it cannot be made by itself. */
  mended: (problem: OwnedProblem) => string | undefined;
  onMend: (text: string) => void;
}

function Problem({
  problem,
  mended,
  onMend,
}: { problem: OwnedProblem } & Omit<ProblemListProps, 'problems'>) {
  const { line, column, text, message, repair } = problem;
  const better = repair === null ? undefined : mended(problem);
  return (
    <li>
      <p>
        <strong>
          Line {line}
          {column === null ? '' : `, column ${column}`}
        </strong>{' '}
        {text === '' ? null : <span className="mono owned-text">{text}</span>}
      </p>
      <p>{message}</p>
      {repair === null ? null : better === undefined ? (
        <p className="soft">
          It may be <span className="mono">{repair}</span>.
        </p>
      ) : (
        <Button label={`Use ${repair} on line ${line}`} onClick={() => onMend(better)}>
          Use {repair}
        </Button>
      )}
    </li>
  );
}

/** Every place of the list that was not understood: why, and what it may have meant. */
export function ProblemList({ problems, ...rest }: ProblemListProps) {
  if (problems.length === 0) return null;
  return (
    <section aria-label="Places that need a look" className="stack">
      <h3>Places that need a look</h3>
      <ol className="owned-problems">
        {problems.slice(0, NAMED).map((problem) => (
          <Problem key={`${problem.line} ${problem.column} ${problem.text}`} problem={problem} {...rest} />
        ))}
      </ol>
      {problems.length > NAMED ? (
        <p className="soft">and {(problems.length - NAMED).toLocaleString()} more</p>
      ) : null}
    </section>
  );
}
