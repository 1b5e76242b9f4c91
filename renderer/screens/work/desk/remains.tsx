import { useState } from 'react';
import type { Desk, StockCount } from '../../../../src/contract/retirement.ts';
import { Button, type Column, Isbn, Section, Table } from '../../../ui/index.ts';
import { useWork } from '../parts/work-context.tsx';
import { AgencyDialog, CountDialog } from './remains-dialogs.tsx';
import { FATE_WORDS } from './words.ts';

const NUMBERS: readonly Column<Desk['numbers'][number]>[] = [
  { key: 'format', header: 'Format', cell: (row) => row.formatName },
  {
    key: 'isbn',
    header: 'ISBN',
    nowrap: true,
    cell: (row) => (row.hyphenated ? <Isbn value={row.hyphenated} /> : ''),
  },
  {
    key: 'on',
    header: 'Set to out of print on',
    cell: (row) => row.outOfPrintOn ?? <span className="soft">not yet</span>,
  },
  { key: 'note', header: 'Note', cell: (row) => row.note },
];

/** The agency's record of the numbers. */
export function AgencyPart({ desk }: { desk: Desk }) {
  const { editable } = useWork();
  const [open, setOpen] = useState(false);
  if (desk.numbers.length === 0) return null;
  const left = desk.numbers.some((row) => row.outOfPrintOn === null);
  const sells = desk.listings.some((row) => row.standing === 'selling');
  return (
    <Section
      title="Numbers at the agency"
      actions={
        editable && left ? (
          <Button
            disabled={sells}
            reason="Out of print comes after every channel was asked to stop."
            onClick={() => setOpen(true)}
          >
            Record as out of print
          </Button>
        ) : null
      }
    >
      <Table
        caption="Numbers at the agency"
        columns={NUMBERS}
        rows={desk.numbers}
        rowKey={(row) => row.formatId}
        foot={<span>A number stays valid for ever and is never given to anything else.</span>}
      />
      {open ? <AgencyDialog desk={desk} onClose={() => setOpen(false)} /> : null}
    </Section>
  );
}

const STOCK: readonly Column<StockCount>[] = [
  { key: 'place', header: 'Where', cell: (row) => row.place },
  { key: 'format', header: 'Format', cell: (row) => row.formatName },
  { key: 'copies', header: 'Copies', align: 'end', cell: (row) => row.copies.toLocaleString() },
  { key: 'on', header: 'Counted on', nowrap: true, cell: (row) => row.countedOn },
  { key: 'fate', header: 'What becomes of them', cell: (row) => FATE_WORDS[row.fate] },
  { key: 'note', header: 'Note', cell: (row) => row.note },
];

/** Copies that are left, by place: at the channels, in the cellar, at home. */
export function StockPart({ desk }: { desk: Desk }) {
  const { editable } = useWork();
  const [counting, setCounting] = useState(false);
  if (!desk.numbers.some((row) => row.printed)) return null;
  const left = desk.stock.reduce((sum, row) => sum + row.copies, 0);
  return (
    <Section
      title="Copies left"
      actions={editable ? <Button onClick={() => setCounting(true)}>Count copies</Button> : null}
    >
      {desk.stock.length === 0 ? (
        <p className="soft">Nothing is counted yet: stock at the channels, and your own copies.</p>
      ) : (
        <Table
          caption="Copies left"
          columns={STOCK}
          rows={desk.stock}
          rowKey={(row) => row.id}
          foot={
            <span>
              {left.toLocaleString()} copies in all. A new count of a place replaces the one before.
            </span>
          }
        />
      )}
      {counting ? <CountDialog desk={desk} onClose={() => setCounting(false)} /> : null}
    </Section>
  );
}
