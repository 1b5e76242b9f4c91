import type { SentDifference, Sheet } from '../../../../src/contract/submissions.ts';
import { formatDay } from '../../../lib/dates.ts';
import { type Column, Notice, Section, Table } from '../../../ui/index.ts';

const text = (value: string) =>
  value === '' ? <span className="soft">nothing</span> : <span className="prose">{value}</span>;

/** What is recorded otherwise now than the channel was last sent. */
export function Differences({ sheet }: { sheet: Sheet }) {
  const sentOn = sheet.submissions[0]?.on ?? '';
  const columns: readonly Column<SentDifference>[] = [
    { key: 'label', header: 'Field', cell: (row) => row.label },
    { key: 'sent', header: `Sent on ${formatDay(sentOn)}`, cell: (row) => text(row.sent) },
    { key: 'now', header: 'Recorded now', cell: (row) => text(row.now) },
  ];
  return (
    <Section title="Changed since it was sent">
      <div className="stack">
        <Notice tone="care" title={`${sheet.channelName} still has what was sent on ${formatDay(sentOn)}.`}>
          Send it the changes and press “Record as sent”, or set the record back.
        </Notice>
        <Table
          caption="Changed since it was sent"
          columns={columns}
          rows={sheet.differences}
          rowKey={(row) => row.of}
        />
      </div>
    </Section>
  );
}
