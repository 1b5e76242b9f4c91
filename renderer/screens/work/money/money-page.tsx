import { useState } from 'react';
import type { Edition } from '../../../../src/contract/editions.ts';
import type { MoneyRow } from '../../../../src/contract/money.ts';
import { useQueryOf } from '../../../api.ts';
import { useAsOf } from '../../../location.ts';
import { Button, Notice, PageHeader, Refused, Section } from '../../../ui/index.ts';
import { fullName } from '../parts/edition-names.ts';
import { PartPage, useCrumbs } from '../parts/page-of.tsx';
import { useWork } from '../parts/work-context.tsx';
import { CardsPart } from './cards-part.tsx';
import { ComparePart } from './compare-part.tsx';
import './money.css';
import { KeptTable } from './kept-table.tsx';
import { PriceDialog, type PricedFormat } from './price-dialog.tsx';
import { type Returns, ReturnsPart } from './returns-part.tsx';
import { CAUTION, RULE } from './words.ts';

const TITLE = 'Money';

/** What copies of an edition bring on every channel, what would change it, and what printing costs. */
export function MoneyPage({ workId, editionId }: { workId: number; editionId: number }) {
  return (
    <PartPage workId={workId} title={TITLE}>
      <MoneyBody editionId={editionId} />
    </PartPage>
  );
}

/** Formats whose prices may still change. */
function changeable(edition: Edition | undefined): PricedFormat[] {
  return (edition?.formats ?? []).filter(
    ({ prices, standing }) => prices.length > 0 && standing !== 'retired' && standing !== 'cancelled',
  );
}

function MoneyBody({ editionId }: { editionId: number }) {
  const { work, editable } = useWork();
  const { asOf } = useAsOf();
  const crumbs = useCrumbs(TITLE);
  const [returns, setReturns] = useState<Returns>({ shipped: 100, returnedBp: 2_500 });
  const input = { editionId, ...returns, ...(asOf === undefined ? {} : { asOf }) };
  const answer = useQueryOf('money.ofEdition', input, { keep: true });
  const edition = work.editions.find((one) => one.id === editionId);
  const [changing, setChanging] = useState(false);
  const formats = changeable(edition);
  return (
    <>
      <PageHeader
        title={TITLE}
        crumbs={crumbs}
        lede={edition ? <p className="italic">{fullName(edition)}</p> : null}
        actions={
          editable && formats.length > 0 ? (
            <Button kind="primary" onClick={() => setChanging(true)}>
              Change a price
            </Button>
          ) : null
        }
      />
      <Refused refusal={answer.error} />
      {answer.data && edition ? (
        <MoneyParts rows={answer.data.rows} edition={edition} returns={returns} onReturns={setReturns} />
      ) : null}
      {changing ? <PriceDialog formats={formats} onClose={() => setChanging(false)} /> : null}
    </>
  );
}

interface MoneyPartsProps {
  rows: readonly MoneyRow[];
  edition: Edition;
  returns: Returns;
  onReturns: (returns: Returns) => void;
}

function MoneyParts({ rows, edition, returns, onReturns }: MoneyPartsProps) {
  return (
    <div className="stack">
      <Section title="What a copy keeps">
        {rows.length > 0 ? (
          <KeptTable rows={rows} />
        ) : (
          <p className="soft">No format with a price is listed on a channel yet.</p>
        )}
        <p className="soft money-rule">{RULE}</p>
        <Notice title={CAUTION.title}>{CAUTION.text}</Notice>
      </Section>
      {rows.length > 0 ? (
        <>
          <Section title="When copies come back">
            <ReturnsPart rows={rows} returns={returns} onChange={onReturns} />
          </Section>
          <Section title="Compare channels">
            <ComparePart edition={edition} rows={rows} />
          </Section>
        </>
      ) : null}
      <Section title="What printing costs">
        <CardsPart />
      </Section>
    </div>
  );
}
