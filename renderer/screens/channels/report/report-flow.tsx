import { useEffect, useRef, useState } from 'react';
import type { Channel } from '../../../../src/contract/channels.ts';
import type { ReportPreview } from '../../../../src/contract/reports.ts';
import { REPORT_FIELDS } from '../../../../src/contract/sheet-fields.ts';
import { useQueryOf } from '../../../api.ts';
import { Button, Checkbox, DateInput, Notice, Section, Select } from '../../../ui/index.ts';
import { ReadingFile } from '../../catalogue/exchange/reading-file.tsx';
import { counted, unsettled } from '../../catalogue/exchange/sheet/choices.ts';
import { ColumnsPart } from '../../catalogue/exchange/sheet/columns-part.tsx';
import { ProblemsPart } from '../../catalogue/exchange/sheet/outcome-part.tsx';
import { ByKind } from './findings-part.tsx';
import { type Said, useReport } from './use-report.ts';
import { outcomeInWords } from './words.ts';

type Report = ReturnType<typeof useReport>;

/** '3 differences, 1 of them told before; 2 are mended.' */
function summary({ rows, differences, differencesTotal, closesTotal }: ReportPreview): string {
  const before = differences.filter(({ isNew }) => !isNew).length;
  const told =
    differencesTotal === 0
      ? 'no difference from the record'
      : `${counted(differencesTotal, 'difference')}${before === 0 ? '' : `, ${before.toLocaleString()} of them told before`}`;
  const mended = closesTotal === 0 ? '' : `; ${closesTotal.toLocaleString()} told before no longer found`;
  return `${counted(rows, 'row')}: ${told}${mended}.`;
}

/** The differences before anything is kept, and the button that keeps them. */
function Compared({ report, preview, said }: { report: Report; preview: ReportPreview; said: Said }) {
  const [goodOnly, setGoodOnly] = useState(false);
  const heading = useRef<HTMLParagraphElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a fresh comparison is what is to be looked at next.
  useEffect(() => heading.current?.focus(), [preview]);
  const { unread, rows } = preview;
  const blocked =
    unread === 0 || (goodOnly && unread < rows)
      ? undefined
      : unread === rows
        ? 'No row of this report can be read.'
        : 'Mend the rows that cannot be read, or choose to leave them out.';
  return (
    <Section title="Where they differ">
      <div className="stack">
        <p ref={heading} tabIndex={-1}>
          {summary(preview)}
        </p>
        <ProblemsPart
          problems={preview.problems}
          total={preview.problemsTotal}
          onMend={(problem) => report.mend(problem, said)}
        />
        {unread > 0 && unread < rows ? (
          <Checkbox
            label={`Leave out ${counted(unread, 'row')} that cannot be read`}
            checked={goodOnly}
            onChange={setGoodOnly}
            help="A line with a total has to be left out. What stands in such rows counts as not listed there."
          />
        ) : null}
        <ByKind
          told={preview.differences}
          keyOf={({ kind, sentence }) => `${kind} ${sentence}`}
          after={({ isNew }) => (isNew ? null : <p className="soft">told before</p>)}
        />
        {preview.differencesTotal > preview.differences.length ? (
          <p className="soft">and {counted(preview.differencesTotal - preview.differences.length, 'more')}</p>
        ) : null}
        <div>
          <Button
            kind="primary"
            pending={report.job.running}
            disabled={blocked !== undefined}
            reason={blocked}
            onClick={() => void report.keep(said, goodOnly)}
          >
            Keep this report
          </Button>
        </div>
        <p className="soft">
          Nothing here or there is changed by it. Each difference is kept until a later report no longer has
          it; which side is right is for you to say.
        </p>
      </div>
    </Section>
  );
}

/** What came of the report. */
function Kept({ channel, done }: { channel: Channel; done: NonNullable<Report['done']> }) {
  return (
    <Notice tone="done" title="The report is kept." live>
      {outcomeInWords(done)} What its columns hold is remembered for the next report of {channel.name}.
    </Notice>
  );
}

/** One report: its columns, its day, what differs, and the keeping. */
export function ReportFlow({ channel, file }: { channel: Channel; file: File }) {
  const report = useReport(channel.id, file);
  const today = useQueryOf('catalogue.info', {}).data?.today ?? '';
  const [day, setDay] = useState<string>();
  const [complete, setComplete] = useState(true);
  const said = { on: day ?? today, complete };
  const { looked, columns, preview, done, keeping, job, sent, refusal } = report;
  if (done) return <Kept channel={channel} done={done} />;
  const open =
    unsettled(columns, REPORT_FIELDS) ?? (said.on === '' ? 'Say the day of the report.' : undefined);
  // Beside the button that was pressed: the list between the two may be long.
  const way = (
    <ReadingFile {...{ file, sent, job, refusal }} read={!!looked} then="Comparing" fields={['on']} />
  );
  return (
    <>
      {looked ? (
        <Section title="What its columns hold">
          <div className="stack">
            <p>
              {file.name}: {counted(looked.rows, 'row')} below the header.
            </p>
            {looked.sheets.length > 1 ? (
              <Select
                label="Sheet"
                width="medium"
                value={looked.sheet}
                onChange={report.look}
                choices={looked.sheets.map((name) => ({ value: name, label: name }))}
              />
            ) : null}
            <ColumnsPart columns={columns} fields={REPORT_FIELDS} channels={[]} onChange={report.change} />
            <DateInput
              label="Day of the report"
              required
              value={said.on}
              onChange={(next) => {
                setDay(next);
                report.forget();
              }}
              help="The day on which things stood there as it says."
              error={refusal?.field === 'on' ? refusal.message : undefined}
            />
            <Checkbox
              label={`It lists everything that ${channel.name} has of yours`}
              checked={complete}
              onChange={(next) => {
                setComplete(next);
                report.forget();
              }}
              help="Otherwise, as with a list of what sold, nothing is told by what is missing from it."
            />
            <div>
              <Button
                kind={preview ? 'plain' : 'primary'}
                pending={job.running}
                disabled={open !== undefined}
                reason={open}
                onClick={() => void report.compare(said)}
              >
                See where they differ
              </Button>
            </div>
          </div>
        </Section>
      ) : null}
      {keeping ? null : way}
      {preview ? <Compared report={report} preview={preview} said={said} /> : null}
      {keeping ? way : null}
    </>
  );
}
