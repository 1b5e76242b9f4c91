import type { CallRefused } from '../../../api.ts';
import type { FollowedJob } from '../../../job.ts';
import { Notice, Refused } from '../../../ui/index.ts';
import { JobProgress } from '../../../ui/job-progress.tsx';
import type { SentFile } from './use-sent-file.ts';

interface ReadingFileProps {
  file: File;
  sent: SentFile;
  /** What is done with the file once it lies ready. */
  job: FollowedJob;
  refusal: CallRefused | undefined;
  /** Whether what stands in the file is known by now. */
  read: boolean;
  /** What the work is called once the file is read. */
  then: string;
  /** Fields whose refusals stand beside them. */
  fields?: readonly string[];
}

/** A file being sent, read and worked on: how far that has come, why it failed, or that it was called off. */
export function ReadingFile({ file, sent, job, refusal, read, then, fields }: ReadingFileProps) {
  const wentOff = sent.calledOff || (sent.staged !== undefined && !read && !job.running && !refusal);
  return (
    <>
      {sent.job.running ? (
        <JobProgress job={sent.job} what="Sending the file" />
      ) : (
        <JobProgress job={job} what={read ? then : 'Reading the file'} />
      )}
      <Refused refusal={sent.refusal ?? refusal} {...(fields ? { fields } : {})} />
      {wentOff ? (
        <Notice title="Called off.">{file.name} was not read; choose it again to go on.</Notice>
      ) : null}
    </>
  );
}
