import { useEffect, useId, useRef } from 'react';
import type { FollowedJob } from '../job.ts';
import { Button } from './button.tsx';

/** How far long work has come, and the way to call it off. Nothing while no work is under way. */
export function JobProgress({ job, what }: { job: FollowedJob; what: string }) {
  const id = useId();
  const place = useRef<HTMLDivElement>(null);
  // Below a long list it would begin out of sight, with the way to call it off.
  useEffect(() => {
    if (job.running) place.current?.scrollIntoView({ block: 'nearest' });
  }, [job.running]);
  if (!job.running) return null;
  const { progress } = job;
  const total = progress?.total ?? undefined;
  const words =
    progress === undefined
      ? what
      : `${what}: ${progress.done.toLocaleString()}${total === undefined ? '' : ` of ${total.toLocaleString()}`} ${progress.what}`;
  return (
    <div className="job-progress" role="status" ref={place}>
      <label htmlFor={id}>{job.cancelling ? 'Calling it off…' : words}</label>
      <progress id={id} max={total ?? 1} value={total === undefined ? undefined : progress?.done} />
      <Button onClick={job.cancel} disabled={job.cancelling}>
        Cancel
      </Button>
    </div>
  );
}
