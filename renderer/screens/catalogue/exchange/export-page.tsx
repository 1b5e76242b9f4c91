import { useState } from 'react';
import { EXPORT_KINDS, type ExportKind } from '../../../../src/contract/exports.ts';
import type { OutputOf } from '../../../../src/contract/index.ts';
import { useQueryOf } from '../../../api.ts';
import { useJob } from '../../../job.ts';
import { useQueryParam } from '../../../location.ts';
import { Button, Notice, PageHeader, Refused, Section } from '../../../ui/index.ts';
import { JobProgress } from '../../../ui/job-progress.tsx';
import { RadioGroup } from '../../work/parts/radio-group.tsx';
import { OnixChoices, onixInput, USUAL_ONIX } from '../onix/onix-choices.tsx';
import './exchange.css';
import { useCallNow } from './use-call-now.ts';
import { useFetchedFile } from './use-fetched-file.ts';

type Made = OutputOf<'exports.make'>;

/** What was written, and what to know about it. */
function MadeFile({ made }: { made: Made }) {
  return (
    <Notice tone="done" title={`${made.name} is saved.`} live>
      <p>
        {made.records.toLocaleString()} {made.records === 1 ? 'record' : 'records'}. Your browser or system
        keeps it where it keeps what you save.
      </p>
      {made.notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
    </Notice>
  );
}

/** Export: the catalogue, or one work, as a file that others can read. `?work=3` chooses a work. */
export function ExportPage() {
  const [as, setAs] = useState<ExportKind>('csv');
  const [workParam, setWork] = useQueryParam('work');
  const [made, setMade] = useState<Made>();
  const [onix, setOnix] = useState(USUAL_ONIX);
  const job = useJob();
  const fetched = useFetchedFile();
  const { now, refusal } = useCallNow();
  const info = useQueryOf('catalogue.info', {});
  const workId = Number(workParam);
  const oneWork = Number.isInteger(workId) && workId > 0;
  const work = useQueryOf('works.get', { id: workId }, { enabled: oneWork });
  const isOnix = as === 'onix' || as === 'agency-onix';
  const write = async () => {
    setMade(undefined);
    const scope = oneWork ? { workId } : {};
    const terms = isOnix ? { onix: onixInput(oneWork || as !== 'onix' ? { ...onix, since: '' } : onix) } : {};
    const answer = await now('exports.make', { as, ...scope, ...terms, job: job.begin() });
    job.end();
    if (answer && (await fetched.save(answer))) setMade(answer);
  };
  return (
    <>
      <PageHeader
        title="Export"
        crumbs={[{ label: 'Catalogue', to: '/catalogue' }, { label: 'Export' }]}
        lede="Write a file that others can read. Nothing is changed here."
      />
      {info.data?.demo ? (
        <Notice tone="care">The numbers of the demo are invented: do not send its files to anyone.</Notice>
      ) : null}
      <Section title="What to write">
        <div className="stack exchange-form">
          {oneWork && work.data ? (
            <p>
              Only <i>{work.data.title}</i>.{' '}
              <Button kind="quiet" onClick={() => setWork('')}>
                Write the whole catalogue instead
              </Button>
            </p>
          ) : (
            <p>The whole catalogue, as it stands today.</p>
          )}
          <RadioGroup
            label="As"
            value={as}
            onChange={setAs}
            choices={EXPORT_KINDS.map(({ kind, name, of }) => ({ value: kind, label: name, help: of }))}
          />
          {isOnix ? (
            <OnixChoices value={onix} onChange={setOnix} whole={!oneWork} sheet={as === 'agency-onix'} />
          ) : null}
          <div>
            <Button kind="primary" pending={job.running || fetched.job.running} onClick={() => void write()}>
              Write the file
            </Button>
          </div>
          <JobProgress job={job} what="Writing" />
          <JobProgress job={fetched.job} what="Saving" />
          <Refused refusal={refusal} />
          {made ? <MadeFile made={made} /> : null}
        </div>
      </Section>
    </>
  );
}
