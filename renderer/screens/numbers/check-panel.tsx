import { type RefObject, useEffect, useState } from 'react';
import type { IsbnCheck } from '../../../src/contract/isbns.ts';
import { useQueryOf } from '../../api.ts';
import { announce } from '../../status.ts';
import { Button, Refused, Section, TextArea } from '../../ui/index.ts';
import { LONGEST_LINE, linesOf, MOST_LINES, replaceLine } from './check-lines.ts';
import { type CheckedFormat, CheckResult } from './check-result.tsx';

/** Results shown at first, and more at each press. */
const SHOWN = 100;

/** Milliseconds of rest in typing before a question is sent. */
const REST_MS = 250;

function useRested<Value>(value: Value): Value {
  const [rested, setRested] = useState(value);
  useEffect(() => {
    const timer = window.setTimeout(() => setRested(value), REST_MS);
    return () => window.clearTimeout(timer);
  }, [value]);
  return rested;
}

/** What the formats of numbers are called. */
function useFormatNames(wanted: boolean): ReadonlyMap<number, CheckedFormat> {
  const status = useQueryOf('catalogue.status', {}, { enabled: wanted });
  return new Map(
    status.data?.list.map((entry) => [
      entry.formatId,
      { workId: entry.workId, label: `${entry.editionLabel} · ${entry.name}` },
    ]),
  );
}

function Summary({ checks, text }: { checks: readonly IsbnCheck[]; text: string }) {
  const { tooLong, beyond } = linesOf(text);
  const valid = checks.filter((check) => check.ok).length;
  return (
    <div role="status">
      <p>
        {checks.length === 0
          ? null
          : `${valid.toLocaleString()} of ${checks.length.toLocaleString()} ${checks.length === 1 ? 'line is' : 'lines are'} valid.`}
      </p>
      {tooLong > 0 ? (
        <p>{`Left out: ${tooLong.toLocaleString()} longer than ${LONGEST_LINE} characters; put each number on a line of its own.`}</p>
      ) : null}
      {beyond > 0 ? (
        <p>{`Only the first ${MOST_LINES.toLocaleString()} lines are checked; ${beyond.toLocaleString()} are left out.`}</p>
      ) : null}
    </div>
  );
}

interface ResultsProps {
  checks: readonly IsbnCheck[];
  onUse: (check: IsbnCheck, repair: string) => void;
}

function Results({ checks, onUse }: ResultsProps) {
  const [shown, setShown] = useState(SHOWN);
  const formats = useFormatNames(checks.some((check) => check.formatId !== null));
  if (checks.length === 0) return null;
  return (
    <>
      <ol className="check-list" aria-label="What was found">
        {checks.slice(0, shown).map((check, line) => (
          <CheckResult
            key={`${String(line)} ${check.text}`}
            check={check}
            format={check.formatId === null ? undefined : formats.get(check.formatId)}
            onUse={(repair) => onUse(check, repair)}
          />
        ))}
      </ol>
      {checks.length > shown ? (
        <Button onClick={() => setShown(shown + SHOWN)}>
          Show {Math.min(SHOWN, checks.length - shown)} more of {(checks.length - shown).toLocaleString()}
        </Button>
      ) : null}
    </>
  );
}

interface CheckPanelProps {
  /** Holds the text input, for a button elsewhere on the screen that leads here. */
  box: RefObject<HTMLDivElement | null>;
  asOf: string | undefined;
}

/** Checks typed or pasted ISBNs, one a line: exactly what is wrong, a repair to take or leave, where each stands. */
export function CheckPanel({ box, asOf }: CheckPanelProps) {
  const [text, setText] = useState('');
  const { texts } = linesOf(useRested(text));
  const answer = useQueryOf('isbns.check', { texts }, { enabled: texts.length > 0, keep: true });
  const checks = texts.length === 0 ? [] : (answer.data?.checks ?? []);
  const use = (check: IsbnCheck, repair: string) => {
    setText((typed) => replaceLine(typed, check.text, repair));
    announce(`The line now reads ${repair}.`);
    box.current?.querySelector('textarea')?.focus();
  };
  return (
    <Section title="Check ISBNs">
      <div className="check-panel" ref={box}>
        <TextArea
          label="ISBNs, one on each line"
          mono
          rows={4}
          value={text}
          onChange={setText}
          help={`Typed, scanned or pasted, in any form.${asOf === undefined ? '' : ' Where they stand is told for today.'}`}
        />
        <Refused refusal={answer.error} />
        <Summary checks={checks} text={text} />
        <Results checks={checks} onUse={use} />
      </div>
    </Section>
  );
}
