import { useEffect, useRef, useState } from 'react';
import { SHEET_FIELDS } from '../../../../../src/contract/sheet-fields.ts';
import type { SheetOutcome } from '../../../../../src/contract/sheets.ts';
import { useQueryOf } from '../../../../api.ts';
import { saveFile } from '../../../../lib/save-file.ts';
import { fetchFile } from '../../../../lib/staged.ts';
import { Button, Checkbox, Notice, Section, Select } from '../../../../ui/index.ts';
import { ReadingFile } from '../reading-file.tsx';
import { ToCatalogue } from '../to-catalogue.tsx';
import { counted, countsInWords, madeInWords, unsettled } from './choices.ts';
import { ColumnsPart } from './columns-part.tsx';
import { GroupingPart, ProblemsPart } from './outcome-part.tsx';
import { useSheet } from './use-sheet.ts';

/** Hands the refused rows out as a file. */
function RefusedRows({ outcome }: { outcome: SheetOutcome }) {
  const { refused } = outcome;
  if (refused === null) return null;
  const save = async () => saveFile(refused.name, await fetchFile(refused.file, refused.type));
  return (
    <p>
      <Button onClick={() => void save()}>Save the refused rows</Button>{' '}
      <span className="soft">
        with the reasons in a column of their own; mend them there and import that file.
      </span>
    </p>
  );
}

/** What was recorded. */
function Recorded({ outcome }: { outcome: SheetOutcome }) {
  return (
    <Section title="Recorded">
      <div className="stack">
        <Notice tone="done" title={countsInWords(outcome)} live>
          <p>Made: {madeInWords(outcome)}. What the columns hold is remembered for the next file.</p>
          {outcome.notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </Notice>
        <RefusedRows outcome={outcome} />
        <ToCatalogue />
      </div>
    </Section>
  );
}

type Sheet = ReturnType<typeof useSheet>;

/** What would come of the file, and the button that makes it so. */
function Tried({ sheet, outcome }: { sheet: Sheet; outcome: SheetOutcome }) {
  const [goodOnly, setGoodOnly] = useState(false);
  const heading = useRef<HTMLParagraphElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a fresh trial is what is to be looked at next.
  useEffect(() => heading.current?.focus(), [outcome]);
  const { counts } = outcome;
  const good = counts.new + counts.changed + counts.same;
  const blocked =
    counts.refused > 0 && !goodOnly
      ? 'Mend what is refused, or choose to record the good rows only.'
      : counts.new + counts.changed === 0
        ? 'There is nothing to record: every good row is here already.'
        : undefined;
  return (
    <Section title="What would come of it">
      <div className="stack">
        <p ref={heading} tabIndex={-1}>
          {countsInWords(outcome)} It would make {madeInWords(outcome)}.
        </p>
        {outcome.notes.map((note) => (
          <Notice key={note}>{note}</Notice>
        ))}
        <ProblemsPart problems={outcome.problems} total={outcome.problemsTotal} onMend={sheet.mend} />
        <RefusedRows outcome={outcome} />
        <GroupingPart outcome={outcome} />
        <p className="soft">
          Empty cells leave what is recorded as it is; to empty a field, use the Work screen.
        </p>
        {counts.refused > 0 && good > 0 ? (
          <Checkbox
            label="Record the good rows only"
            checked={goodOnly}
            onChange={setGoodOnly}
            help="The refused rows are left out; save them first to mend them later."
          />
        ) : null}
        <div>
          <Button
            kind="primary"
            pending={sheet.job.running}
            disabled={blocked !== undefined}
            reason={blocked}
            onClick={() => void sheet.record(goodOnly)}
          >
            Record {counted(counts.new + counts.changed, 'row')}
          </Button>
        </div>
      </div>
    </Section>
  );
}

/** Takes a table over: its columns, a trial, and the recording. */
export function SheetFlow({ file }: { file: File }) {
  const sheet = useSheet(file);
  const channels = useQueryOf('channels.list', {});
  const { looked, columns, tried, done, recording, job, sent, refusal } = sheet;
  if (done) return <Recorded outcome={done} />;
  const open = unsettled(columns);
  // Beside the button that was pressed: the list between the two may be long.
  const way = <ReadingFile {...{ file, sent, job, refusal }} read={looked !== undefined} then="Working" />;
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
                onChange={(name) => void sheet.look(name)}
                choices={looked.sheets.map((name) => ({ value: name, label: name }))}
              />
            ) : null}
            <ColumnsPart
              columns={columns}
              fields={SHEET_FIELDS}
              channels={(channels.data?.channels ?? []).map(({ name }) => name)}
              onChange={sheet.change}
            />
            <div>
              <Button
                kind={tried ? 'plain' : 'primary'}
                pending={job.running}
                disabled={open !== undefined}
                reason={open}
                onClick={() => void sheet.attempt()}
              >
                See what would come of it
              </Button>
            </div>
          </div>
        </Section>
      ) : null}
      {recording ? null : way}
      {tried ? <Tried sheet={sheet} outcome={tried} /> : null}
      {recording ? way : null}
    </>
  );
}
