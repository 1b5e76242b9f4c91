import type { Sheet, SheetItem } from '../../../../src/contract/submissions.ts';
import { type Column, CopyButton, Sign, Table } from '../../../ui/index.ts';

const LOCK_WORDS: Record<SheetItem['lock'], string> = {
  locked: 'locked',
  locks: 'locks',
  open: 'stays open',
};

function Value({ item }: { item: SheetItem }) {
  return (
    <>
      {item.value === '' ? (
        <span className="soft">nothing recorded</span>
      ) : (
        <span className="prose sheet-value">{item.value}</span>
      )}
      {item.help === '' ? null : <span className="sheet-help soft">{item.help}</span>}
      {item.problems.map((problem) => (
        <span key={problem} className="sheet-problem">
          <strong>Mind:</strong> {problem}
        </span>
      ))}
    </>
  );
}

function LockCell({ lock }: { lock: SheetItem['lock'] }) {
  return (
    <span className={lock === 'open' ? 'soft' : 'locked-inline'}>
      {lock === 'open' ? null : <Sign name="padlock" />}
      {LOCK_WORDS[lock]}
    </span>
  );
}

const COLUMNS: readonly Column<SheetItem>[] = [
  { key: 'label', header: 'Field', cell: (item) => item.label },
  { key: 'value', header: 'Value', cell: (item) => <Value item={item} /> },
  { key: 'lock', header: 'When sent', nowrap: true, cell: (item) => <LockCell lock={item.lock} /> },
  {
    key: 'copy',
    header: 'Copy',
    headerHidden: true,
    cell: (item) =>
      item.value === '' ? null : (
        <span className="sheet-copy">
          <CopyButton small text={item.value} what={item.label} />
        </span>
      ),
  },
];

/** The values of a sheet in the order of the channel, each to be copied. */
export function SheetTable({ sheet }: { sheet: Sheet }) {
  return (
    <Table
      caption={`Values for ${sheet.channelName}`}
      columns={COLUMNS}
      rows={sheet.items}
      rowKey={(item) => item.label}
    />
  );
}
