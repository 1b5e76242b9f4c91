import { useState } from 'react';
import type { CheckDetail, KeptLine } from '../../../../src/contract/proof-checks/checks.ts';
import { Button } from '../../../ui/index.ts';
import { NoticeShape } from '../../../ui/standing-shapes.tsx';
import { ReasonDialog } from './reason-dialog.tsx';
import { pageName, STATES } from './words.ts';

interface LinesProps {
  check: CheckDetail;
  editable: boolean;
  chosen: KeptLine | undefined;
  onChoose: (line: KeptLine) => void;
}

/** The lines of a check in four groups, each with its shape and word. */
export function Lines({ check, editable, chosen, onChoose }: LinesProps) {
  const [reasoned, setReasoned] = useState<KeptLine>();
  return (
    <div className="check-lines">
      {STATES.map(({ state, title, tone, means }) => {
        const lines = check.lines.filter((line) => line.state === state);
        if (lines.length === 0) return null;
        return (
          <section key={state} aria-label={title}>
            <h3 className={`check-group check-${tone}`}>
              <NoticeShape tone={tone} />
              {title} <span className="soft">({lines.length})</span>
            </h3>
            <p className="soft">{means}</p>
            <ul className="check-list">
              {lines.map((line) => (
                <Line
                  key={line.id}
                  line={line}
                  place={line.page === null ? '' : pageName(check.kind, line.page)}
                  chosen={line.id === chosen?.id}
                  pictured={check.pictured.some(({ page }) => page === line.page)}
                  onChoose={() => onChoose(line)}
                  onReason={editable ? () => setReasoned(line) : undefined}
                />
              ))}
            </ul>
          </section>
        );
      })}
      {reasoned ? <ReasonDialog line={reasoned} onClose={() => setReasoned(undefined)} /> : null}
    </div>
  );
}

interface LineProps {
  line: KeptLine;
  /** 'page 4', empty where it was seen nowhere. */
  place: string;
  chosen: boolean;
  pictured: boolean;
  onChoose: () => void;
  onReason: (() => void) | undefined;
}

function Line({ line, place, chosen, pictured, onChoose, onReason }: LineProps) {
  const { label, expected, found, advice, reason, state } = line;
  return (
    <li className={chosen ? 'check-line check-line-chosen' : 'check-line'}>
      <div className="check-line-head">
        <strong>{label}</strong>
        {place === '' ? null : pictured ? (
          <Button kind="quiet" label={`Show ${place}: ${label}`} onClick={onChoose}>
            Show {place}
          </Button>
        ) : (
          <span className="soft">{place}</span>
        )}
      </div>
      {expected === '' && found === '' ? null : (
        <dl className="check-both">
          <dt>On record</dt>
          <dd>{expected === '' ? '—' : expected}</dd>
          <dt>In the file</dt>
          <dd>{found === '' ? '—' : found}</dd>
        </dl>
      )}
      {advice === '' || state === 'agreed' ? null : <p>{advice}</p>}
      {reason ? (
        <p className="check-reason">
          <strong>Accepted on {reason.on}:</strong> {reason.text}
        </p>
      ) : null}
      {state === 'differs' && !reason && onReason ? (
        <Button label={`Give a reason: ${label}`} onClick={onReason}>
          Give a reason
        </Button>
      ) : null}
    </li>
  );
}
