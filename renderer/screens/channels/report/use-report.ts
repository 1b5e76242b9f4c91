import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import type { InputOf, OutputOf } from '../../../../src/contract/index.ts';
import type { ReportOutcome, ReportPreview } from '../../../../src/contract/reports.ts';
import type { FoundColumn, SheetProblem } from '../../../../src/contract/sheets.ts';
import { useJob } from '../../../job.ts';
import { announce } from '../../../status.ts';
import { useCallNow } from '../../catalogue/exchange/use-call-now.ts';
import { useSentFile } from '../../catalogue/exchange/use-sent-file.ts';

type Input = InputOf<'reports.preview'>;
type Repairs = NonNullable<Input['repairs']>;

/** What a person says of a report beside its columns. */
export interface Said {
  on: string;
  complete: boolean;
}

const asInput = (columns: readonly FoundColumn[]) =>
  columns.map(({ index, field, detail, reading }) => ({ index, field, detail, reading })) as Input['columns'];

/** A report that is sent once and looked at, with its columns as they were found or said otherwise since. */
function useLooked(channelId: number, file: File) {
  const job = useJob();
  const { now, refusal } = useCallNow();
  const [looked, setLooked] = useState<OutputOf<'reports.look'>>();
  const [columns, setColumns] = useState<FoundColumn[]>([]);
  const look = async (id: string, sheet?: string) => {
    const name = sheet === undefined ? {} : { sheet };
    const answer = await now('reports.look', { channelId, file: id, ...name, job: job.begin() });
    job.end();
    setLooked(answer);
    setColumns(answer?.columns ?? []);
  };
  const sent = useSentFile(file, (id) => void look(id));
  return { job, now, refusal, sent, staged: sent.staged ?? '', looked, columns, setColumns, look };
}

/** A report on its way: its columns settled, set against the record, and kept. */
export function useReport(channelId: number, file: File) {
  const client = useQueryClient();
  const { job, now, refusal, sent, staged, looked, columns, setColumns, look } = useLooked(channelId, file);
  const [preview, setPreview] = useState<ReportPreview>();
  const [done, setDone] = useState<ReportOutcome>();
  const [keeping, setKeeping] = useState(false);
  const repairs = useRef<Repairs>([]);

  const input = (said: Said): Input => ({
    channelId,
    file: staged,
    ...(looked?.sheet ? { sheet: looked.sheet } : {}),
    columns: asInput(columns),
    repairs: repairs.current,
    ...said,
    job: job.begin(),
  });
  const compare = async (said: Said) => {
    setKeeping(false);
    const answer = await now('reports.preview', input(said));
    job.end();
    setPreview(answer);
  };
  return {
    job,
    sent,
    refusal,
    looked,
    columns,
    preview,
    done,
    /** Whether the last work was the keeping. */
    keeping,
    look: (sheet: string) => {
      setPreview(undefined);
      repairs.current = [];
      void look(staged, sheet);
    },
    change: (index: number, change: Partial<FoundColumn>) => {
      setPreview(undefined);
      setColumns((before) => before.map((one) => (one.index === index ? { ...one, ...change } : one)));
    },
    /** Something else was said: what was compared no longer holds. */
    forget: () => setPreview(undefined),
    compare,
    mend: ({ row, column, repair }: SheetProblem, said: Said) => {
      if (column === null || repair === null) return;
      repairs.current = [...repairs.current, { row, column, text: repair }];
      void compare(said);
    },
    keep: async (said: Said, goodRowsOnly: boolean) => {
      setKeeping(true);
      const answer = await now('reports.reconcile', { ...input(said), goodRowsOnly });
      job.end();
      if (!answer) return;
      setDone(answer);
      announce('The report is kept.');
      await client.invalidateQueries();
    },
  };
}
