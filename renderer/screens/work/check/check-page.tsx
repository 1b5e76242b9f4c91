import type { OutputOf } from '../../../../src/contract/index.ts';
import { useQueryOf } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { useAsOf, useQueryParam } from '../../../location.ts';
import { Button, Notice, PageHeader, Refused, Section } from '../../../ui/index.ts';
import { fullName } from '../parts/edition-names.ts';
import { PartPage, useCrumbs } from '../parts/page-of.tsx';
import { useWork } from '../parts/work-context.tsx';
import { type CheckKind, DropZone } from './drop-zone.tsx';
import { History } from './history.tsx';
import { CheckResult } from './result.tsx';
import { countsText } from './words.ts';
import './check.css';

const TITLE = 'Proof check';

/** The final files of a format held against its record: what agrees, what differs, and where it was seen. */
export function CheckPage({ workId, formatId }: { workId: number; formatId: number }) {
  return (
    <PartPage workId={workId} title={TITLE}>
      <CheckBody formatId={formatId} />
    </PartPage>
  );
}

type Checks = OutputOf<'proofChecks.list'>;

function CheckBody({ formatId }: { formatId: number }) {
  const { work } = useWork();
  const { asOf } = useAsOf();
  const crumbs = useCrumbs(TITLE);
  const answer = useQueryOf('proofChecks.list', { formatId, ...(asOf === undefined ? {} : { asOf }) });
  const edition = work.editions.find((one) => one.id === answer.data?.editionId);
  return (
    <>
      <PageHeader
        title={TITLE}
        crumbs={crumbs}
        lede={
          edition && answer.data ? (
            <p>
              <span className="italic">{fullName(edition)}</span> · {answer.data.formatName}
            </p>
          ) : null
        }
        actions={<Button onClick={() => window.print()}>Print</Button>}
      />
      <Refused refusal={answer.error} />
      {answer.data ? <CheckParts formatId={formatId} checks={answer.data} /> : null}
      {answer.data || answer.error ? null : <p className="waiting">Reading the checks…</p>}
    </>
  );
}

/** How the check that counts for a kind of file ended. */
function standingOf(checks: Checks, of: CheckKind): string {
  const check = checks.checks.find((one) => one.id === of.inForce);
  if (check)
    return `Checked on ${formatDay(check.checkedOn)}: ${countsText(check)}${check.counts.differs > 0 && check.open === 0 ? ', every difference with its reason' : ''}.`;
  const other = checks.checks.some((one) => one.kind === of.kind);
  return other ? 'This very file was not checked yet.' : 'Not checked yet.';
}

function CheckParts({ formatId, checks }: { formatId: number; checks: Checks }) {
  const { editable } = useWork();
  const [chosen, choose] = useQueryParam('check');
  const newest = checks.checks.find((check) => check.inForce) ?? checks.checks[0];
  const shown = checks.checks.find((check) => String(check.id) === chosen) ?? newest;
  const open = editable && checks.running;
  return (
    <div className="stack">
      <Notice title="This check advises.">
        It reads the files and compares them with the record. It does not see everything: the printer’s and
        the channel’s own check prevails, and so does your own look at the proof.
      </Notice>
      <Section title="Files">
        <div className="check-drops">
          {checks.kinds.map((of) => (
            <DropZone
              key={of.kind}
              formatId={formatId}
              of={of}
              standing={standingOf(checks, of)}
              editable={open}
              onChecked={(id) => choose(String(id))}
            />
          ))}
        </div>
      </Section>
      {shown ? <CheckResult key={shown.id} checkId={shown.id} editable={open} /> : null}
      {checks.checks.length > 0 ? (
        <History checks={checks.checks} shownId={shown?.id} onShow={(id) => choose(String(id))} />
      ) : null}
    </div>
  );
}
