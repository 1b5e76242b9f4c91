import { useState } from 'react';
import type { OutputOf } from '../../../../src/contract/index.ts';
import type { OnixRow } from '../../../../src/contract/onix.ts';
import { useJob } from '../../../job.ts';
import { sendFile } from '../../../lib/staged.ts';
import { useCallNow } from '../exchange/use-call-now.ts';
import { isTaken, type Preview } from './words.ts';

type Place = { row: number; work: string; edition: string };

/** One message on its way in: the file, what is in it, what was chosen, and what came of it. */
export function useOnixMessage() {
  const [file, setFile] = useState('');
  const [name, setName] = useState('');
  const [preview, setPreview] = useState<Preview>();
  const [taken, setTaken] = useState<ReadonlySet<number>>(new Set());
  const [places, setPlaces] = useState<Place[]>([]);
  const [told, setTold] = useState<OutputOf<'onix.import'>>();
  const job = useJob();
  const { now, refusal, clear } = useCallNow();
  const look = async (id: string, wanted: Place[]) => {
    const answer = await now('onix.preview', { file: id, places: wanted, job: job.begin() });
    job.end();
    if (answer) setPreview(answer);
    return answer;
  };
  const choose = async (chosen: File) => {
    clear();
    setTold(undefined);
    setPreview(undefined);
    setPlaces([]);
    setName(chosen.name);
    const id = await sendFile(chosen);
    setFile(id);
    const answer = await look(id, []);
    setTaken(new Set(answer?.rows.filter(isTaken).map((row) => row.row)));
  };
  const place = async (row: OnixRow, to: { work: string; edition: string }) => {
    const next = [...places.filter((one) => one.row !== row.row), { row: row.row, ...to }];
    const answer = await look(file, next);
    if (answer) setPlaces(next);
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
  return { name, preview, taken, told, job, refusal, choose, place, take, carryOut };
}
