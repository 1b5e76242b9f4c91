import { useState } from 'react';
import { type FileKind, fileKindName } from '../../../../src/contract/terms.ts';
import { type CallRefused, useCommand } from '../../../api.ts';
import { type Job, useJob } from '../../../job.ts';
import { sendFile } from '../../../lib/staged.ts';
import { countsText } from './words.ts';

export interface CheckFile {
  job: Job;
  /** The file being read. */
  fileName: string | undefined;
  refusal: CallRefused | undefined;
  /** Reads a file, holds it against the record, and keeps the result; answers the check's id. */
  check(file: File): Promise<number | undefined>;
}

/** Carries a dropped file to its check: laid ready, read beside the catalogue, held against the record. */
export function useCheckFile(formatId: number, kind: FileKind): CheckFile {
  const job = useJob();
  const read = useCommand('proofChecks.read');
  const record = useCommand('proofChecks.record');
  const [fileName, setFileName] = useState<string>();
  const check = async (file: File): Promise<number | undefined> => {
    setFileName(file.name);
    record.clear();
    const name = job.begin();
    try {
      const staged = await sendFile(file);
      const answer = await read.run({ file: staged, kind, job: name });
      if (!answer.ok) return undefined;
      const kept = await record.run(
        { formatId, kind, reading: answer.value.reading },
        (value) => `The ${fileKindName(kind)} is checked: ${countsText(value)}.`,
      );
      return kept.ok ? kept.value.id : undefined;
    } finally {
      job.end();
    }
  };
  return { job, fileName, refusal: read.refusal ?? record.refusal, check };
}
