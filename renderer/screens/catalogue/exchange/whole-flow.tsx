import { useState } from 'react';
import type { OutputOf } from '../../../../src/contract/index.ts';
import { useJob } from '../../../job.ts';
import { Button, Notice, Section } from '../../../ui/index.ts';
import { ReadingFile } from './reading-file.tsx';
import { counted } from './sheet/choices.ts';
import { ToCatalogue } from './to-catalogue.tsx';
import { useCallNow } from './use-call-now.ts';
import { useSentFile } from './use-sent-file.ts';

type Taken = OutputOf<'catalogue.import'>;

const inWords = ({ works, formats, numbers }: Taken) =>
  `${counted(works, 'work')}, ${counted(formats, 'format')} and ${counted(numbers, 'number')}`;

/** Takes a whole catalogue over into an empty one: tried first, then recorded. */
export function WholeFlow({ file }: { file: File }) {
  const job = useJob();
  const { now, refusal } = useCallNow();
  const [tried, setTried] = useState<Taken>();
  const [done, setDone] = useState<Taken>();
  const carry = async (id: string, dryRun: boolean) => {
    const answer = await now('catalogue.import', { file: id, dryRun, job: job.begin() });
    job.end();
    if (answer) (dryRun ? setTried : setDone)(answer);
  };
  const sent = useSentFile(file, (id) => void carry(id, true));
  if (done)
    return (
      <Section title="Taken over">
        <Notice tone="done" title={`${inWords(done)}.`} live>
          The journal of the old catalogue stays with it; here it begins with this import.
        </Notice>
        <ToCatalogue />
      </Section>
    );
  return (
    <>
      {tried && sent.staged !== undefined ? (
        <Section title="What would come of it">
          <div className="stack">
            <p>
              {file.name} holds {inWords(tried)}, with everything recorded about them.
            </p>
            <div>
              <Button
                kind="primary"
                pending={job.running}
                onClick={() => void carry(sent.staged ?? '', false)}
              >
                Take it over
              </Button>
            </div>
          </div>
        </Section>
      ) : null}
      <ReadingFile {...{ file, sent, job, refusal }} read={tried !== undefined} then="Taking it over" />
    </>
  );
}
