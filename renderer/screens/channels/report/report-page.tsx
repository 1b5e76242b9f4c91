import { useState } from 'react';
import { useParams } from 'wouter';
import type { Channel } from '../../../../src/contract/channels.ts';
import type { OutputOf } from '../../../../src/contract/index.ts';
import { useQueryOf } from '../../../api.ts';
import { useReadOnly } from '../../../read-only.ts';
import { type Column, FileInput, Notice, PageHeader, Refused, Section, Table } from '../../../ui/index.ts';
import '../../catalogue/exchange/exchange.css';
import { FindingsPart } from './findings-part.tsx';
import './report.css';
import { ReportFlow } from './report-flow.tsx';

/** The largest report that is read, in bytes. */
const MAX_BYTES = 1_000_000_000;

type Kept = OutputOf<'reports.list'>['reports'][number];

const COLUMNS: Column<Kept>[] = [
  { key: 'on', header: 'Day', cell: ({ on }) => <span className="nowrap">{on}</span> },
  { key: 'file', header: 'File', cell: ({ fileName }) => fileName },
  {
    key: 'rows',
    header: 'Rows',
    cell: ({ rows, complete }) => `${rows.toLocaleString()}${complete ? '' : ', not everything'}`,
  },
  {
    key: 'findings',
    header: 'Told first by it',
    cell: ({ findings, open }) =>
      findings === 0 ? 'nothing new' : `${findings.toLocaleString()}, ${open.toLocaleString()} still open`,
  },
];

/** Choosing a report; afterwards what differs. */
function NewReport({ channel }: { channel: Channel }) {
  const [{ file, turn }, setChosen] = useState<{ file: File | undefined; turn: number }>({
    file: undefined,
    turn: 0,
  });
  return (
    <>
      <Section title="A report of theirs">
        <div className="exchange-form">
          <FileInput
            label="Report"
            accept=".csv,.tsv,.txt,.xlsx"
            maxBytes={MAX_BYTES}
            onFile={(next) => setChosen(({ turn: before }) => ({ file: next, turn: before + 1 }))}
            help={
              file
                ? `Chosen: ${file.name}`
                : `The list of your titles that ${channel.name} gives you, as CSV or XLSX. It is only read.`
            }
          />
        </div>
      </Section>
      {file ? <ReportFlow key={turn} channel={channel} file={file} /> : null}
    </>
  );
}

/** A channel's own reports set against the record: a new one, what is open, and those before. */
export function ReportPage() {
  const id = Number(useParams<{ id: string }>().id);
  const readOnly = useReadOnly();
  const channels = useQueryOf('channels.list', {});
  const kept = useQueryOf('reports.list', { channelId: id });
  const channel = channels.data?.channels.find((one) => one.id === id);
  return (
    <>
      <PageHeader
        title="Reports"
        crumbs={[
          { label: 'Channels', to: '/channels' },
          { label: channel ? `Reports of ${channel.name}` : 'Reports' },
        ]}
        lede={
          channel
            ? `What ${channel.name} says it lists, set against what is on record. Nothing is changed by looking.`
            : undefined
        }
      />
      <Refused refusal={kept.error ?? channels.error} />
      {readOnly === undefined ? null : <Notice>{readOnly}</Notice>}
      {channel && readOnly === undefined ? <NewReport channel={channel} /> : null}
      {kept.data && kept.data.reports.length > 0 ? (
        <>
          <Section title="What differs">
            <FindingsPart findings={kept.data.findings} total={kept.data.openTotal} />
          </Section>
          <Section title="Reports so far">
            <Table
              caption="Reports so far"
              columns={COLUMNS}
              rows={kept.data.reports}
              rowKey={(report) => report.id}
            />
          </Section>
        </>
      ) : null}
    </>
  );
}
