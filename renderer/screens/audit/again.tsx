import { useQueryClient } from '@tanstack/react-query';
import { CallRefused, call } from '../../api.ts';
import { useJob } from '../../job.ts';
import { announce } from '../../status.ts';
import { Button } from '../../ui/index.ts';
import { JobProgress } from '../../ui/job-progress.tsx';
import { counted } from '../catalogue/words.ts';

/** Judges everything anew on demand; otherwise each change has only what it touches judged anew. */
export function Again() {
  const client = useQueryClient();
  const job = useJob();
  const run = async () => {
    try {
      const { works, rules, differences } = await call('audit.again', { job: job.begin() });
      await client.invalidateQueries();
      const outcome =
        differences === 0
          ? 'nothing came out otherwise'
          : `${counted(differences, 'finding')} came out otherwise`;
      announce(`Judged ${counted(works, 'work')} by ${counted(rules, 'rule')} anew: ${outcome}.`);
    } catch (thrown) {
      const calledOff = thrown instanceof CallRefused && thrown.code === 'CANCELLED';
      announce(
        thrown instanceof CallRefused ? thrown.message : String(thrown),
        calledOff ? 'done' : 'refused',
      );
    } finally {
      job.end();
    }
  };
  return (
    <div className="audit-again">
      <p>
        Every change is judged as it is made, together with all that it touches. You can have everything
        judged anew.
      </p>
      <div>
        <Button pending={job.running} onClick={() => void run()}>
          Judge everything anew
        </Button>
      </div>
      <JobProgress job={job} what="Judging" />
    </div>
  );
}
