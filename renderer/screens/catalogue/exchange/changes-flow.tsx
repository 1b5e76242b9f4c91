import { useState } from 'react';
import type { MergeConflict, MergeSide } from '../../../../src/contract/changes.ts';
import type { OutputOf } from '../../../../src/contract/index.ts';
import { useJob } from '../../../job.ts';
import { Button, Notice, Section } from '../../../ui/index.ts';
import { columnName } from '../../journal/fields.ts';
import { readValue } from '../../journal/values.ts';
import { RadioGroup } from '../../work/parts/radio-group.tsx';
import { ReadingFile } from './reading-file.tsx';
import { counted } from './sheet/choices.ts';
import { ToCatalogue } from './to-catalogue.tsx';
import { useCallNow } from './use-call-now.ts';
import { useSentFile } from './use-sent-file.ts';

type Merged = OutputOf<'changes.merge'>;
type Choices = Record<string, MergeSide>;

/** A value as the journal shows it. */
function shown(field: string | null, value: MergeConflict['here']): string {
  const text = field === null ? '' : readValue(field, { [field]: value });
  return text === '' ? 'nothing' : text;
}

/** What the sides of a conflict say. */
function sidesOf({ sides, field, here, there }: MergeConflict) {
  const labels: Record<MergeSide, string> =
    field === null
      ? { here: sides.length === 1 ? 'Leave it out' : 'Keep what is here', there: 'Take what the copy has' }
      : { here: `Keep ${shown(field, here)}`, there: `Take ${shown(field, there)}` };
  return sides.map((side) => ({ value: side, label: labels[side] }));
}

interface ConflictProps {
  conflict: MergeConflict;
  chosen: MergeSide | undefined;
  onChoose: (side: MergeSide) => void;
}

function Conflict({ conflict, chosen, onChoose }: ConflictProps) {
  const { about, field, before, sentence } = conflict;
  const was =
    before === null || before === '' ? '' : ` It was ${shown(field, before)} when the copy was made.`;
  const what = field === null ? sentence : `${about}: both have changed ‘${columnName(field)}’.${was}`;
  return (
    <li>
      <RadioGroup<MergeSide | ''>
        label={what}
        value={chosen ?? ''}
        onChange={(side) => side !== '' && onChoose(side)}
        choices={sidesOf(conflict)}
      />
    </li>
  );
}

function Records({ names }: { names: readonly string[] }) {
  if (names.length === 0) return null;
  return (
    <details>
      <summary>{counted(names.length, 'record')} that the copy added or changed</summary>
      <ul>
        {names.map((name) => (
          <li key={name}>{name}</li>
        ))}
      </ul>
    </details>
  );
}

function Done({ merged }: { merged: Merged }) {
  return (
    <Section title="Taken over">
      <Notice tone="done" title={`${counted(merged.taken, 'change')} taken over.`} live>
        {merged.left > 0 ? `${counted(merged.left, 'change')} left out, as you chose. ` : ''}
        The journal keeps them as one step of today.
      </Notice>
      <ToCatalogue />
    </Section>
  );
}

/** Merges what was done in a copy of this list: tried first, with every conflict to be decided, then recorded. */
export function ChangesFlow({ file }: { file: File }) {
  const job = useJob();
  const { now, refusal } = useCallNow();
  const [tried, setTried] = useState<Merged>();
  const [done, setDone] = useState<Merged>();
  const [choices, setChoices] = useState<Choices>({});
  const carry = async (id: string, dryRun: boolean) => {
    const answer = await now('changes.merge', { file: id, dryRun, choices, job: job.begin() });
    job.end();
    if (answer) (dryRun ? setTried : setDone)(answer);
  };
  const sent = useSentFile(file, (id) => void carry(id, true));
  if (done) return <Done merged={done} />;
  const open = tried?.conflicts.filter(({ id }) => choices[id] === undefined).length ?? 0;
  return (
    <>
      {tried && sent.staged !== undefined ? (
        <Section title="What would come of it">
          <div className="stack">
            <p>
              {counted(tried.taken, 'change')} would be taken over; {tried.known.toLocaleString()} are known
              here already.
            </p>
            <Records names={tried.records} />
            {tried.conflicts.length > 0 ? (
              <ul className="stack merge-list" aria-label="To decide">
                {tried.conflicts.map((conflict) => (
                  <Conflict
                    key={conflict.id}
                    conflict={conflict}
                    chosen={choices[conflict.id]}
                    onChoose={(side) => setChoices((before) => ({ ...before, [conflict.id]: side }))}
                  />
                ))}
              </ul>
            ) : null}
            <div>
              <Button
                kind="primary"
                pending={job.running}
                disabled={open > 0 || (tried.taken === 0 && tried.conflicts.length === 0)}
                onClick={() => void carry(sent.staged ?? '', false)}
              >
                Take them over
              </Button>
              {open > 0 ? <p>{counted(open, 'change')} still to decide.</p> : null}
            </div>
          </div>
        </Section>
      ) : null}
      <ReadingFile {...{ file, sent, job, refusal }} read={tried !== undefined} then="Taking them over" />
    </>
  );
}
