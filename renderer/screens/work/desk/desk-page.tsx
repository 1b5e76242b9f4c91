import { Link } from 'wouter';
import type { Desk } from '../../../../src/contract/retirement.ts';
import { useQueryOf } from '../../../api.ts';
import { useAsOf } from '../../../location.ts';
import { Notice, PageHeader, Refused, Section } from '../../../ui/index.ts';
import { HelpLink } from '../../help/help-link.tsx';
import { counted } from '../parts/names.ts';
import { PartPage, useCrumbs } from '../parts/page-of.tsx';
import { Checklist } from './checklist.tsx';
import { DeskTable } from './desk-table.tsx';
import { AgencyPart, StockPart } from './remains.tsx';
import './desk.css';

const TITLE = 'Retirement desk';

/** Taking an edition off sale: every listing of it with what is next, copies left, returns and the agency. */
export function DeskPage({ workId, editionId }: { workId: number; editionId: number }) {
  return (
    <PartPage workId={workId} title={TITLE}>
      <DeskBody editionId={editionId} />
    </PartPage>
  );
}

function DeskBody({ editionId }: { editionId: number }) {
  const { asOf } = useAsOf();
  const crumbs = useCrumbs(TITLE);
  const desk = useQueryOf('retirement.desk', { editionId, ...(asOf === undefined ? {} : { asOf }) });
  return (
    <>
      <PageHeader title={TITLE} crumbs={crumbs} lede={desk.data ? <DeskLede desk={desk.data} /> : null} />
      <Refused refusal={desk.error} />
      {desk.data ? <DeskParts desk={desk.data} /> : null}
    </>
  );
}

function DeskLede({ desk }: { desk: Desk }) {
  const shown = desk.listings.filter((row) => row.standing !== 'unsent');
  const gone = shown.filter((row) => row.standing === 'gone').length;
  return (
    <p>
      <span className="italic">{desk.label}</span>
      {desk.replacement ? `, replaced by ${desk.replacement.label}` : ', replaced by no edition'}. {gone} of{' '}
      {counted(shown.length, 'listing')} gone. <HelpLink topic="retiring" />
    </p>
  );
}

function DeskParts({ desk }: { desk: Desk }) {
  return (
    <div className="stack">
      {desk.replacement && !desk.replacement.sells ? (
        <Notice tone="care" title={`${desk.replacement.label} is not on sale anywhere yet.`}>
          Ask channels to stop only once it sells, so that readers always find one of the two.
        </Notice>
      ) : null}
      {desk.planned ? null : (
        <Notice title="No retirement is planned.">
          Plan it on the <Link href={`/work/${desk.workId}?edition=${desk.editionId}`}>Work screen</Link>, and
          its tasks stand in the agenda with their days.
        </Notice>
      )}
      <Section title="Listings">
        <DeskTable desk={desk} />
      </Section>
      <Section title="Once for the edition">
        <Checklist desk={desk} />
      </Section>
      <AgencyPart desk={desk} />
      <StockPart desk={desk} />
    </div>
  );
}
