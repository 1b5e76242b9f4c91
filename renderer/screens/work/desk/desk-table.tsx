import { useState } from 'react';
import type { Desk, DeskListing } from '../../../../src/contract/retirement.ts';
import { Button, type Column, Isbn, Standing, Table } from '../../../ui/index.ts';
import { useWork } from '../parts/work-context.tsx';
import { AskDialog } from './ask-dialog.tsx';
import { ChaseDialog, GoneDialog, PromiseDialog, ReturnsDialog, TakeBackDialog } from './step-dialogs.tsx';
import { STEP_WORDS } from './words.ts';

type Doing = 'ask' | 'promise' | 'chase' | 'gone' | 'returns' | 'take back';

/** The dialog of each next step. */
const DIALOG_OF: Record<DeskListing['next'], Doing | undefined> = {
  'wait for sale': 'ask',
  ask: 'ask',
  'await promise': 'promise',
  'confirm gone': 'gone',
  chase: 'chase',
  'take back': 'take back',
  nothing: undefined,
};

const nameOf = (row: DeskListing) => `${row.formatName} on ${row.channelName}`;

const day = (value: string | null) => (value === null ? <span className="soft">—</span> : value);

interface ActProps {
  row: DeskListing;
  onDo: (what: Doing) => void;
}

/** The next step as a button, and beside it what else can be recorded while the listing leaves. */
function NextCell({ row, onDo }: ActProps) {
  const { editable } = useWork();
  const next = DIALOG_OF[row.next];
  const others: [Doing, string][] = (
    [
      ['gone', 'Confirm gone'],
      ['chase', 'Chase'],
      ['promise', 'Note the promise'],
    ] as [Doing, string][]
  ).filter(([what]) => row.standing === 'leaving' && what !== next);
  return (
    <div className="desk-next">
      <span className="soft">{row.because}</span>
      {editable && next ? (
        <span className="row">
          <Button
            kind={row.next === 'wait for sale' ? 'quiet' : 'plain'}
            label={`${STEP_WORDS[row.next]}: ${nameOf(row)}`}
            onClick={() => onDo(next)}
          >
            {STEP_WORDS[row.next]}
          </Button>
          {others.map(([what, text]) => (
            <Button key={what} kind="quiet" label={`${text}: ${nameOf(row)}`} onClick={() => onDo(what)}>
              {text}
            </Button>
          ))}
        </span>
      ) : null}
    </div>
  );
}

function ReturnsCell({ row, onDo }: ActProps) {
  const { editable } = useWork();
  if (!row.returnable) return <span className="soft">none</span>;
  const open = row.returnsOpen ? 'open' : 'over';
  const text = row.returnsUntil === null ? 'Set the date' : 'Move';
  return (
    <>
      {row.returnsUntil === null ? null : (
        <span>
          {row.returnsUntil} <span className="soft">{open}</span>
        </span>
      )}
      {editable && row.standing !== 'unsent' ? (
        <Button kind="quiet" label={`${text}: returns of ${nameOf(row)}`} onClick={() => onDo('returns')}>
          {text}
        </Button>
      ) : null}
    </>
  );
}

function columnsOf(onDo: (row: DeskListing, what: Doing) => void): Column<DeskListing>[] {
  return [
    {
      key: 'listing',
      header: 'Listing',
      cell: (row) => (
        <>
          {nameOf(row)}
          {row.hyphenated ? (
            <span className="glance-edition">
              <Isbn value={row.hyphenated} />
            </span>
          ) : null}
        </>
      ),
    },
    { key: 'standing', header: 'Stands', cell: (row) => <Standing of="listing" value={row.standing} /> },
    { key: 'asked', header: 'Asked on', nowrap: true, cell: (row) => day(row.askedOn) },
    { key: 'promised', header: 'Promised by', nowrap: true, cell: (row) => day(row.promisedBy) },
    { key: 'chased', header: 'Chased on', nowrap: true, cell: (row) => day(row.chasedOn) },
    { key: 'gone', header: 'Gone on', nowrap: true, cell: (row) => day(row.goneOn) },
    { key: 'evidence', header: 'Evidence', cell: (row) => row.evidence },
    {
      key: 'returns',
      header: 'Returns until',
      cell: (row) => <ReturnsCell row={row} onDo={(what) => onDo(row, what)} />,
    },
    { key: 'next', header: 'Next', cell: (row) => <NextCell row={row} onDo={(what) => onDo(row, what)} /> },
  ];
}

/** Every listing of the edition in one table: what was asked, promised, chased and seen, and what is next. */
export function DeskTable({ desk }: { desk: Desk }) {
  const { editable } = useWork();
  const [doing, setDoing] = useState<{ row: DeskListing; what: Doing }>();
  const takeNext = (row: DeskListing) => {
    const what = DIALOG_OF[row.next];
    if (what) setDoing({ row, what });
  };
  const close = () => setDoing(undefined);
  return (
    <div className="desk-table">
      <Table
        caption="Listings of the edition that leaves"
        columns={columnsOf((row, what) => setDoing({ row, what }))}
        rows={desk.listings}
        rowKey={(row) => row.listingId}
        onOpen={editable ? takeNext : undefined}
        rowTone={(row) => (row.next === 'nothing' ? 'quiet' : undefined)}
        foot={
          editable ? (
            <span>Up and down move between the listings, Enter takes the next step of one.</span>
          ) : null
        }
        empty={<p className="soft">This edition is listed nowhere.</p>}
      />
      {doing ? <StepDialog desk={desk} {...doing} onClose={close} /> : null}
    </div>
  );
}

function StepDialog(props: { desk: Desk; row: DeskListing; what: Doing; onClose: () => void }) {
  const { desk, row, what, onClose } = props;
  const given = { row, name: nameOf(row), onClose };
  if (what === 'ask') return <AskDialog {...given} replacement={desk.replacement?.label ?? null} />;
  if (what === 'promise') return <PromiseDialog {...given} />;
  if (what === 'chase') return <ChaseDialog {...given} />;
  if (what === 'gone') return <GoneDialog {...given} />;
  return what === 'returns' ? <ReturnsDialog {...given} /> : <TakeBackDialog {...given} />;
}
