import { useState } from 'react';
import type { InputOf, OutputOf } from '../../../../../src/contract/index.ts';
import type { FoundColumn, SheetOutcome, SheetProblem } from '../../../../../src/contract/sheets.ts';
import { useJob } from '../../../../job.ts';
import { useCallNow } from '../use-call-now.ts';
import { useSentFile } from '../use-sent-file.ts';

type Repair = { row: number; column: number; text: string };

/** Settled columns as the operation takes them. */
const asInput = (columns: readonly FoundColumn[]) =>
  columns.map(({ index, field, detail, reading }) => ({
    index,
    field,
    detail,
    reading,
  })) as InputOf<'sheets.import'>['columns'];

/** A table on its way in: sent, looked at, its columns settled, tried and recorded. */
export function useSheet(file: File) {
  const job = useJob();
  const { now, refusal } = useCallNow();
  const [looked, setLooked] = useState<OutputOf<'sheets.look'>>();
  const [columns, setColumns] = useState<FoundColumn[]>([]);
  const [repairs, setRepairs] = useState<Repair[]>([]);
  const [tried, setTried] = useState<SheetOutcome>();
  const [done, setDone] = useState<SheetOutcome>();
  const [recording, setRecording] = useState(false);

  const look = async (id: string, sheet?: string) => {
    setTried(undefined);
    setRepairs([]);
    const answer = await now('sheets.look', { file: id, ...(sheet ? { sheet } : {}), job: job.begin() });
    job.end();
    setLooked(answer);
    setColumns(answer?.columns ?? []);
  };
  const sent = useSentFile(file, (id) => void look(id));
  const { staged } = sent;
  const carry = async (mended: Repair[], how: { dryRun: boolean; goodRowsOnly: boolean }) => {
    if (staged === undefined || !looked) return;
    setRecording(!how.dryRun);
    const answer = await now('sheets.import', {
      file: staged,
      ...(looked.sheet === '' ? {} : { sheet: looked.sheet }),
      columns: asInput(columns),
      repairs: mended,
      ...how,
      job: job.begin(),
    });
    job.end();
    if (answer && how.dryRun) setTried(answer);
    if (answer && !how.dryRun) setDone(answer);
  };
  return {
    job,
    sent,
    refusal,
    looked,
    columns,
    tried,
    done,
    /** Whether the last work was the recording. */
    recording,
    look: (sheet: string) => (staged === undefined ? Promise.resolve() : look(staged, sheet)),
    change: (index: number, change: Partial<FoundColumn>) => {
      setTried(undefined);
      setColumns((before) => before.map((one) => (one.index === index ? { ...one, ...change } : one)));
    },
    attempt: () => carry(repairs, { dryRun: true, goodRowsOnly: false }),
    record: (goodRowsOnly: boolean) => carry(repairs, { dryRun: false, goodRowsOnly }),
    mend: ({ row, column, repair }: SheetProblem) => {
      if (column === null || repair === null) return;
      const next = [...repairs, { row, column, text: repair }];
      setRepairs(next);
      void carry(next, { dryRun: true, goodRowsOnly: false });
    },
  };
}
