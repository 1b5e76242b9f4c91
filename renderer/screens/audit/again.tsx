import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import type { JobProgress } from '../../../src/contract/jobs.ts';
import { CallRefused, call, subscribe } from '../../api.ts';
import { announce } from '../../status.ts';
import { callOff } from '../../transport.ts';
import { Button } from '../../ui/index.ts';
import { counted } from '../catalogue/words.ts';

function isProgress(data: unknown): data is JobProgress {
  return typeof data === 'object' && data !== null && 'job' in data && 'done' in data;
}

/** A run of long work of this window: how far it is while it runs. */
function useRun() {
  const client = useQueryClient();
  const [job, setJob] = useState<string>();
  const [progress, setProgress] = useState<JobProgress>();
  const running = useRef<string>(undefined);
  useEffect(
    () =>
      subscribe('progress', (data) => {
        if (isProgress(data) && data.job === running.current) setProgress(data);
      }),
    [],
  );
  const run = async () => {
    const name = crypto.randomUUID();
    running.current = name;
    setJob(name);
    try {
      const { works, rules, differences } = await call('audit.again', { job: name });
      await client.invalidateQueries();
      const outcome =
        differences === 0
          ? 'nothing came out otherwise'
          : `${counted(differences, 'finding')} came out otherwise`;
      announce(`Judged ${counted(works, 'work')} by ${counted(rules, 'rule')} anew: ${outcome}.`);
    } catch (thrown) {
      announce(thrown instanceof CallRefused ? thrown.message : String(thrown), 'refused');
    } finally {
      running.current = undefined;
      setJob(undefined);
      setProgress(undefined);
    }
  };
  return { job, progress, run };
}

/** Judges everything anew on demand; otherwise each change has only what it touches judged anew. */
export function Again() {
  const { job, progress, run } = useRun();
  return (
    <div className="audit-again">
      <p>
        Every change is judged as it is made, together with all that it touches. You can have everything
        judged anew.
      </p>
      <div className="row">
        <Button pending={job !== undefined} onClick={() => void run()}>
          Judge everything anew
        </Button>
        {job === undefined ? null : (
          <>
            <progress
              aria-label="How far everything is judged"
              max={progress?.total ?? 1}
              value={progress === undefined ? undefined : progress.done}
            />
            <span>
              {progress
                ? `${progress.done} of ${progress.total ?? '?'} ${progress.what}`
                : 'Reading the catalogue'}
            </span>
            <Button onClick={() => void callOff(job)}>Call off</Button>
          </>
        )}
      </div>
    </div>
  );
}
