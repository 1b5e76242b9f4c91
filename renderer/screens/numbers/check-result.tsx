import { Link } from 'wouter';
import type { IsbnCheck } from '../../../src/contract/isbns.ts';
import { Button, CopyButton, Standing } from '../../ui/index.ts';
import { NoticeShape } from '../../ui/standing-shapes.tsx';
import { markedParts } from './check-lines.ts';

/** The format a number belongs to, as the catalogue calls it. */
export interface CheckedFormat {
  workId: number;
  label: string;
}

interface CheckResultProps {
  check: IsbnCheck;
  format: CheckedFormat | undefined;
  onUse: (repair: string) => void;
}

/** The line as typed, with the sign at fault marked. */
function Typed({ text, position }: { text: string; position: number | null }) {
  const [before, sign, after] = markedParts(text, position);
  return (
    <p className="check-typed mono">
      {before}
      {sign === '' ? null : <mark className="check-mark">{sign}</mark>}
      {after}
    </p>
  );
}

function Elements({ check }: { check: IsbnCheck }) {
  return (
    <p className="soft">
      {check.agency} · registrant <span className="mono">{check.registrant}</span> · publication{' '}
      <span className="mono">{check.publication}</span>
      {check.isbn10 === null ? null : (
        <>
          {' '}
          · ISBN-10 <span className="mono">{check.isbn10}</span>
        </>
      )}
    </p>
  );
}

/** Where a valid number stands in this catalogue. */
function Place({ check, format }: Pick<CheckResultProps, 'check' | 'format'>) {
  if (check.standing === null) return null;
  return (
    <p className="row">
      {check.standing === 'outside every block' ? (
        <span>It lies in none of your recorded blocks.</span>
      ) : (
        <>
          <span>In this catalogue:</span>
          <Standing of="number" value={check.standing} />
        </>
      )}
      {format ? <Link href={`/work/${format.workId}`}>{format.label}</Link> : null}
    </p>
  );
}

/** One checked line: valid with its parts, or the exact reason why not and a repair to take or leave. */
export function CheckResult({ check, format, onUse }: CheckResultProps) {
  const { problem, hyphenated } = check;
  const repair = problem?.repair ?? null;
  return (
    <li className={problem ? 'check-line check-wrong' : 'check-line'}>
      <NoticeShape tone={problem ? 'stop' : 'done'} />
      <div className="check-text">
        <Typed text={check.text} position={problem?.position ?? null} />
        {problem ? (
          <>
            <p>
              <strong>Not valid.</strong> {problem.message}
            </p>
            {problem.hint === null ? null : <p className="soft">{problem.hint}</p>}
            {repair === null ? null : <Button onClick={() => onUse(repair)}>Use {repair}</Button>}
          </>
        ) : (
          <>
            <p className="row">
              <span>
                <strong>Valid:</strong> <span className="mono nowrap">{hyphenated}</span>
              </span>
              {hyphenated === null ? null : <CopyButton small text={hyphenated} what={hyphenated} />}
            </p>
            <Elements check={check} />
            <Place check={check} format={format} />
          </>
        )}
      </div>
    </li>
  );
}
