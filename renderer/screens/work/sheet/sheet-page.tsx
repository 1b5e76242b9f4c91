import { useState } from 'react';
import type { Edition } from '../../../../src/contract/editions.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import type { Sheet } from '../../../../src/contract/submissions.ts';
import { useQueryOf } from '../../../api.ts';
import { useAsOf } from '../../../location.ts';
import { Button, CopyButton, Notice, PageHeader, Refused, Section, Standing } from '../../../ui/index.ts';
import { MoveDialog } from '../listing/move-dialog.tsx';
import { counted } from '../parts/names.ts';
import { PartPage, useCrumbs } from '../parts/page-of.tsx';
import { useWork } from '../parts/work-context.tsx';
import { ProofDialog } from '../proof/proof-dialog.tsx';
import { Rounds } from '../proof/rounds.tsx';
import { Differences } from './differences.tsx';
import { RecordSentDialog } from './record-sent-dialog.tsx';
import { SentBefore } from './sent-before.tsx';
import { SheetTable } from './sheet-table.tsx';
import './sheet.css';

const TITLE = 'Submission sheet';

/** Everything to type in for one listing, to be copied value by value, and what was sent before. */
export function SheetPage({ workId, listingId }: { workId: number; listingId: number }) {
  return (
    <PartPage workId={workId} title={TITLE}>
      <SheetBody listingId={listingId} />
    </PartPage>
  );
}

function SheetBody({ listingId }: { listingId: number }) {
  const { asOf } = useAsOf();
  const sheet = useQueryOf('submissions.sheet', { listingId, ...(asOf === undefined ? {} : { asOf }) });
  const crumbs = useCrumbs(TITLE);
  if (!sheet.data)
    return (
      <>
        <PageHeader title={TITLE} crumbs={crumbs} />
        <Refused refusal={sheet.error} />
      </>
    );
  const { editionLabel, formatName, channelName, standing, text } = sheet.data;
  return (
    <>
      <PageHeader
        title={TITLE}
        crumbs={crumbs}
        lede={
          <p>
            <span className="italic">{editionLabel}</span> · {formatName} for {channelName}{' '}
            <Standing of="listing" value={standing} />
          </p>
        }
        actions={
          <>
            <CopyButton kind="primary" text={text} what="The whole sheet" label="Copy all as text" />
            <Button onClick={() => window.print()}>Print</Button>
            <SheetSteps sheet={sheet.data} />
          </>
        }
      />
      <SheetParts sheet={sheet.data} />
    </>
  );
}

function SheetParts({ sheet }: { sheet: Sheet }) {
  const { asOf } = useAsOf();
  const problems = sheet.items.flatMap((item) => item.problems).length;
  const locking = sheet.items.filter((item) => item.lock === 'locks').length;
  return (
    <div className="stack">
      {problems > 0 ? (
        <Notice tone="care" title={`${counted(problems, 'remark')} before you send it.`}>
          They stand beside the values below. The limits are those you recorded for {sheet.channelName}; its
          own terms prevail.
        </Notice>
      ) : null}
      {locking > 0 && sheet.standing === 'unsent' ? (
        <Notice title={`${counted(locking, 'value')} will lock when you send it.`}>
          They are marked “locks”. Check each once more: afterwards they stay as they are, and a change needs
          a new edition.
        </Notice>
      ) : null}
      {sheet.differences.length > 0 ? <Differences sheet={sheet} /> : null}
      <Section title="What to type in">
        <SheetTable sheet={sheet} />
      </Section>
      {asOf === undefined ? <Rounds editionId={sheet.editionId} listingId={sheet.listingId} titled /> : null}
      <SentBefore sheet={sheet} />
    </div>
  );
}

/** The listing of the sheet with its format and edition, from the work that is open. */
function useListed(sheet: Sheet) {
  const { work } = useWork();
  const edition = work.editions.find((one) => one.id === sheet.editionId);
  const format = edition?.formats.find((one) => one.id === sheet.formatId);
  const listing = format?.listings.find((one) => one.id === sheet.listingId);
  return edition && format && listing ? { edition, format, listing } : undefined;
}

const PROOFED: readonly string[] = ['sent', 'proof', 'cleared'];

type Doing = 'send' | 'update' | 'proof';

/** What can be recorded from the sheet: that it was sent, that changes were sent, how the proof was. */
function SheetSteps({ sheet }: { sheet: Sheet }) {
  const { editable } = useWork();
  const listed = useListed(sheet);
  const [doing, setDoing] = useState<Doing>();
  if (!editable || !listed) return null;
  const close = () => setDoing(undefined);
  const sendable = listed.listing.next.some((step) => step.to === 'sent');
  const unkept = sheet.submissions.length === 0 && PROOFED.concat('selling').includes(sheet.standing);
  return (
    <>
      {sendable ? <SendButton format={listed.format} onSend={() => setDoing('send')} /> : null}
      {PROOFED.includes(sheet.standing) ? (
        <Button onClick={() => setDoing('proof')}>Record a proof</Button>
      ) : null}
      {sheet.differences.length > 0 || unkept ? (
        <Button onClick={() => setDoing('update')}>Record as sent</Button>
      ) : null}
      <StepDialog doing={doing} sheet={sheet} listed={listed} onClose={close} />
    </>
  );
}

function SendButton({ format, onSend }: { format: Format; onSend: () => void }) {
  const bare = format.isbn13 === null;
  return (
    <Button disabled={bare} reason="Take a number for this format first." onClick={onSend}>
      Mark sent
    </Button>
  );
}

interface StepDialogProps {
  doing: Doing | undefined;
  sheet: Sheet;
  listed: { edition: Edition; format: Format; listing: Format['listings'][number] };
  onClose: () => void;
}

function StepDialog({ doing, sheet, listed, onClose }: StepDialogProps) {
  if (doing === 'send') return <MoveDialog {...listed} to="sent" onClose={onClose} />;
  if (doing === 'proof') return <ProofDialog {...listed} onClose={onClose} />;
  return doing === 'update' ? <RecordSentDialog sheet={sheet} onClose={onClose} /> : null;
}
