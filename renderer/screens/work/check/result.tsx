import { useEffect, useRef, useState } from 'react';
import type { CheckDetail, KeptLine } from '../../../../src/contract/proof-checks/checks.ts';
import { fileKindName } from '../../../../src/contract/terms.ts';
import { useCommand, useQueryOf } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { useAsOf } from '../../../location.ts';
import { Button, Notice, Refused, Section } from '../../../ui/index.ts';
import { NoticeShape } from '../../../ui/standing-shapes.tsx';
import { ComparePart } from './compare-part.tsx';
import { Lines } from './lines.tsx';
import { Pages } from './pages.tsx';
import { KIND_TITLES, STATES } from './words.ts';

/** One check in full: how many lines there are of each result, the lines, and the pages where they were seen. */
export function CheckResult({ checkId, editable }: { checkId: number; editable: boolean }) {
  const { asOf } = useAsOf();
  const { data, error } = useQueryOf('proofChecks.show', {
    checkId,
    ...(asOf === undefined ? {} : { asOf }),
  });
  if (error) return <Refused refusal={error} />;
  if (!data) return <p className="waiting">Reading the check…</p>;
  return <Detail check={data} editable={editable} />;
}

function Detail({ check, editable }: { check: CheckDetail; editable: boolean }) {
  const [chosen, choose] = useState<KeptLine>();
  const pages = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (chosen) pages.current?.querySelector<HTMLElement>('.page-shown')?.focus();
  }, [chosen]);
  return (
    <Section title={`${KIND_TITLES[check.kind]}: ${check.fileName}`}>
      <div className="stack">
        <Head check={check} />
        <Against check={check} editable={editable} />
        <div className={check.pictured.length > 0 ? 'check-columns' : undefined}>
          <Lines check={check} editable={editable} chosen={chosen} onChoose={choose} />
          <div ref={pages} className="check-pages">
            <Pages check={check} chosen={chosen} onChoose={choose} />
          </div>
        </div>
        {check.kind === 'interior' && check.pages !== null ? <ComparePart check={check} /> : null}
      </div>
    </Section>
  );
}

/** When, which file, and the counts by shape and word. */
function Head({ check }: { check: CheckDetail }) {
  const pages = check.pages === null ? '' : `${check.pages.toLocaleString()} pages, `;
  return (
    <>
      <p className="soft">
        Checked on {formatDay(check.checkedOn)}; {pages}
        {check.bytes.toLocaleString()} bytes; digest{' '}
        <span className="mono" title={check.sha256}>
          {check.sha256.slice(0, 12)}…
        </span>
      </p>
      <ul className="check-counts" aria-label="Result in short">
        {STATES.map(({ state, title, counted, tone }) => (
          <li key={state} className={`check-count check-${tone}`}>
            <NoticeShape tone={tone} />
            <strong>{check.counts[state]}</strong> {check.counts[state] === 1 ? title.toLowerCase() : counted}
          </li>
        ))}
      </ul>
    </>
  );
}

/** How the file stands to the one before it and to the final one, with the button that records it as final. */
function Against({ check, editable }: { check: CheckDetail; editable: boolean }) {
  const record = useCommand('formats.recordFile');
  const name = fileKindName(check.kind);
  const send = () =>
    void record.run(
      { formatId: check.formatId, kind: check.kind, fileName: check.fileName, sha256: check.sha256 },
      `${check.fileName} is recorded as the final ${name}.`,
    );
  return (
    <>
      {check.intact ? null : (
        <Notice tone="stop" title="What was read from this file was changed since.">
          Check the file again; the lines below can no longer be proved.
        </Notice>
      )}
      {check.otherThanBefore ? (
        <Notice tone="care" title="Another file than at the check before.">
          On {formatDay(check.otherThanBefore.checkedOn)} {check.otherThanBefore.fileName} was checked; its
          content was another one.
        </Notice>
      ) : null}
      {check.final === 'same' ? <p>This is the final {name} on record, byte for byte.</p> : null}
      {check.final === 'other' ? (
        <Notice tone="care" title={`This is not the final ${name} on record.`}>
          Its content is another one. If it is to be sent, record it as final; otherwise check the final file.
        </Notice>
      ) : null}
      {check.final === 'same' || !editable ? null : (
        <p>
          <Button onClick={send} pending={record.pending}>
            Record as the final {name}
          </Button>
        </p>
      )}
      <Refused refusal={record.refusal} />
    </>
  );
}
