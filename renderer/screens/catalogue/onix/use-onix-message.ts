import { useState } from 'react';
import type { OutputOf } from '../../../../src/contract/index.ts';
import type { OnixRow } from '../../../../src/contract/onix.ts';
import { useJob } from '../../../job.ts';
import { useCallNow } from '../exchange/use-call-now.ts';
import { useSentFile } from '../exchange/use-sent-file.ts';
import { isTaken, type Preview } from './words.ts';

type Place = { row: number; work: string; edition: string };

/** One message on its way in: what is in it, what was chosen, and what came of it. */
export function useOnixMessage(chosen: File) {
  const [preview, setPreview] = useState<Preview>();
  const [taken, setTaken] = useState<ReadonlySet<number>>(new Set());
  const [places, setPlaces] = useState<Place[]>([]);
  const [told, setTold] = useState<OutputOf<'onix.import'>>();
  const job = useJob();
  const { now, refusal } = useCallNow();
  const look = async (id: string, wanted: Place[]) => {
    const answer = await now('onix.preview', { file: id, places: wanted, job: job.begin() });
    job.end();
    if (answer) setPreview(answer);
    return answer;
  };
  const sent = useSentFile(chosen, async (id) => {
    const answer = await look(id, []);
    setTaken(new Set(answer?.rows.filter(isTaken).map((row) => row.row)));
  });
  const file = sent.staged ?? '';
  const place = async (row: OnixRow, to: { work: string; edition: string }) => {
    const next = [...places.filter((one) => one.row !== row.row), { row: row.row, ...to }];
    if (await look(file, next)) setPlaces(next);
  };
  const take = (row: OnixRow, wanted: boolean) => {
    const next = new Set(taken);
    if (wanted) next.add(row.row);
    else next.delete(row.row);
    setTaken(next);
  };
  const carryOut = async () => {
    const rows = [...taken].sort((a, b) => a - b);
    const answer = await now('onix.import', { file, rows, places, job: job.begin() });
    job.end();
    if (!answer) return;
    setTold(answer);
    setPreview(undefined);
  };
  return { preview, taken, told, job, sent, refusal, place, take, carryOut };
}
